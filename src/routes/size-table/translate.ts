import type { SizeRow, SizeTableInput } from '#shared/bearing/size-table.ts'
import { mm, type Units } from '#shared/units/length.ts'
import { toCsv } from '#src/http/csv.ts'
import { toGroove, toOuterRing } from '#src/wire/design-input.ts'
import { show, toMm } from '#src/wire/length.ts'
import { present } from '#src/wire/optional.ts'
import type { SizeTableRequest, SizeTableResponse, SizeTableRow } from './schema.ts'

export function toSizeTableInput({
  units,
  arrangement,
  diameters,
  counts,
  outerRing,
  groove,
  ballGap,
}: SizeTableRequest): SizeTableInput {
  return present<SizeTableInput>({
    units,
    arrangement,
    diameters: diameters.map((diameter) => toMm(diameter, units)),
    counts,
    outerRing: outerRing && toOuterRing(outerRing, units),
    groove: groove && toGroove(groove, units),
    ballGap: ballGap === undefined ? undefined : toMm(ballGap, units),
  })
}

export const toSizeTableResponse = (rows: readonly SizeRow[], units: Units): SizeTableResponse => ({
  units,
  rows: rows.map((row) => toRow(row, units)),
})

function toRow(side: SizeRow, units: Units): SizeTableRow {
  return {
    diameter: show(side.settled.ballDiameter, units),
    count: side.ballCount,
    closedPitchRadius: show(side.closedPitchRadius, units),
    pitchRadius: show(side.pitchRadius, units),
    pitchDiameter: show(mm(2 * side.pitchRadius), units),
    ballGap: show(side.ballGap, units),
    gaugeDiameter: show(side.gauge.nominalDiameter, units),
    landDiameter: show(side.outerRing.landDiameter, units),
    grooveBottomDiameter: show(side.outerRing.grooveBottomDiameter, units),
    outsideDiameter: show(side.outerRing.outsideDiameter, units),
    gapPerGrooveDepth: side.gapPerGrooveDepth,
  }
}

/** Columns in the order of the sheet; every one but these two is a length in the table's units. */
const WITHOUT_UNIT: readonly (keyof SizeTableRow)[] = ['count', 'gapPerGrooveDepth']
const COLUMNS: readonly (keyof SizeTableRow)[] = [
  'diameter',
  'count',
  'closedPitchRadius',
  'pitchRadius',
  'pitchDiameter',
  'ballGap',
  'gaugeDiameter',
  'landDiameter',
  'grooveBottomDiameter',
  'outsideDiameter',
  'gapPerGrooveDepth',
]

/** The same table for a spreadsheet, the unit in the heading of each length. */
export function toSizeTableCsv({ units, rows }: SizeTableResponse): string {
  const header = COLUMNS.map((column) => (WITHOUT_UNIT.includes(column) ? column : `${column} (${units})`))
  return toCsv(
    header,
    rows.map((row) => COLUMNS.map((column) => row[column])),
  )
}
