import { type Static, Type } from 'typebox'
import { length, shownLength as shown } from '#src/api/length.ts'
import { choiceOf, named, requestObject, text } from '#src/api/schema.ts'
import type { Source } from '#src/api/source.ts'
import { system } from '#src/api/system.ts'
import type { UnitsName } from '#src/api/units.ts'
import { refTo } from '#src/http/schema.ts'

const KINDS = ['softwood-board', 'softwood-dimension', 'hardwood'] as const
const kind = (description: string) => Type.Unsafe<(typeof KINDS)[number]>(choiceOf(description, KINDS))

export const StockSizesRequest = requestObject('Which sizes of lumber to show. Default: all.', {
  units: refTo<typeof UnitsName>('Units'),
  system: Type.Optional(system('Show only sizes of sawmills that cut in inches, or in millimetres.')),
  kind: Type.Optional(kind('Show only this kind.')),
  measure: Type.Optional(
    choiceOf<'thickness' | 'width'>('Show only thicknesses, or only widths.', ['thickness', 'width']),
  ),
  min: Type.Optional(length('Show only sizes of at least this, dressed and dry.')),
  max: Type.Optional(length('Show only sizes of at most this, dressed and dry.')),
})
export type StockSizesRequest = Static<typeof StockSizesRequest>

export const StockSize = named('StockSize', 'A size of lumber: the smallest that the standard allows.', {
  system: system('Whether sawmills cut it in inches or in millimetres.'),
  kind: kind('Softwood boards and dimension lumber, or hardwood, which comes in random widths.'),
  measure: choiceOf<'thickness' | 'width'>('Whether this is a thickness or a width.', ['thickness', 'width']),
  nominal: text(
    'Nominal size: in inches for softwood, in quarters of an inch for hardwood, with its unit where it is metric.',
  ),
  rough: Type.Optional(shown('Size as sawn (hardwood, and all metric sizes).')),
  dressed: shown(
    'Size when planed and dry: softwood at 19 % moisture content or less, hardwood surfaced on two sides, metric boards 5 mm less than sawn.',
  ),
  green: Type.Optional(shown('Size when planed green (softwood).')),
  source: text('The row of `sources` that the size comes from.'),
  dressedSource: Type.Optional(text('The row of `sources` for the dressed size, where it has one of its own.')),
})

export const StockSizesResponse = named('StockSizesResponse', 'Sizes of lumber.', {
  units: refTo<typeof UnitsName>('Units'),
  sizes: Type.Array(refTo<typeof StockSize>('StockSize')),
  sources: Type.Array(refTo<typeof Source>('Source')),
})
export type StockSizesResponse = Static<typeof StockSizesResponse>
