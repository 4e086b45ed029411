import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { setAnswerHeaders } from '#src/http/answer-headers.ts'
import { problem, sendProblem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { BUSY, OVERLOADED, STOPPING } from '#src/http/sentences.ts'
import { Health } from './schema.ts'

export const HEALTH_SCHEMAS = [Health]

export const healthRoute: FastifyPluginAsyncTypebox = async (app) => {
  app.addHook('onRequest', (_request, reply, done) => {
    setAnswerHeaders(reply, { cacheControl: 'no-store' })
    done()
  })

  app.get(
    '/live',
    {
      schema: {
        operationId: 'live',
        tags: ['service'],
        summary: 'Whether the service runs',
        description: 'Answers as long as the process can answer. When it does not answer, restart it.',
        response: { 200: refTo<typeof Health>('Health') },
      },
    },
    () => ({ status: 'up' as const }),
  )

  app.get(
    '/ready',
    {
      schema: {
        operationId: 'ready',
        tags: ['service'],
        summary: 'Whether the service takes requests',
        description: 'Answers 503 while the service is stopping or overloaded: send requests elsewhere.',
        response: { 200: refTo<typeof Health>('Health'), 503: problem('Not now') },
      },
    },
    (_request, reply) => {
      if (app.isStopping()) sendProblem(reply, 503, STOPPING, [], { 'retry-after': '5' })
      else if (app.isPressed()) sendProblem(reply, 503, BUSY, [], { 'retry-after': '1' })
      else if (app.areWorkersFull()) sendProblem(reply, 503, OVERLOADED, [], { 'retry-after': '1' })
      else reply.send({ status: 'ready' })
    },
  )
}
