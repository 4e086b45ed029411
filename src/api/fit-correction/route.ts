import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { refuseQuestion } from '#src/api/refusal.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { notValid, problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { explainFitRefusal } from '#src/words/fit-correction.ts'
import { toFitAnswer, toFitCorrectionInput } from './present.ts'
import type { FitCorrectionRequest, FitCorrectionResponse } from './schema.ts'

export const fitCorrectionRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/fit-correction',
    schema: {
      operationId: 'fitCorrection',
      tags: ['bearing'],
      summary:
        'From what was measured at a groove: cut, measure or stop, with the risk, and the ways out of a groove that is too deep',
      body: refTo<typeof FitCorrectionRequest>('FitCorrectionRequest'),
      response: {
        200: refTo<typeof FitCorrectionResponse>('FitCorrectionResponse'),
        422: problem('Cannot exist, or takes more work than one request may'),
        503: problem('Too busy'),
      },
    },
    handler: async (body, request, reply) => {
      const input = toFitCorrectionInput(body)
      if (!input.ok) throw notValid(input.error)
      const fit = await app.runTask('fitCorrection', input.value, request)
      if (fit.ok) return toFitAnswer(fit.value, body)
      return refuseQuestion(reply, fit.error, body.design, explainFitRefusal)
    },
  })
}
