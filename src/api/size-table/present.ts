import { ARRANGEMENTS } from '#shared/bearing/arrangements.ts'
import type { BallRing } from '#shared/bearing/ball-ring.ts'
import { type Leaf, leavesOf, valueAt, withValue } from '#shared/bearing/field.ts'
import { DESIGN_SOURCES } from '#shared/data/sources.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import {
  type PlateSizeRow,
  SHARED_NAMES,
  type SizeRow,
  type SizeTable,
  type SizeTableInput,
} from '#shared/questions/size-table/size-table.ts'
import { mm, type Units } from '#shared/units/length.ts'
import { answer, tagOf } from '#src/api/answer.ts'
import { type Assumption, assumptionsIn, defaultsOf, ruleAssumed } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { fromRequest, toRequest } from '#src/api/fields.ts'
import { echo, show, toMm } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { toSource } from '#src/api/source.ts'
import { toCsv } from '#src/http/csv.ts'
import { sizeTableSummary } from '#src/words/summary.ts'
import type {
  RadialSizeTableRow,
  RollerSizeTableRow,
  SizeTableRequest,
  SizeTableResponse,
  ThrustSizeTableRow,
} from './schema.ts'

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

export function toTableAnswer(table: SizeTable, request: SizeTableRequest): TableAnswer {
  const { units } = request
  const head = { units, ...toEcho(table, request), summary: sizeTableSummary(table.rows, units) }
  const foot = {
    warnings: [],
    cautions: cautionsOf(itemAt<SizeRow | PlateSizeRow>(table.rows, 0).resolved),
    sources: DESIGN_SOURCES.map(toSource),
  }
  if (table.of === 'plates') {
    const rows = table.rows.map((row) => toThrustRow(row, units))
    return {
      json: answer({ arrangement: 'thrust', ...head }, { rows }, foot),
      csv: () => csvOf(rows, THRUST_COLUMNS, units),
    }
  }
  const arrangement = tagOf(request, 'radial', 'roller')
  if (arrangement === 'roller') {
    const rows = table.rows.map((row) => toRollerRow(row, units))
    return { json: answer({ arrangement, ...head }, { rows }, foot), csv: () => csvOf(rows, ROLLER_COLUMNS, units) }
  }
  const rows = table.rows.map((row) => toRadialRow(row, units))
  return { json: answer({ arrangement, ...head }, { rows }, foot), csv: () => csvOf(rows, RADIAL_COLUMNS, units) }
}

/**
 * What was asked, with every default that is one value in all rows. Of one that hangs on the balls the rule is named, and
 * each row has what follows from it.
 */
function toEcho({ rows }: SizeTable, request: SizeTableRequest) {
  const { units, arrangement, diameters, counts } = request
  const { fields } = ARRANGEMENTS[arrangement].fields
  const asked = fromRequest(fields, request, units)
  const assumed: Assumption[] = []
  let whole = asked
  for (const leaf of leavesOf(fields).filter(isShared)) {
    if (valueAt(asked, leaf.names) !== undefined) continue
    const values = new Set(rows.map(({ resolved }) => valueAt(resolved.input, leaf.names)))
    const [value] = values
    if (values.size === 1 && value !== undefined) whole = withValue(whole, leaf.names, value)
    else if (values.size > 1 && leaf.field.byDefault !== undefined)
      assumed.push(ruleAssumed(leaf.path, leaf.field.byDefault))
  }
  const filled = toRequest(fields, whole, units)
  const input = {
    units,
    arrangement,
    diameters: diameters.map((diameter) => echo(toMm(diameter, units), units)),
    counts,
    ...filled,
  } as SizeTableRequest
  return { input, assumed: [...assumptionsIn(request, filled, defaultsOf(fields)), ...assumed] }
}

const isShared = ({ names: [first] }: Leaf): boolean => SHARED_NAMES.some((name) => name === first)

const toRadialRow = (side: SizeRow, units: Units): RadialSizeTableRow => ({
  ...toRing(side, units),
  gapPerGrooveDepth: showNumber(side.gapPerGrooveDepth),
  outerRing: {
    outsideDiameter: show(side.outerRing.outsideDiameter, units),
    landDiameter: show(side.outerRing.landDiameter, units),
    grooveBottomDiameter: show(side.outerRing.grooveBottomDiameter, units),
  },
})

const toRollerRow = (side: SizeRow, units: Units): RollerSizeTableRow => ({
  ...toRing(side, units),
  outerRing: {
    outsideDiameter: show(side.outerRing.outsideDiameter, units),
    trackDiameter: show(side.outerRing.grooveBottomDiameter, units),
  },
})

const toThrustRow = (bearing: PlateSizeRow, units: Units): ThrustSizeTableRow => ({
  ...toRing(bearing, units),
  plates: { outsideDiameter: show(bearing.plate.outsideDiameter, units) },
  plateGap: show(bearing.plateGap, units),
  height: show(bearing.height, units),
})

const toRing = (ring: BallRing & { readonly ballCount: number }, units: Units) => ({
  balls: { count: ring.ballCount, diameter: show(ring.resolved.ballDiameter, units) },
  closedPitchRadius: show(ring.closedPitchRadius, units),
  pitchRadius: show(ring.pitchRadius, units),
  pitchDiameter: show(mm(2 * ring.pitchRadius), units),
  ballGap: show(ring.ballGap, units),
  gapPerPitchRadius: showNumber(ring.gapPerPitchRadius),
  gauge: { nominalDiameter: show(ring.gauge.nominalDiameter, units) },
})

/** Columns in the order of the sheet; every one but these is a length in the table's units. */
const WITHOUT_UNIT: ReadonlySet<string> = new Set(['balls.count', 'gapPerGrooveDepth', 'gapPerPitchRadius'])
const RING_COLUMNS = [
  'balls.diameter',
  'balls.count',
  'closedPitchRadius',
  'pitchRadius',
  'pitchDiameter',
  'ballGap',
  'gauge.nominalDiameter',
]
const RADIAL_COLUMNS = [
  ...RING_COLUMNS,
  'outerRing.landDiameter',
  'outerRing.grooveBottomDiameter',
  'outerRing.outsideDiameter',
  'gapPerGrooveDepth',
]
const ROLLER_COLUMNS = [...RING_COLUMNS, 'outerRing.trackDiameter', 'outerRing.outsideDiameter', 'gapPerPitchRadius']
const THRUST_COLUMNS = [...RING_COLUMNS, 'plates.outsideDiameter', 'plateGap', 'height', 'gapPerPitchRadius']

/** The same table for a spreadsheet, the unit in the heading of each length. */
function csvOf(rows: readonly object[], columns: readonly string[], units: Units): string {
  const header = columns.map((column) => (WITHOUT_UNIT.has(column) ? column : `${column} (${units})`))
  return toCsv(
    header,
    rows.map((row) => columns.map((column) => Number(valueAt(row, column.split('.'))))),
  )
}
