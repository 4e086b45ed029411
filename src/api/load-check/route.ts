import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { loadCheck, loadNameOf } from '#shared/questions/load/load-check.ts'
import { type LoadCheckResponse, toLoadAnswer } from '#src/api/load-check/arrangements/all.ts'
import { safeOffsetCurveOf, toSafeOffsetSheet } from '#src/api/load-check/arrangements/turntable-sheet.ts'
import { refusedQuestion } from '#src/api/refusal.ts'
import { text } from '#src/api/schema.ts'
import { seasonedWithin } from '#src/api/seasoned.ts'
import { EVERY_ARRANGEMENT, servedBy } from '#src/api/served.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { notValid, problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { explainRefusal } from '#src/words/load-check.ts'
import { toLoadCheckInput } from './present.ts'
import type { LoadCheckRequest } from './schema.ts'
import { spokenOf } from './shared-answer.ts'

const SVG_TYPE = 'image/svg+xml'

export const loadCheckRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/load-check',
    // Only what carries a load along its axis has a picture: of how far out that may stand.
    mediaTypes: ({ body }) =>
      loadNameOf((body as LoadCheckRequest).design) === 'axialLoad' ? [JSON_TYPE, SVG_TYPE] : [JSON_TYPE],
    schema: {
      operationId: 'loadCheck',
      tags: ['bearing'],
      summary: 'Working load, speed limit and friction of a bearing under a load',
      description: `What can it carry, and how fast may it turn? Send a design, the woods, a load and perhaps a speed. You get the working load below which no ball leaves a mark, the load that ruins the bearing, the speed by hand and the limit beyond it with its reason, the load on each ball, what it takes to turn, and the contact stress beside the strength of the wood: estimates, not a safety rating. For a turntable, \`Accept: image/svg+xml\` draws how far from the axis the load may stand at each speed. ${servedBy(EVERY_ARRANGEMENT)}`,
      body: refTo<typeof LoadCheckRequest>('LoadCheckRequest'),
      response: {
        200: {
          description: 'Loads that the bearing carries, and its speed limits',
          content: {
            [JSON_TYPE]: { schema: refTo<typeof LoadCheckResponse>('LoadCheckResponse') },
            [SVG_TYPE]: {
              schema: text('Safe offset of the load of a turntable against speed.'),
            },
          },
        },
        422: problem('Cannot exist, or takes more work than one request may'),
        503: problem('Too busy'),
      },
    },
    handler: async (body, request, mediaType) => {
      const input = toLoadCheckInput(await seasonedWithin(app, body, request))
      if (!input.ok) throw notValid(input.error)
      const check = loadCheck(input.value)
      if (!check.ok) throw refusedQuestion(check.error, body.design, explainRefusal)
      const { value } = check
      if (mediaType !== SVG_TYPE || !('turntable' in value)) return toLoadAnswer(value, body)
      return app
        .runTask('safeOffsets', safeOffsetCurveOf(value), request)
        .then((curve) => toSafeOffsetSheet(value, curve, spokenOf(body), body.friction !== undefined))
    },
  })
}
