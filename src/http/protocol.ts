import type { IncomingHttpHeaders } from 'node:http'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { headersRefusal } from './head-limits.ts'
import { ProblemError } from './problem.ts'
import { COMPRESSED, NO_HOST, TWO_HOSTS } from './sentences.ts'

/** Checks of HTTP before a body is read, for requests that Node would answer without a word or not at all. */
export function holdToProtocol(app: FastifyInstance): void {
  // Node would refuse in plain text what a caller expects beyond `100-continue`; a server may as well ignore it.
  app.server.on('checkExpectation', (request, response) => app.server.emit('request', request, response))
  app.addHook('onRequest', (request, _reply, done) => done(refusal(request)))
}

function refusal({ headers, raw }: FastifyRequest): ProblemError | undefined {
  const tooLong = headersRefusal(raw.rawHeaders)
  if (tooLong !== undefined) return tooLong
  if (headers.host === undefined && raw.httpVersion === '1.1') return new ProblemError(400, NO_HOST)
  // RFC 9112 §3.2: two names for one server are two opinions of who is asked, here and at a proxy.
  if (hosts(raw.rawHeaders) > 1 || headers.host?.includes(',') === true) return new ProblemError(400, TWO_HOSTS)
  return isCompressed(headers) ? new ProblemError(415, COMPRESSED) : undefined
}

/** Whether a body is compressed. Node takes chunks apart by itself and hands on their content. */
function isCompressed({ 'content-encoding': encoding, 'transfer-encoding': transfer }: IncomingHttpHeaders): boolean {
  return (
    (encoding !== undefined && encoding !== 'identity') || (transfer !== undefined && /,\s*chunked$/i.test(transfer))
  )
}

/** How often the header stands there: Node keeps the first and drops the others. */
function hosts(names: readonly string[]): number {
  let count = 0
  for (let index = 0; index < names.length; index += 2) {
    const name = names[index] ?? ''
    if (name.length === 4 && name.toLowerCase() === 'host') count += 1
  }
  return count
}
