import type { FastifyInstance, FastifyRequest } from 'fastify'
import { ProblemError } from './problem.ts'

/** What HTTP asks of a request before its body is read, where Node would answer without a word or not at all. */
export function holdToProtocol(app: FastifyInstance): void {
  app.addHook('onRequest', (request, _reply, done) => done(refusal(request)))
}

function refusal({ headers, raw }: FastifyRequest): ProblemError | undefined {
  if (headers.host === undefined && raw.httpVersion === '1.1')
    return new ProblemError(400, 'The Host header is missing.')
  const encoding = headers['content-encoding']
  if (encoding === undefined || encoding === 'identity') return undefined
  return new ProblemError(415, 'The body is compressed: send it as it is.')
}
