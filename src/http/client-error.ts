import type { Socket } from 'node:net'
import type { ConnectionError, FastifyInstance } from 'fastify'
import { endConnection } from './connections.ts'
import { HEAD_READ_BYTES } from './head-limits.ts'
import { rawProblem } from './problem.ts'
import { ADDRESS_TOO_LONG, headLongerThan, NOT_HTTP, TOO_SLOW } from './sentences.ts'

/**
 * Answers a connection on which no request could be read. Fastify binds `this`; only the code is logged, for the error
 * carries what was sent.
 */
export function clientErrorHandler(this: FastifyInstance, error: ConnectionError, socket: Socket): void {
  this.log.debug({ code: error.code }, 'connection refused')
  if (error.code === 'ECONNRESET') socket.destroy()
  else endConnection(socket, answer(error, this.headersOfUnread))
}

function answer({ code, rawPacket }: ConnectionError, headers: Readonly<Record<string, string>>): string {
  const problem = (status: number, detail: string) => rawProblem(status, detail, headers)
  if (code === 'ERR_HTTP_REQUEST_TIMEOUT') return problem(408, TOO_SLOW)
  if (code !== 'HPE_HEADER_OVERFLOW') return problem(400, NOT_HTTP)
  return Buffer.isBuffer(rawPacket) && isLongAddress(rawPacket)
    ? problem(414, ADDRESS_TOO_LONG)
    : problem(431, headLongerThan(HEAD_READ_BYTES))
}

/**
 * The address stands in the first line: where that line alone is over the limit, it was not the headers. Only the packet
 * in which the limit was passed is there; where the head began in another one, nobody knows any more.
 */
function isLongAddress(packet: Buffer): boolean {
  const head = packet.toString('latin1', 0, HEAD_READ_BYTES)
  return /^[A-Z]+ /.test(head) && !head.includes('\r\n')
}
