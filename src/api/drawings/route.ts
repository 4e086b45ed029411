import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import type { FastifyRequest } from 'fastify'
import { anyDesign } from '#shared/bearing/any-design.ts'
import { toDesignInput } from '#src/api/design-input.ts'
import { refuseDesign } from '#src/api/refusal.ts'
import { paperFor } from '#src/api/sheet-options.ts'
import { VIEWS, type View } from '#src/drawings/view.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { FIGURE_STYLE } from './figure-style.ts'
import { DrawingRequest, Drawn, FORMATS } from './schema.ts'

/** The path has been held to the names that there are. */
const named = ({ params }: FastifyRequest) => params as { readonly view: View; readonly format: keyof typeof FORMATS }

export const DRAWING_SCHEMAS = [DrawingRequest]

export const drawingsRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/drawings/:view.:format',
    get: true,
    choices: { view: VIEWS, format: Object.keys(FORMATS) },
    style: FIGURE_STYLE,
    mediaTypes: (request) => [FORMATS[named(request).format]],
    schema: {
      operationId: 'drawing',
      tags: ['drawings'],
      summary: 'A bearing, drawn',
      body: refTo<typeof DrawingRequest>('DrawingRequest'),
      response: {
        200: Drawn,
        422: problem('Cannot exist, or takes more work than one request may'),
        503: problem('Too busy'),
      },
    },
    handler: async (body, request, reply) => {
      const designed = anyDesign(toDesignInput(body), 'drawings')
      if (!designed.ok) return refuseDesign(reply, designed.error, body)
      const { view, format } = named(request)
      const { drawn } = await import('./present.ts') // a start has no time for all that draws
      return drawn(app, designed.value, { view, format, paper: paperFor(body) }, request, reply)
    },
  })
}
