import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { anyLoadCheck } from '#shared/bearing/load-check/any-load-check.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { notValid, problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { answerTypeAmong } from '#src/wire/arrangement-answer.ts'
import { wordedFor } from '#src/wire/arrangement-words.ts'
import { refuseQuestion } from '#src/wire/refusal.ts'
import { ANSWERS, type LoadCheckRequest } from './schema.ts'
import { explainRefusal } from './sentences.ts'
import { spokenOf, toLoadAnswer, toLoadCheckInput } from './translate.ts'

export const loadCheckRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/load-check',
    mediaTypes: ({ body }) => [answerTypeAmong(ANSWERS, Object(body).design)],
    schema: {
      operationId: 'loadCheck',
      tags: ['bearing'],
      summary: 'What a load does to the balls and the wood, how fast it may turn, and why: an estimate',
      body: refTo<typeof LoadCheckRequest>('LoadCheckRequest'),
      response: {
        200: { description: 'What the load and the speed do, and from where on', content: ANSWERS },
        422: problem('Cannot exist'),
      },
    },
    handler: (body, _request, reply) => {
      const input = toLoadCheckInput(body)
      if (!input.ok) throw notValid(input.error)
      const check = anyLoadCheck(input.value)
      if (check.ok) return wordedFor(body.design, toLoadAnswer(check.value, spokenOf(body)))
      return refuseQuestion(reply, check.error, body.design, explainRefusal)
    },
  })
}
