import type { FastifyRequest } from 'fastify'
import Negotiator from 'negotiator'
import { ProblemError } from './problem.ts'
import { notAcceptable } from './sentences.ts'

export const JSON_TYPE = 'application/json'
export const HTML_TYPE = 'text/html'

/** Which of the types on offer the caller takes; the first on offer when any will do. */
export function mediaType(request: FastifyRequest, offered: readonly [string, ...string[]]): string {
  const { accept } = request.headers
  // What nearly every caller sends needs no reading.
  if (accept === undefined || accept === '*/*' || accept === offered[0]) return offered[0]
  const known = withoutUnknownParameters(accept, offered)
  const chosen = new Negotiator({ headers: { accept: known } }).mediaType([...offered])
  if (chosen !== undefined) return chosen
  throw new ProblemError(406, notAcceptable(offered))
}

/** One parameter of a media type: a name and, mostly, a value, which is a token or a quoted string. */
const PARAMETER = /;[ \t]*([^ \t=;,"]*)[ \t]*(?:=[ \t]*(?:"(?:[^"\\]|\\.)*"|[^;,]*))?/g

/**
 * A recipient ignores parameters that it does not know (RFC 2045 §5, RFC 8259 §11 for JSON), such as the `charset` that
 * many clients add to `application/json`. What is on offer decides which are known; `q` is a weight and stays.
 */
function withoutUnknownParameters(accept: string, offered: readonly string[]): string {
  const known = new Set(['q', ...offered.flatMap((type) => Array.from(type.matchAll(PARAMETER), ([, name]) => name))])
  return accept.replaceAll(PARAMETER, (parameter, name: string) => (known.has(name.toLowerCase()) ? parameter : ''))
}
