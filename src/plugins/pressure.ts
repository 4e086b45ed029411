import type { FastifyInstance } from 'fastify'
import type { Config } from '#src/config.ts'
import { computes } from '#src/http/computing-paths.ts'
import { ProblemError } from '#src/http/problem.ts'
import { OVERLOADED } from '#src/http/sentences.ts'

declare module 'fastify' {
  interface FastifyInstance {
    /** True while more is asked of the service than it can answer in time. */
    isPressed(): boolean
  }
}

const EVERY_MS = 100
/** One late tick is a hiccup, and turning away whoever waited through it would make it worse. */
const LATE_TICKS = 2

/**
 * Sheds load: while the event loop runs late, what would be computed is answered 503 at once, so that what is under way
 * gets done. A timer that should go off every tenth of a second tells how late it is; a request costs a look at a flag.
 */
export function shedLoad(app: FastifyInstance, { maxLoopDelayMs }: Pick<Config, 'maxLoopDelayMs'>): void {
  let due = 0
  let late = 0
  let timer: NodeJS.Timeout | undefined
  const tick = (): void => {
    const now = performance.now()
    late = now - due > maxLoopDelayMs ? late + 1 : 0
    due = now + EVERY_MS
  }
  app.decorate('isPressed', () => late >= LATE_TICKS)
  app.addHook('onListen', async () => {
    due = performance.now() + EVERY_MS
    timer = setInterval(tick, EVERY_MS).unref()
  })
  app.addHook('onClose', async () => clearInterval(timer))
  app.addHook('onRequest', (request, _reply, done) => {
    const isShed = late >= LATE_TICKS && computes(request.routeOptions.url ?? '')
    done(isShed ? new ProblemError(503, OVERLOADED) : undefined)
  })
}
