import type { FastifyRequest } from 'fastify'
import Negotiator from 'negotiator'
import { ProblemError } from './problem.ts'

export const JSON_TYPE = 'application/json'

/** Which of the types on offer the caller takes; the first on offer when any will do. */
export function mediaType(request: FastifyRequest, offered: readonly [string, ...string[]]): string {
  const accept = request.headers.accept
  // What nearly every caller sends needs no reading.
  if (accept === undefined || accept === '*/*' || accept === offered[0]) return offered[0]
  const chosen = new Negotiator(request).mediaType([...offered])
  if (chosen !== undefined) return chosen
  throw new ProblemError(
    406,
    `The answer comes as ${offered.join(' or ')}; the request's Accept header takes none of it.`,
  )
}
