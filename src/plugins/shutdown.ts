import { setTimeout as sleep } from 'node:timers/promises'
import type { FastifyInstance } from 'fastify'
import type { Config } from '#src/config.ts'

declare module 'fastify' {
  interface FastifyInstance {
    /** True from the moment the service was told to stop. */
    isStopping(): boolean
  }
}

/**
 * Stopping without losing an answer. From the first moment `/health/ready` says 503, so that a load balancer looks
 * elsewhere; after the delay no connection is accepted any more; and answers under way close their connection, or each
 * would be waited for until its keep-alive time is over (Fastify's `forceCloseConnections: 'idle'` has no effect here).
 */
export function stopGently(app: FastifyInstance, { shutdownDelayMs }: Pick<Config, 'shutdownDelayMs'>): void {
  let stopping = false
  app.decorate('isStopping', () => stopping)
  app.addHook('preClose', async () => {
    stopping = true
    if (shutdownDelayMs > 0) await sleep(shutdownDelayMs)
  })
  app.addHook('onSend', (_request, reply, payload, done) => {
    if (stopping) reply.header('connection', 'close')
    done(null, payload)
  })
}
