import type { Static } from 'typebox'
import {
  BOARD_THICKNESSES,
  BOARD_WIDTHS,
  DIMENSION_THICKNESSES,
  DIMENSION_WIDTHS,
  type DressedSize,
  HARDWOOD_THICKNESSES,
  type HardwoodThickness,
} from '#shared/data/lumber.ts'
import type { SourceId } from '#shared/data/sources.ts'
import { inches, type Mm } from '#shared/units/length.ts'
import { toMm } from '#src/api/length.ts'
import { shownBy } from '#src/api/schema.ts'
import { toSource } from '#src/api/source.ts'
import { StockSize, type StockSizesRequest, type StockSizesResponse } from './schema.ts'

/** A row of any table, in the core's millimetres. */
type Size = Omit<Static<typeof StockSize>, 'rough' | 'dressed' | 'green' | 'source'> & {
  readonly rough?: Mm
  readonly dressed: Mm
  readonly green?: Mm
  readonly source: SourceId
}

const softwood = (kind: Size['kind'], measure: Size['measure'], rows: readonly DressedSize[]): readonly Size[] =>
  rows.map(({ nominal, dry, green }) => ({
    kind,
    measure,
    nominal,
    dressed: inches(dry),
    green: inches(green),
    source: 'ps-20',
  }))

const hardwood = ({ nominal, rough, surfaced }: HardwoodThickness): Size => ({
  kind: 'hardwood',
  measure: 'thickness',
  nominal,
  rough: inches(rough),
  dressed: inches(surfaced),
  source: 'nhla',
})

const SIZES: readonly Size[] = [
  ...softwood('softwood-board', 'thickness', BOARD_THICKNESSES),
  ...softwood('softwood-board', 'width', BOARD_WIDTHS),
  ...softwood('softwood-dimension', 'thickness', DIMENSION_THICKNESSES),
  ...softwood('softwood-dimension', 'width', DIMENSION_WIDTHS),
  ...HARDWOOD_THICKNESSES.map(hardwood),
]

export function toStockSizesResponse(query: StockSizesRequest): StockSizesResponse {
  const { units, kind, measure } = query
  const min = query.min === undefined ? 0 : toMm(query.min, units)
  const max = query.max === undefined ? Number.POSITIVE_INFINITY : toMm(query.max, units)
  const sizes = SIZES.filter(
    (size) =>
      (kind === undefined || size.kind === kind) &&
      (measure === undefined || size.measure === measure) &&
      size.dressed >= min &&
      size.dressed <= max,
  )
  const used = new Set(sizes.map(({ source }) => source))
  return { units, sizes: sizes.map((size) => shownBy(StockSize, size, units)), sources: [...used].map(toSource) }
}
