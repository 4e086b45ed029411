import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { answerTypeAmong } from '#src/api/arrangement-answer.ts'
import { refuseQuestion } from '#src/api/refusal.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { wordedFor } from '#src/words/arrangement-words.ts'
import { explainRefusal } from '#src/words/ball-selection.ts'
import { toBallSelectionInput, toSelectionAnswer } from './present.ts'
import { ANSWERS, type BallSelectionRequest } from './schema.ts'

export const ballSelectionRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/ball-selection',
    mediaTypes: ({ body }) => [answerTypeAmong(ANSWERS, Object(body).design)],
    schema: {
      operationId: 'ballSelection',
      tags: ['bearing'],
      summary: 'From a measured lot: which balls to take, and what gap they leave',
      body: refTo<typeof BallSelectionRequest>('BallSelectionRequest'),
      response: {
        200: { description: 'Which balls to take, what they leave, and how near that is', content: ANSWERS },
        422: problem('Cannot exist, or takes more work than one request may'),
        503: problem('Too busy'),
      },
    },
    handler: async (body, request, reply) => {
      const selection = await app.runTask('ballSelection', toBallSelectionInput(body), request)
      if (selection.ok) return wordedFor(body.design, toSelectionAnswer(selection.value))
      return refuseQuestion(reply, selection.error, body.design, explainRefusal)
    },
  })
}
