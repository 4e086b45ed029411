import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { anyLoadCheck } from '#shared/questions/load/any-load-check.ts'
import { refuseQuestion } from '#src/api/refusal.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { notValid, problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { explainRefusal } from '#src/words/load-check.ts'
import { toLoadAnswer, toLoadCheckInput } from './present.ts'
import type { LoadCheckRequest, LoadCheckResponse } from './schema.ts'

export const loadCheckRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/load-check',
    schema: {
      operationId: 'loadCheck',
      tags: ['bearing'],
      summary: 'The effect of a load on the balls and the wood, and the speed limits with their reasons: an estimate',
      body: refTo<typeof LoadCheckRequest>('LoadCheckRequest'),
      response: {
        200: refTo<typeof LoadCheckResponse>('LoadCheckResponse'),
        422: problem('Cannot exist'),
      },
    },
    handler: (body, _request, reply) => {
      const input = toLoadCheckInput(body)
      if (!input.ok) throw notValid(input.error)
      const check = anyLoadCheck(input.value)
      if (check.ok) return toLoadAnswer(check.value, body)
      return refuseQuestion(reply, check.error, body.design, explainRefusal)
    },
  })
}
