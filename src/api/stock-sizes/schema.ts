import { type Static, Type } from 'typebox'
import type { Length, ShownLength } from '#src/api/length.ts'
import type { Source } from '#src/api/source.ts'
import type { UnitsName } from '#src/api/units.ts'
import { refTo } from '#src/http/schema.ts'

const shown = (description: string) =>
  Type.Unsafe<ShownLength>({ ...refTo<typeof ShownLength>('ShownLength'), description })
const asked = (description: string) =>
  Type.Optional(Type.Unsafe<Length>({ ...refTo<typeof Length>('Length'), description }))

const KINDS = ['softwood-board', 'softwood-dimension', 'hardwood'] as const
const kind = (description: string) =>
  Type.Unsafe<(typeof KINDS)[number]>(Type.Enum(KINDS, { type: 'string', description }))

export const StockSizesRequest = Type.Object(
  {
    units: refTo<typeof UnitsName>('Units'),
    kind: Type.Optional(kind('Show only this kind of lumber.')),
    measure: Type.Optional(
      Type.Unsafe<'thickness' | 'width'>(
        Type.Enum(['thickness', 'width'], { type: 'string', description: 'Show only thicknesses, or only widths.' }),
      ),
    ),
    min: asked('Show only sizes that are at least this large when dressed and dry.'),
    max: asked('Show only sizes that are at most this large when dressed and dry.'),
  },
  { description: 'The sizes of lumber to show.', additionalProperties: false },
)
export type StockSizesRequest = Static<typeof StockSizesRequest>

export const StockSize = Type.Object(
  {
    kind: kind('Softwood boards and dimension lumber, or hardwood, which comes in random widths.'),
    measure: Type.Unsafe<'thickness' | 'width'>(
      Type.Enum(['thickness', 'width'], { type: 'string', description: 'Whether this is a thickness or a width.' }),
    ),
    nominal: Type.String({ description: 'The name of the size, in inches; for hardwood in quarters of an inch.' }),
    rough: Type.Optional(shown('Size as sawn (hardwood).')),
    dressed: shown('Size planed and dry: softwood at 19 % of moisture or less, hardwood surfaced on two sides.'),
    green: Type.Optional(shown('Size planed while green (softwood).')),
    source: Type.String({ description: 'The `id` of the source in `sources`.' }),
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
