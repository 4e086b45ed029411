import { ARRANGEMENTS } from '#shared/bearing/arrangements.ts'
import type { BallRing } from '#shared/bearing/ball-ring.ts'
import type { PlateSizeRow, SizeRow, SizeTable, SizeTableInput } from '#shared/questions/size-table/size-table.ts'
import { mm, type Units } from '#shared/units/length.ts'
import { tagOf } from '#src/api/answer.ts'
import { fromRequest } from '#src/api/fields.ts'
import { show, toMm } from '#src/api/length.ts'
import { toCsv } from '#src/http/csv.ts'
import type { PlateSizeTableRow, SizeTableRequest, SizeTableResponse, SizeTableRow } from './schema.ts'

export function toSizeTableInput(request: SizeTableRequest): SizeTableInput {
  const { units, arrangement, diameters, counts } = request
  const fields = fromRequest(ARRANGEMENTS[arrangement].fields.fields, request, units)
  return {
    units,
    arrangement,
    diameters: diameters.map((diameter) => toMm(diameter, units)),
    counts,
    ...fields,
  } as SizeTableInput
}

/** The answer with a table: its rows as JSON, and the same rows for a spreadsheet. */
export interface TableAnswer {
  readonly json: SizeTableResponse
  readonly csv: () => string
}

export function toTableAnswer(table: SizeTable, { units, arrangement }: SizeTableRequest): TableAnswer {
  if (table.of === 'plates') {
    const rows = table.rows.map((row) => toPlateRow(row, units))
    return { json: { arrangement: 'thrust', units, rows }, csv: () => csvOf(rows, PLATE_COLUMNS, units) }
  }
  const rows = table.rows.map((row) => toRow(row, units))
  return {
    json: { arrangement: tagOf({ arrangement }, 'radial', 'roller'), units, rows },
    csv: () => csvOf(rows, COLUMNS, units),
  }
}

const toRow = (side: SizeRow, units: Units): SizeTableRow => ({
  ...toRing(side, units),
  landDiameter: show(side.outerRing.landDiameter, units),
  grooveBottomDiameter: show(side.outerRing.grooveBottomDiameter, units),
  outsideDiameter: show(side.outerRing.outsideDiameter, units),
  gapPerGrooveDepth: side.gapPerGrooveDepth,
})

const toPlateRow = (bearing: PlateSizeRow, units: Units): PlateSizeTableRow => ({
  ...toRing(bearing, units),
  outsideDiameter: show(bearing.plate.outsideDiameter, units),
  plateGap: show(bearing.plateGap, units),
  height: show(bearing.height, units),
  gapPerPitchRadius: bearing.gapPerPitchRadius,
})

const toRing = (ring: BallRing & { readonly ballCount: number }, units: Units) => ({
  diameter: show(ring.settled.ballDiameter, units),
  count: ring.ballCount,
  closedPitchRadius: show(ring.closedPitchRadius, units),
  pitchRadius: show(ring.pitchRadius, units),
  pitchDiameter: show(mm(2 * ring.pitchRadius), units),
  ballGap: show(ring.ballGap, units),
  gaugeDiameter: show(ring.gauge.nominalDiameter, units),
})

/** The columns that are not lengths. All others are lengths in the units of the table. */
const WITHOUT_UNIT: ReadonlySet<string> = new Set(['count', 'gapPerGrooveDepth', 'gapPerPitchRadius'])
const RING_COLUMNS = [
  'diameter',
  'count',
  'closedPitchRadius',
  'pitchRadius',
  'pitchDiameter',
  'ballGap',
  'gaugeDiameter',
] as const
const COLUMNS: readonly (keyof SizeTableRow)[] = [
  ...RING_COLUMNS,
  'landDiameter',
  'grooveBottomDiameter',
  'outsideDiameter',
  'gapPerGrooveDepth',
]
const PLATE_COLUMNS: readonly (keyof PlateSizeTableRow)[] = [
  ...RING_COLUMNS,
  'outsideDiameter',
  'plateGap',
  'height',
  'gapPerPitchRadius',
]

/** The same table for a spreadsheet, the unit in the heading of each length. */
function csvOf<Name extends string>(
  rows: readonly Readonly<Record<Name, number>>[],
  columns: readonly Name[],
  units: Units,
): string {
  const header = columns.map((column) => (WITHOUT_UNIT.has(column) ? column : `${column} (${units})`))
  return toCsv(
    header,
    rows.map((row) => columns.map((column) => row[column])),
  )
}
