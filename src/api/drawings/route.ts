import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import type { FastifyRequest } from 'fastify'
import { design } from '#shared/bearing/arrangements.ts'
import { bearingAddress, wayToBearing } from '#src/api/bearing-address.ts'
import { toDesignInput } from '#src/api/design-input.ts'
import { faultName } from '#src/api/fault-name.ts'
import { refusedDesign } from '#src/api/refusal.ts'
import { seasonedDesign } from '#src/api/seasoned.ts'
import { EVERY_ARRANGEMENT, servedBy } from '#src/api/served.ts'
import { paperFor } from '#src/api/sheet-options.ts'
import { VIEWS, type View } from '#src/drawings/view.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { problem } from '#src/http/problem.ts'
import { FIGURE_STYLE } from './figure-style.ts'
import { Drawn, drawingRef, FORMATS } from './schema.ts'

/** The path has been held to the names that there are. */
const named = ({ params }: FastifyRequest) => params as { readonly view: View; readonly format: keyof typeof FORMATS }

export const drawingsRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/drawings/:view.:format',
    get: true,
    choices: {
      view: { names: VIEWS, description: 'The view to draw.' },
      format: { names: Object.keys(FORMATS), description: 'The format of the file.' },
    },
    style: FIGURE_STYLE,
    nameOf: faultName,
    wayBack: wayToBearing,
    mediaTypes: (request) => [FORMATS[named(request).format]],
    schema: {
      operationId: 'drawing',
      tags: ['drawings'],
      summary: 'Draw a bearing, its templates or its gauges',
      description: `What does it look like, and what do I cut by? Send a design, and name the view and the format in the path. You get an assembly drawing, templates or gauges; DXF and PDF come in full size. ${servedBy(EVERY_ARRANGEMENT)}`,
      body: drawingRef,
      response: {
        200: Drawn,
        422: problem('Cannot exist, or takes more work than one request may'),
        503: problem('Too busy'),
      },
    },
    handler: async (body, request) => {
      const made = design(toDesignInput(await seasonedDesign(app, body, request)))
      if (!made.ok) throw refusedDesign(made.error, body)
      const { view, format } = named(request)
      const { drawn } = await import('./present.ts') // a start has no time for all that draws
      const address = bearingAddress(app.publicUrl, body, made.value)
      return drawn(app, made.value, { view, format, paper: paperFor(body), address }, request)
    },
  })
}
