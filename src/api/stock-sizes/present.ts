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
import {
  METRIC_HARDWOOD_THICKNESSES,
  METRIC_PLANING,
  METRIC_SOFTWOOD_THICKNESSES,
  METRIC_SOFTWOOD_WIDTHS,
} from '#shared/data/metric-lumber.ts'
import type { SourceId } from '#shared/data/sources.ts'
import { inches, type Mm, mm } from '#shared/units/length.ts'
import { toMm } from '#src/api/length.ts'
import { shownBy } from '#src/api/schema.ts'
import { toSource } from '#src/api/source.ts'
import { StockSize, type StockSizesRequest, type StockSizesResponse } from './schema.ts'

/** A row of any table, in the core's millimetres. */
type Size = Omit<Static<typeof StockSize>, 'rough' | 'dressed' | 'green' | 'source' | 'dressedSource'> & {
  readonly rough?: Mm
  readonly dressed: Mm
  readonly green?: Mm
  readonly source: SourceId
  readonly dressedSource?: SourceId
}

const softwood = (kind: Size['kind'], measure: Size['measure'], rows: readonly DressedSize[]): readonly Size[] =>
  rows.map(({ nominal, dry, green }) => ({
    system: 'inch',
    kind,
    measure,
    nominal,
    dressed: inches(dry),
    green: inches(green),
    source: 'ps-20',
  }))

const hardwood = ({ nominal, rough, surfaced }: HardwoodThickness): Size => ({
  system: 'inch',
  kind: 'hardwood',
  measure: 'thickness',
  nominal,
  rough: inches(rough),
  dressed: inches(surfaced),
  source: 'nhla',
})

const sawn = (kind: Size['kind'], measure: Size['measure'], sizes: readonly number[]): readonly Size[] =>
  sizes.map((size) => ({
    system: 'metric',
    kind,
    measure,
    nominal: `${size} mm`,
    rough: mm(size),
    dressed: mm(size - METRIC_PLANING),
    source: 'en-1313',
    dressedSource: 'trade',
  }))

const SIZES: readonly Size[] = [
  ...softwood('softwood-board', 'thickness', BOARD_THICKNESSES),
  ...softwood('softwood-board', 'width', BOARD_WIDTHS),
  ...softwood('softwood-dimension', 'thickness', DIMENSION_THICKNESSES),
  ...softwood('softwood-dimension', 'width', DIMENSION_WIDTHS),
  ...HARDWOOD_THICKNESSES.map(hardwood),
  ...sawn('softwood-board', 'thickness', METRIC_SOFTWOOD_THICKNESSES),
  ...sawn('softwood-board', 'width', METRIC_SOFTWOOD_WIDTHS),
  ...sawn('hardwood', 'thickness', METRIC_HARDWOOD_THICKNESSES),
]

export function toStockSizesResponse(query: StockSizesRequest): StockSizesResponse {
  const { units, system, kind, measure } = query
  const min = query.min === undefined ? 0 : toMm(query.min, units)
  const max = query.max === undefined ? Number.POSITIVE_INFINITY : toMm(query.max, units)
  const sizes = SIZES.filter(
    (size) =>
      (system === undefined || size.system === system) &&
      (kind === undefined || size.kind === kind) &&
      (measure === undefined || size.measure === measure) &&
      size.dressed >= min &&
      size.dressed <= max,
  )
  const used = new Set(
    sizes.flatMap(({ source, dressedSource }) => [source, ...(dressedSource === undefined ? [] : [dressedSource])]),
  )
  return { units, sizes: sizes.map((size) => shownBy(StockSize, size, units)), sources: [...used].map(toSource) }
}
