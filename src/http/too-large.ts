import type { FastifyReply, FastifyRequest } from 'fastify'
import { sendProblem } from './problem.ts'
import { bodyTooLarge } from './sentences.ts'

/** So much of a body that is too large is still taken in and thrown away; after that the connection is cut. */
const DISCARDED_BYTES = 64 * 1024 * 1024

/**
 * 413 that arrives. A caller in the midst of sending ten megabytes reads no answer before the last one is sent, and an
 * answer followed by a closed connection is lost to it (the unread bytes make the system reset the connection): so the
 * rest is read and thrown away, up to a limit, and the time limit of a request goes on as well.
 */
export function tooLarge(request: FastifyRequest, reply: FastifyReply): FastifyReply {
  let discarded = 0
  request.raw.on('data', (chunk: Buffer) => {
    discarded += chunk.length
    if (discarded > DISCARDED_BYTES) request.raw.destroy()
  })
  reply.removeHeader('connection')
  return sendProblem(reply, 413, bodyTooLarge(request.server.initialConfig.bodyLimit))
}
