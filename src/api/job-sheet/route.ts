import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { design } from '#shared/bearing/arrangements.ts'
import { bearingAddress, wayToBearing } from '#src/api/bearing-address.ts'
import { toDesignInput } from '#src/api/design-input.ts'
import { faultName } from '#src/api/fault-name.ts'
import { refusedDesign } from '#src/api/refusal.ts'
import { seasonedDesign } from '#src/api/seasoned.ts'
import { EVERY_ARRANGEMENT, servedBy } from '#src/api/served.ts'
import { paperFor } from '#src/api/sheet-options.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { problem } from '#src/http/problem.ts'
import { STYLE } from '#src/job-sheet/style.ts'
import { jobSheetRef, offeredTypes, SHEET_TYPES, Sheet } from './schema.ts'

export const jobSheetRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/job-sheet',
    get: true,
    style: STYLE,
    nameOf: faultName,
    wayBack: wayToBearing,
    mediaTypes: offeredTypes,
    schema: {
      operationId: 'jobSheet',
      tags: ['drawings'],
      summary: 'The operations in order, each with its sizes',
      description: `How do I make it, step by step? Send a design, with the machines that you have in \`making\`. You get the operations in order, each with its tool, the size to stop at, the check and the common mistake, as JSON, as a page or as a PDF to print. ${servedBy(EVERY_ARRANGEMENT)}`,
      body: jobSheetRef,
      response: {
        200: Sheet,
        422: problem('Cannot exist, or takes more work than one request may'),
        503: problem('Too busy'),
      },
    },
    handler: async (body, request, mediaType) => {
      const filled = await seasonedDesign(app, { ...body, making: body.making ?? {} }, request)
      const made = design(toDesignInput(filled))
      if (!made.ok) throw refusedDesign(made.error, body)
      const { toJobSheet } = await import('./present.ts')
      const sheet = toJobSheet(made.value, body)
      const address = bearingAddress(app.publicUrl, body, made.value)
      if (mediaType === SHEET_TYPES.pdf) {
        const { toPages } = await import('#src/job-sheet/pages.ts')
        return app
          .runTask('pdf', toPages(sheet, paperFor(body), body.form, address), request)
          .then((written) => Buffer.from(written))
      }
      if (mediaType !== SHEET_TYPES.html) return sheet
      const { toHtml } = await import('#src/job-sheet/html.ts')
      return toHtml(sheet, body.form, address)
    },
  })
}
