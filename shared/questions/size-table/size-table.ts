import {
  ARRANGEMENTS,
  type InputByArrangement,
  nameOf,
  notServed,
  type Question,
} from '#shared/bearing/arrangements.ts'
import { beyondBounds } from '#shared/bearing/bounds.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import {
  ROWS,
  type RowByArrangement,
  SERVED,
  type Served,
  SHARED_NAMES,
} from '#shared/questions/size-table/arrangements/by-name.ts'
import { fail, ok } from '#shared/result.ts'
import type { Mm } from '#shared/units/length.ts'
import type { Balls, Made, Without } from './row.ts'

export const SIZE_TABLE = { name: 'size-table', serves: SERVED } as const satisfies Question

export type SizeTableInput = { readonly [Name in Served]: Without<InputByArrangement[Name]> }[Served] & {
  readonly diameters: readonly Mm[]
  readonly counts: readonly number[]
}

/** A row a pair, in the order given. */
export type SizeRow = RowByArrangement[Served]

/** The paths in a whole input that a table echoes: those that all pairs share, and the balls of the lists. */
const ECHOED = new RegExp(`^/(balls/diameter|${SHARED_NAMES.join('|')})(/|$)`)

/**
 * Ball diameters × counts: what each pair gives, in the order given, counts running fastest.
 *
 * @returns a row a pair, or why the first pair that cannot be made cannot be made; paths are those of this input
 */
export function sizeTable(input: SizeTableInput): Made<readonly SizeRow[]> {
  const refused = notServed(input, SIZE_TABLE)
  if (refused.length > 0) return fail(refused)
  const { diameters, counts, ...shared } = input
  const rows: SizeRow[] = []
  for (const [ofDiameters, diameter] of diameters.entries()) {
    for (const [ofCounts, count] of counts.entries()) {
      const made = rowOf(shared, { count, diameter })
      if (!made.ok) return fail(made.error.map((refusal) => inTable(refusal, ofDiameters, ofCounts)))
      rows.push(made.value)
    }
  }
  return ok(rows)
}

/** A row as it was made, or the lengths that its table would echo and nobody could send. */
function rowOf(shared: Without<InputByArrangement[Served]>, balls: Balls): Made<SizeRow> {
  // served, as was just made sure, and its own arrangement's input
  const name = nameOf(shared) as Served
  const make = ROWS[name] as (shared: object, balls: Balls) => Made<RowByArrangement[Served]>
  const made = make(shared, balls)
  if (!made.ok) return made
  const { fields } = ARRANGEMENTS[name]
  const beyond = beyondBounds(made.value.resolved.input, fields).filter(({ path }) => ECHOED.test(path))
  return beyond.length > 0 ? fail(beyond) : ok({ ...made.value, ballCount: balls.count })
}

/** Faults of the balls of a pair get the path of their entries in the lists. */
function inTable(refusal: Refusal, ofDiameters: number, ofCounts: number): Refusal {
  if (refusal.path === '/balls/count') return { ...refusal, path: `/counts/${ofCounts}` }
  return refusal.path === '/balls/diameter' ? { ...refusal, path: `/diameters/${ofDiameters}` } : refusal
}
