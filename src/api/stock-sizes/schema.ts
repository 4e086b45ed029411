import { type Static, Type } from 'typebox'
import { length, shownLength as shown } from '#src/api/length.ts'
import type { Source } from '#src/api/source.ts'
import type { UnitsName } from '#src/api/units.ts'
import { refTo } from '#src/http/schema.ts'

const KINDS = ['softwood-board', 'softwood-dimension', 'hardwood'] as const
const kind = (description: string) =>
  Type.Unsafe<(typeof KINDS)[number]>(Type.Enum(KINDS, { type: 'string', description }))

export const StockSizesRequest = Type.Object(
  {
    units: refTo<typeof UnitsName>('Units'),
    kind: Type.Optional(kind('Show only this kind.')),
    measure: Type.Optional(
      Type.Unsafe<'thickness' | 'width'>(
        Type.Enum(['thickness', 'width'], { type: 'string', description: 'Show only thicknesses, or only widths.' }),
      ),
    ),
    min: Type.Optional(length('Show only sizes of at least this, dressed and dry.')),
    max: Type.Optional(length('Show only sizes of at most this, dressed and dry.')),
  },
  { description: 'Which sizes of lumber to show. Default: all.', additionalProperties: false },
)
export type StockSizesRequest = Static<typeof StockSizesRequest>

export const StockSize = Type.Object(
  {
    kind: kind('Softwood boards and dimension lumber, or hardwood, which comes in random widths.'),
    measure: Type.Unsafe<'thickness' | 'width'>(
      Type.Enum(['thickness', 'width'], { type: 'string', description: 'Whether this is a thickness or a width.' }),
    ),
    nominal: Type.String({ description: 'Nominal size: in inches for softwood, in quarters of an inch for hardwood.' }),
    rough: Type.Optional(shown('Size as sawn (hardwood).')),
    dressed: shown(
      'Size when planed and dry: softwood at 19 % moisture content or less, hardwood surfaced on two sides.',
    ),
    green: Type.Optional(shown('Size when planed green (softwood).')),
    source: Type.String({ description: 'The row of `sources` that the size comes from.' }),
  },
  { $id: 'StockSize', description: 'A size of lumber: the smallest that the standard allows.' },
)

export const StockSizesResponse = Type.Object(
  {
    units: refTo<typeof UnitsName>('Units'),
    sizes: Type.Array(refTo<typeof StockSize>('StockSize')),
    sources: Type.Array(refTo<typeof Source>('Source')),
  },
  { $id: 'StockSizesResponse', description: 'Sizes of lumber.' },
)
export type StockSizesResponse = Static<typeof StockSizesResponse>
