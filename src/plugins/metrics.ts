import type { FastifyInstance } from 'fastify'
import { Type } from 'typebox'
import { BUCKETS, type Series } from './answer-times.ts'

/** Whatever has no route has one name: what a stranger asks for must not make series without end. */
const UNROUTED = 'none'

/**
 * How often and how fast, by route, at `/metrics` for Prometheus. A request costs an entry in a table; all else, the library
 * too, waits for the first who asks. What is told is of this service, so two of them in one process keep apart.
 */
export function addMetrics(app: FastifyInstance): void {
  const table = new Map<string, Series>()

  app.addHook('onResponse', (request, reply, done) => {
    const route = request.routeOptions.url ?? UNROUTED
    const key = `${request.method} ${reply.statusCode} ${route}`
    let series = table.get(key)
    if (series === undefined) {
      const counts = new Float64Array(BUCKETS.length + 1)
      series = { method: request.method, route, status: reply.statusCode, counts, seconds: 0 }
      table.set(key, series)
    }
    const seconds = reply.elapsedTime / 1000
    const bucket = bucketOf(seconds)
    series.counts[bucket] = (series.counts[bucket] ?? 0) + 1
    series.seconds += seconds
    done()
  })

  let exposition: Promise<() => Promise<string>> | undefined
  app.get(
    '/metrics',
    {
      schema: {
        operationId: 'metrics',
        tags: ['service'],
        summary: 'How often, how fast, and how busy, for Prometheus',
        response: {
          200: {
            description: 'The text format of Prometheus, version 0.0.4',
            content: { 'text/plain': { schema: Type.String() } },
          },
        },
      },
    },
    async (_request, reply) => {
      exposition ??= import('./exposition.ts').then(({ expositionOf }) => expositionOf(table, () => app.taskLoad()))
      const text = await (await exposition)()
      return reply.headers({ 'cache-control': 'no-store' }).type('text/plain; version=0.0.4; charset=utf-8').send(text)
    },
  )
}

function bucketOf(seconds: number): number {
  let bucket = 0
  while (seconds > (BUCKETS[bucket] ?? Number.POSITIVE_INFINITY)) bucket += 1
  return bucket
}
