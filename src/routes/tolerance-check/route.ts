import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { Type } from 'typebox'
import { computingRoute } from '#src/http/computing-route.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { notValid, problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { wordedFor } from '#src/wire/arrangement-words.ts'
import { refuseQuestion } from '#src/wire/refusal.ts'
import { checkTolerance } from '#src/workers/tolerance-check.ts'
import { CONTRIBUTOR_SCHEMAS } from './contributors.ts'
import { ANSWER_SCHEMAS, ToleranceCheckRequest, type ToleranceCheckResponse, ToleranceLimits } from './schema.ts'
import { toGapSheet } from './sheet.ts'
import { checkRefusalWords, toToleranceCheckInput, toToleranceCheckResponse } from './translate.ts'

export const TOLERANCE_CHECK_SCHEMAS = [
  ...CONTRIBUTOR_SCHEMAS,
  ToleranceLimits,
  ToleranceCheckRequest,
  ...ANSWER_SCHEMAS,
]

const SVG_TYPE = 'image/svg+xml'

export const toleranceCheckRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/tolerance-check',
    mediaTypes: [JSON_TYPE, SVG_TYPE],
    schema: {
      operationId: 'toleranceCheck',
      tags: ['bearing'],
      summary: 'Will it run when cuts and balls are not perfect: how often, what decides it, and where to aim',
      body: refTo<typeof ToleranceCheckRequest>('ToleranceCheckRequest'),
      response: {
        200: {
          description: 'How often it runs, and why not more often',
          content: {
            [JSON_TYPE]: { schema: refTo<typeof ToleranceCheckResponse>('ToleranceCheckResponse') },
            [SVG_TYPE]: { schema: Type.String({ description: 'How the ball gap is spread, with limits and aim.' }) },
          },
        },
        422: problem('Cannot exist'),
        503: problem('Too busy, or too long'),
      },
    },
    handler: async (body, request, reply, mediaType) => {
      const input = toToleranceCheckInput(body)
      if (!input.ok) throw notValid(input.error)
      const checked = await app.inParts(request, (runPart, atOnce) => checkTolerance(input.value, runPart, atOnce))
      if (checked.ok)
        return mediaType === SVG_TYPE
          ? toGapSheet(checked.value)
          : wordedFor(body.design, toToleranceCheckResponse(checked.value, body))
      return refuseQuestion(reply, checked.error, body.design, checkRefusalWords(body))
    },
  })
}
