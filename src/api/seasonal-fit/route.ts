import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { SEASONAL_FIT } from '#shared/questions/season/input.ts'
import { placed } from '#src/api/climate.ts'
import { refusedQuestion } from '#src/api/refusal.ts'
import { seasonedWithin } from '#src/api/seasoned.ts'
import { servedBy } from '#src/api/served.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { notValid, problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { seasonRefusalSentence } from '#src/words/season-refusal.ts'
import { scaleOf, toSeasonalFitInput, toSeasonalFitResponse } from './present.ts'
import type { SeasonalFitRequest, SeasonalFitResponse } from './schema.ts'

export const seasonalFitRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/seasonal-fit',
    schema: {
      operationId: 'seasonalFit',
      tags: ['bearing'],
      summary: 'What a year of changing humidity does to a bearing',
      description: `Will it still run in every season? Send a design that states the woods, and the humidity today and over the year, in \`making\`. You get the gap, the play and the other room in each state with the chance that the bearing runs, the range of humidity in which it runs, and what to change. ${servedBy(SEASONAL_FIT)}`,
      body: refTo<typeof SeasonalFitRequest>('SeasonalFitRequest'),
      response: {
        200: refTo<typeof SeasonalFitResponse>('SeasonalFitResponse'),
        422: problem('Cannot exist, or takes more work than one request may'),
      },
    },
    handler: async (body, request) => {
      const input = toSeasonalFitInput(await seasonedWithin(app, body, request))
      if (!input.ok) throw notValid(input.error)
      const season = await app.runTask('seasonalFit', input.value, request)
      if (season.ok) return toSeasonalFitResponse(season.value, body)
      throw refusedQuestion(placed(season.error), body.design, (refusal, _units, terms) =>
        seasonRefusalSentence(refusal, scaleOf(body), terms),
      )
    },
  })
}
