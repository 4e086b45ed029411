import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { anyLoadCheck } from '#shared/questions/load/any-load-check.ts'
import { PLATE_LOAD_CHECK, RING_LOAD_CHECK } from '#shared/questions/load/input.ts'
import { refuseQuestion } from '#src/api/refusal.ts'
import { servedBy } from '#src/api/served.ts'
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
      summary: 'What a load and a speed do to the balls and the wood',
      description: `What can it carry, and how fast may it turn? Send a design, the woods, a load and perhaps a speed. You get the load on each ball, the contact stress beside the strength of the wood, and the limits of load and speed with their reasons. All of it is an estimate, and no safe working load. ${servedBy(RING_LOAD_CHECK, PLATE_LOAD_CHECK)}`,
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
