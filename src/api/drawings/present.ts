import type { FastifyInstance, FastifyRequest } from 'fastify'
import type { Design } from '#shared/bearing/arrangements.ts'
import type { Paper } from '#src/drawings/papers.ts'
import { qrCode } from '#src/drawings/qr-code.ts'
import type { View } from '#src/drawings/view.ts'
import { drawingOf, pagesOfView } from '#src/drawings/views.ts'
import { toDxf } from '#src/drawings/writers/dxf.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { refused } from '#src/http/problem.ts'
import { tooManyPages } from '#src/words/drawing.ts'
import { NO_ANSWER } from '#src/words/problem.ts'
import { toFigure } from './figure.ts'
import type { FORMATS } from './schema.ts'

export type Wanted = {
  readonly view: View
  readonly format: keyof typeof FORMATS
  readonly paper: Paper
  /** Leads back to the bearing. */
  readonly address: string | undefined
}

/** A view of a design as the bytes of a format; a PDF is written in a worker thread. */
export function drawn(
  app: FastifyInstance,
  design: Design,
  { view, format, paper, address }: Wanted,
  request: FastifyRequest,
): string | Promise<Buffer> {
  if (format === 'dxf') return toDxf(drawingOf(view, design, paper, 'machine'))
  const code = address === undefined ? undefined : qrCode(address)
  if (format === 'svg') return toSvg(drawingOf(view, design, paper, 'paper', code))
  if (format === 'html') return toFigure(view, drawingOf(view, design, paper, 'paper', code), design)
  const pages = pagesOfView(view, design, paper, code)
  if (pages.ok) return app.runTask('pdf', pages.value, request).then((written) => Buffer.from(written))
  const { pages: needed, most } = pages.error
  throw refused(NO_ANSWER, [{ path: '', message: tooManyPages(needed, most, paper) }])
}
