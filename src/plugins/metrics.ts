import type { FastifyInstance } from 'fastify'
import { Type } from 'typebox'
import { lazy } from '#shared/lazy.ts'
import { setAnswerHeaders } from '#src/http/answer-headers.ts'
import { type AnswerTimes, enter } from './answer-times.ts'

/** Whatever has no route has one name: what a stranger asks for must not make series without end. */
const UNROUTED = 'none'

/**
 * How often and how fast, by route, at `/metrics` for Prometheus. A request costs an entry in a table; all else, the library
 * too, waits for the first who asks. What is told is of this service, so two of them in one process keep apart.
 */
export function addMetrics(app: FastifyInstance): void {
  const times: AnswerTimes = new Map()

  app.addHook('onResponse', ({ method, routeOptions: { url = UNROUTED } }, reply, done) => {
    enter(times, method, url, reply.statusCode, reply.elapsedTime / 1000)
    done()
  })

  const exposition = lazy(async () => {
    const { expositionOf } = await import('./exposition.ts')
    return expositionOf(times, () => app.taskLoad(), app.uncountedRequests)
  })
  app.get(
    '/metrics',
    {
      schema: {
        operationId: 'metrics',
        tags: ['service'],
        summary: 'Metrics for Prometheus',
        description:
          'How many requests there were, how long they took, and how busy the service is. The answer is in the text format of Prometheus.',
        response: {
          200: {
            description: 'The text format of Prometheus, version 0.0.4',
            content: { 'text/plain': { schema: Type.String() } },
          },
        },
      },
    },
    async (_request, reply) => {
      const text = await (await exposition())()
      setAnswerHeaders(reply, { cacheControl: 'no-store' })
      return reply.type('text/plain; version=0.0.4; charset=utf-8').send(text)
    },
  )
}
