import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { TOLERANCE_CHECK } from '#shared/questions/tolerance/input.ts'
import { placed } from '#src/api/climate.ts'
import { refusedQuestion } from '#src/api/refusal.ts'
import { seasonedWithin } from '#src/api/seasoned.ts'
import { servedBy } from '#src/api/served.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { notValid, problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { unitsOfCheck } from '#src/workers/estimate.ts'
import { checkTolerance } from '#src/workers/tolerance-check.ts'
import { checkRefusalWords, toToleranceAnswer, toToleranceCheckInput } from './present.ts'
import type { ToleranceCheckRequest } from './request-schema.ts'
import { ANSWERS, SVG_TYPE } from './schema.ts'
import { toGapSheet } from './sheet.ts'

export const toleranceCheckRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/tolerance-check',
    mediaTypes: [JSON_TYPE, SVG_TYPE],
    schema: {
      operationId: 'toleranceCheck',
      tags: ['bearing'],
      summary: 'How often a bearing fits when nothing is perfect',
      description: `Will it run when my cuts, my balls and the weather are not perfect? Send a design and how far each contributor scatters. You get the spread and the worst case of the ball gap and of the play, the chance that the bearing fits, the share of each contributor, and the depth to aim for. ${servedBy(TOLERANCE_CHECK)}`,
      body: refTo<typeof ToleranceCheckRequest>('ToleranceCheckRequest'),
      response: {
        200: {
          description: 'How often the bearing runs, and why not more often',
          content: ANSWERS,
        },
        422: problem('Cannot exist, or takes more work than one request may'),
      },
    },
    handler: async (body, request, mediaType) => {
      const input = toToleranceCheckInput(await seasonedWithin(app, body, request))
      if (!input.ok) throw notValid(input.error)
      const expected = { task: 'runTrials', units: unitsOfCheck(input.value), isSpread: true } as const
      const checked = await app.inParts(request, expected, (runPart, atOnce) =>
        checkTolerance(input.value, runPart, atOnce),
      )
      if (checked.ok)
        return mediaType === SVG_TYPE ? toGapSheet(checked.value, body) : toToleranceAnswer(checked.value, body)
      throw refusedQuestion(placed(checked.error), body.design, checkRefusalWords(body))
    },
  })
}
