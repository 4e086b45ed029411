import { type Static, Type } from 'typebox'
import { PAPERS, type Paper } from '#src/drawings/papers.ts'
import { DesignRequest } from '#src/wire/design-input.ts'

export const DrawingRequest = Type.Object(
  {
    ...DesignRequest.properties,
    paper: Type.Optional(
      Type.Unsafe<Paper>(
        Type.Enum(PAPERS, {
          type: 'string',
          description: 'The paper to print on. Default: letter for inches, a4 for millimetres.',
        }),
      ),
    ),
    engine: Type.Optional(
      Type.String({
        maxLength: 20,
        pattern: '^[0-9]+\\.[0-9]+\\.[0-9]+$',
        description:
          'The version of this service, `info.version` of its description: then the answer may be kept for ever.',
      }),
    ),
  },
  { $id: 'DrawingRequest', description: 'A bearing to draw, and what to draw it on.', additionalProperties: false },
)
export type DrawingRequest = Static<typeof DrawingRequest>

export const paperFor = ({ paper, units }: Pick<DrawingRequest, 'paper' | 'units'>): Paper =>
  paper ?? (units === 'in' ? 'letter' : 'a4')

export const FORMATS = { svg: 'image/svg+xml', dxf: 'image/vnd.dxf', pdf: 'application/pdf' } as const

const text = (description: string) => ({ schema: Type.String({ description }) })

export const Drawn = {
  description: 'The drawing',
  content: {
    [FORMATS.svg]: text('Its size in millimetres, its lines and texts by attributes alone.'),
    [FORMATS.dxf]: text('Release 12, full size, in millimetres, a layer for each purpose.'),
    [FORMATS.pdf]: text('In full size on sheets of `paper`, with a bar to measure first.'),
  },
} as const
