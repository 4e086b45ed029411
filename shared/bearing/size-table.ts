import { fail, ok, type Result } from '#shared/result.ts'
import type { Mm } from '#shared/units/length.ts'
import { traitsOf } from './arrangement.ts'
import type { DesignInput } from './design-input.ts'
import { type OuterSide, outerSideOf } from './outer-side.ts'
import type { Refusal } from './refusal.ts'

/** What a table of sizes shares: everything of a design input but the balls and what only the inner ring needs. */
export type SizeTableInput = Pick<DesignInput, 'units' | 'arrangement' | 'outerRing' | 'groove' | 'ballGap'> & {
  readonly diameters: readonly Mm[]
  readonly counts: readonly number[]
}

export interface SizeRow extends OuterSide {
  readonly ballCount: number
}

/** Half a ball deep in a half circle: an inner ring that refuses nothing, for the table has none. */
const ANY_INNER_RING = { engagement: 0.5, groove: { conformity: 0.5 } }

/**
 * Ball diameters × counts: the ring that each pair gives, in the order given, counts running fastest.
 *
 * @returns a row a pair, or why the first pair that cannot be made cannot be made
 */
export function sizeTable({
  diameters,
  counts,
  ...shared
}: SizeTableInput): Result<readonly SizeRow[], readonly Refusal[]> {
  const rows: SizeRow[] = []
  const inner = traitsOf(shared).raceway === 'groove' ? { innerRing: ANY_INNER_RING } : {}
  for (const diameter of diameters) {
    for (const count of counts) {
      // No figure of the outer side depends on the bore or on the inner ring.
      const side = outerSideOf({ ...shared, balls: { count, diameter }, bore: diameter, ...inner })
      if (!side.ok) return fail(side.error)
      rows.push({ ...side.value, ballCount: count })
    }
  }
  return ok(rows)
}
