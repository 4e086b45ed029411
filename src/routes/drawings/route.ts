import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { Type } from 'typebox'
import { design } from '#shared/bearing/design.ts'
import { drawingOf, VIEWS, type View } from '#src/drawings/views.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { toDesignInput } from '#src/wire/design-input.ts'
import { refuseDesign } from '#src/wire/refusal.ts'
import { DrawingRequest } from './schema.ts'

const SVG_TYPE = 'image/svg+xml'

export const DRAWING_SCHEMAS = [DrawingRequest]

export const drawingsRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/drawings/:view.:format',
    get: true,
    choices: { view: VIEWS, format: ['svg'] },
    mediaTypes: [SVG_TYPE],
    schema: {
      operationId: 'drawing',
      tags: ['drawings'],
      summary: 'A bearing, drawn',
      body: refTo<typeof DrawingRequest>('DrawingRequest'),
      response: {
        200: {
          description: 'The drawing, its size in millimetres',
          content: { [SVG_TYPE]: { schema: Type.String() } },
        },
        422: problem('Cannot exist'),
      },
    },
    handler: (body, request, reply) => {
      const designed = design(toDesignInput(body))
      if (!designed.ok) return refuseDesign(reply, designed.error, body.units)
      const { view } = request.params as { view: View }
      return toSvg(drawingOf(view, designed.value, body.paper ?? (body.units === 'in' ? 'letter' : 'a4')))
    },
  })
}
