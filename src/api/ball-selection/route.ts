import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { BALL_SELECTION } from '#shared/questions/selection/ball-selection.ts'
import { refusedQuestion } from '#src/api/refusal.ts'
import { seasonedWithin } from '#src/api/seasoned.ts'
import { servedBy } from '#src/api/served.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { explainRefusal } from '#src/words/ball-selection.ts'
import type { BallSelectionRequest } from './parts.ts'
import { toBallSelectionInput, toSelectionAnswer } from './present.ts'
import type { BallSelectionResponse } from './schema.ts'

export const ballSelectionRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/ball-selection',
    schema: {
      operationId: 'ballSelection',
      tags: ['bearing'],
      summary: 'The best balls of a measured lot',
      description: `Which of my balls should I use? In which order? Send the design and the diameter of every ball on hand. You get the balls to use in their order round the ring, with the gap, play and run-out that they leave and the chance that the last one goes in; what other goals and other orders would give; and a proven bound on the gap of every choice. ${servedBy(BALL_SELECTION)}`,
      body: refTo<typeof BallSelectionRequest>('BallSelectionRequest'),
      response: {
        200: refTo<typeof BallSelectionResponse>('BallSelectionResponse'),
        422: problem('Cannot exist, or takes more work than one request may'),
      },
    },
    handler: async (body, request) => {
      const selection = await app.runTask(
        'ballSelection',
        toBallSelectionInput(await seasonedWithin(app, body, request)),
        request,
      )
      if (selection.ok) return toSelectionAnswer(selection.value, body)
      throw refusedQuestion(selection.error, body.design, explainRefusal)
    },
  })
}
