import { Type } from 'typebox'
import { type DesignRequest, designRequests } from '#src/api/design-input.ts'
import { text } from '#src/api/schema.ts'
import { engine, paper } from '#src/api/sheet-options.ts'
import type { Paper } from '#src/drawings/papers.ts'

export const DRAWING_SCHEMAS = designRequests('Drawing', 'A bearing to draw, and what to draw it on.', {
  paper,
  engine,
})

export type DrawingRequest = DesignRequest & { readonly paper?: Paper }
export const drawingRef = Type.Unsafe<DrawingRequest>(Type.Ref('DrawingRequest'))

export const FORMATS = {
  svg: 'image/svg+xml',
  dxf: 'image/vnd.dxf',
  pdf: 'application/pdf',
  html: 'text/html',
} as const

const drawn = (description: string) => ({ schema: text(description) })

export const Drawn = {
  description: 'The drawing',
  content: {
    [FORMATS.svg]: drawn('SVG with its size in millimetres, styled by attributes alone.'),
    [FORMATS.dxf]: drawn('Release 12, full size, in millimetres, a layer for each purpose.'),
    [FORMATS.pdf]: drawn('PDF in full size on sheets of `paper`, with a bar to measure first.'),
    [FORMATS.html]: drawn('A figure for an `<iframe>`, as wide as that, light or dark.'),
  },
} as const
