import { ARRANGEMENTS, sourcesOf } from '#shared/bearing/arrangements.ts'
import { type Leaf, leavesOf, valueAt, withValue } from '#shared/bearing/field.ts'
import type { SourceId } from '#shared/data/sources.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { SHARED_NAMES } from '#shared/questions/size-table/arrangements/by-name.ts'
import type { SizeRow, SizeTableInput } from '#shared/questions/size-table/size-table.ts'
import type { Units } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { type Assumption, assumptionsIn, defaultsOf, ruleAssumed } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { fromRequest, toRequest } from '#src/api/fields.ts'
import { echo, toMm } from '#src/api/length.ts'
import { ROWS } from '#src/api/size-table/arrangements/by-name.ts'
import { toSource } from '#src/api/source.ts'
import { toCsv } from '#src/http/csv.ts'
import { sizeTableSummary } from '#src/words/summary.ts'
import type { SizeTableRequest, SizeTableResponse } from './schema.ts'

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

/** Sources that a design uses for its inner ring: end play, screws of a split ring. A row has neither. */
const OF_INNER_RINGS: readonly SourceId[] = ['harris', 'asme-b18.6.1']

/** The answer with a table: its rows as JSON, and the same rows for a spreadsheet. */
export interface TableAnswer {
  readonly json: SizeTableResponse
  readonly csv: () => string
}

export function toTableAnswer(rows: readonly SizeRow[], request: SizeTableRequest): TableAnswer {
  const { units } = request
  const head = { units, ...toEcho(rows, request), summary: sizeTableSummary(rows, units) }
  const foot = {
    warnings: [],
    cautions: cautionsOf(itemAt(rows, 0).resolved),
    sources: sourcesOf(itemAt(rows, 0).resolved.input)
      .filter((id) => !OF_INNER_RINGS.includes(id))
      .map(toSource),
  }
  const { toRow, columns } = ROWS[request.arrangement]
  // the rows are of the arrangement that the request states
  const shown = rows.map((row) => (toRow as (row: SizeRow, units: Units) => object)(row, units))
  return {
    json: answer({ arrangement: request.arrangement, ...head }, { rows: shown }, foot) as SizeTableResponse,
    csv: () => csvOf(shown, columns, units),
  }
}

/**
 * The request with every default that is one value in all rows. For one that depends on the balls the rule is named, and
 * each row has what follows from it.
 */
function toEcho(rows: readonly SizeRow[], request: SizeTableRequest) {
  const { units, arrangement, diameters, counts } = request
  const { fields } = ARRANGEMENTS[arrangement].fields
  const stated = fromRequest(fields, request, units)
  const assumed: Assumption[] = []
  let whole = stated
  for (const leaf of leavesOf(fields).filter(isShared)) {
    if (valueAt(stated, leaf.names) !== undefined) continue
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

/** Every column but these is a length in the table's units. */
const WITHOUT_UNIT: ReadonlySet<string> = new Set(['balls.count', 'gapPerGrooveDepth', 'gapPerPitchRadius'])

/** The same table for a spreadsheet, the unit in the heading of each length. */
function csvOf(rows: readonly object[], columns: readonly string[], units: Units): string {
  const header = columns.map((column) => (WITHOUT_UNIT.has(column) ? column : `${column} (${units})`))
  return toCsv(
    header,
    rows.map((row) => columns.map((column) => Number(valueAt(row, column.split('.'))))),
  )
}
