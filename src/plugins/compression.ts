import type { FastifyInstance } from 'fastify'
import { addVary } from '#src/http/answer-headers.ts'
import { coded, codingFor, isWorthCoding } from '#src/http/content-coding.ts'

/**
 * Compresses long texts for callers that accept it. The `Vary` of an answer that may be kept comes with its entity tag, because its
 * 304 needs it too. The usual plugin halves the requests per second, even for callers that accept no coding.
 */
export function compress(app: FastifyInstance): void {
  app.addHook('onSend', (request, reply, body: unknown, done) => {
    const text = isWorthCoding(body, String(reply.getHeader('content-type'))) ? body : undefined
    const coding = text && codingFor(request)
    if (!text || !coding) {
      done(null, body)
      return
    }
    const send = (bytes: Buffer): void => {
      addVary(reply, 'Accept-Encoding')
      reply.header('content-encoding', coding)
      done(null, bytes)
    }
    const bytes = coded(text, coding)
    if (Buffer.isBuffer(bytes)) send(bytes)
    else bytes.then(send, done)
  })
}
