import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { FIT_CORRECTION } from '#shared/questions/fit/fit-correction.ts'
import type { FitCorrectionResponse } from '#src/api/fit-correction/arrangements/all.ts'
import { refusedQuestion } from '#src/api/refusal.ts'
import { seasonedWithin } from '#src/api/seasoned.ts'
import { servedBy } from '#src/api/served.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { notValid, problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { explainFitRefusal } from '#src/words/fit-correction.ts'
import { toFitAnswer, toFitCorrectionInput } from './present.ts'
import type { FitCorrectionRequest } from './schema.ts'

export const fitCorrectionRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/fit-correction',
    schema: {
      operationId: 'fitCorrection',
      tags: ['bearing'],
      summary: 'From your readings: cut, measure again, or stop',
      description: `I have cut and measured: how much more must come off? Send the design, the ring on the lathe and your readings. You get the present state with its uncertainty, the next cut with its risk, and the ways to rescue a groove that is too deep. ${servedBy(FIT_CORRECTION)}`,
      body: refTo<typeof FitCorrectionRequest>('FitCorrectionRequest'),
      response: {
        200: refTo<typeof FitCorrectionResponse>('FitCorrectionResponse'),
        422: problem('Cannot exist, or takes more work than one request may'),
      },
    },
    handler: async (body, request) => {
      const input = toFitCorrectionInput(await seasonedWithin(app, body, request))
      if (!input.ok) throw notValid(input.error)
      const fit = await app.runTask('fitCorrection', input.value, request)
      if (fit.ok) return toFitAnswer(fit.value, body)
      throw refusedQuestion(fit.error, body.design, explainFitRefusal)
    },
  })
}
