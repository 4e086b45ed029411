import type { Socket } from 'node:net'
import { setImmediate as nextTurn, setTimeout as sleep } from 'node:timers/promises'
import type { FastifyInstance, FastifyReply } from 'fastify'
import type { Config } from '#src/config.ts'
import type { Connections } from '#src/http/connections.ts'
import { rawProblem, sendProblem } from '#src/http/problem.ts'
import { STOPPING } from '#src/http/sentences.ts'

declare module 'fastify' {
  interface FastifyInstance {
    /** True from the moment the service was told to stop. */
    isStopping(): boolean
  }
}

type Limits = Pick<Config, 'shutdownDelayMs' | 'shutdownGraceMs'>

/** So long after the port is closed, a connection that was opened last may still send its request. */
const LINGER_MS = 250

/** The last refusals need so long to be on their way before the process ends; of a short grace, a quarter. */
const REFUSAL_MS = 500

/** Under a load that never pauses, the end comes all the same. */
const MOST_TURNS = 100

const RETRY_AFTER_S = '5'

/**
 * Stops without losing a request:
 *
 * 1. `/health/ready` says 503 at once, so that a balancer looks elsewhere. Requests are still answered, and each answer
 *    closes its connection.
 * 2. After the delay the port is closed. What is under way goes on.
 * 3. A moment later idle connections are closed. Both wait for a turn of the event loop in which nothing arrived: what
 *    was sent and not yet read would be lost with its connection.
 * 4. Shortly before the grace is over, whatever has no answer yet is answered 503.
 *
 * To be added before everything that makes a request wait.
 */
export function stopGently(
  app: FastifyInstance,
  { shutdownDelayMs, shutdownGraceMs }: Limits,
  connections: Connections,
): void {
  /** By connection, what has no answer yet, in the order in which it was asked. */
  const unanswered = new Map<Socket, Set<FastifyReply>>()
  const unansweredOn = (socket: Socket): Set<FastifyReply> => {
    const known = unanswered.get(socket)
    if (known !== undefined) return known
    const replies = new Set<FastifyReply>()
    unanswered.set(socket, replies)
    // Node tells nothing of answers that wait for their turn when the connection is cut.
    socket.once('close', () => unanswered.delete(socket))
    return replies
  }
  let stopping = false
  app.decorate('isStopping', () => stopping)

  app.addHook('onRequest', ({ raw: { socket } }, reply, done) => {
    unansweredOn(socket).add(reply)
    done()
  })
  app.addHook('onResponse', ({ raw: { socket } }, reply, done) => {
    unanswered.get(socket)?.delete(reply)
    done()
  })
  app.addHook('onSend', ({ raw: { socket } }, reply, payload, done) => {
    if (stopping) {
      // Requests that were sent ahead would be lost with the connection; Fastify sets the header on every answer.
      if ([...(unanswered.get(socket) ?? [])].at(-1) === reply) reply.header('connection', 'close')
      else reply.raw.removeHeader('connection')
    }
    done(null, payload)
  })

  const refuseRest = (): void => {
    const refused = [...unanswered.values()]
      .flatMap((replies) => [...replies])
      .filter(({ sent, raw }) => !sent && !raw.headersSent)
    const unheard = app.log.child({}, { level: 'silent' })
    for (const reply of refused) {
      sendProblem(reply, 503, STOPPING, [], { 'retry-after': RETRY_AFTER_S })
      // Whatever its handler still comes to is not sent, and no fault to be logged.
      reply.hijack()
      reply.log = unheard
    }
    connections.endUnread(rawProblem(503, STOPPING, { ...app.headersOfUnread, 'retry-after': RETRY_AFTER_S }))
    if (refused.length > 0)
      app.log.warn({ refused: refused.length }, 'stopping: refused requests that could not finish in time')
  }

  const stop = async (): Promise<void> => {
    const lastMoment = Math.max(shutdownDelayMs, shutdownGraceMs - Math.min(REFUSAL_MS, shutdownGraceMs / 4))
    const timer = setTimeout(refuseRest, lastMoment)
    await sleep(shutdownDelayMs)
    await quiet(connections)
    const ended = connections.stopListening()
    if (connections.open() > 0) await sleep(Math.min(LINGER_MS, shutdownDelayMs))
    await quiet(connections)
    connections.closeIdle()
    await ended
    clearTimeout(timer)
  }

  app.addHook('preClose', async () => {
    stopping = true
    if (app.server.listening) await stop()
  })
}

/** Waits for a turn of the event loop in which neither a connection nor a request has arrived. */
async function quiet(connections: Connections): Promise<void> {
  for (let turn = 0; turn < MOST_TURNS; turn += 1) {
    const before = connections.arrivals()
    await nextTurn()
    if (connections.arrivals() === before) return
  }
}
