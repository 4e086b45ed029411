import type { Socket } from 'node:net'
import type { FastifyInstance } from 'fastify'
import { cutFlooded, markBusy, markIdle } from './connections.ts'

/** Behind the request of a connection that is being answered. Programs that send ahead at all send ten or so. */
const MOST_WAITING = 100

/**
 * Answers the requests of one connection one after the other: the next is not begun until the last answer is on its way. They
 * come in one packet by the thousand, and whoever does not read would have as many answers kept in memory, a
 * thousand times what was sent. Where more wait than anyone sends ahead, the connection is cut.
 */
export function answerInTurn(app: FastifyInstance): void {
  const lines = new WeakMap<Socket, (() => void)[]>()
  app.addHook('onRequest', ({ raw: { socket } }, reply, done) => {
    const line = lines.get(socket)
    if (line === undefined) {
      lines.set(socket, [])
      markBusy(socket)
      done()
    } else if (line.length < MOST_WAITING) {
      line.push(done)
    } else {
      reply.hijack()
      cutFlooded(socket)
    }
  })
  app.addHook('onResponse', ({ raw: { socket } }, _reply, done) => {
    const next = lines.get(socket)?.shift()
    if (next !== undefined) next()
    else if (lines.delete(socket)) markIdle(socket)
    done()
  })
}
