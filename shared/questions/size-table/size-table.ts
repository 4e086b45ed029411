import {
  ARRANGEMENTS,
  type InputByArrangement,
  notServed,
  type Question,
  type ThrustBearing,
} from '#shared/bearing/arrangements.ts'
import { beyondBounds } from '#shared/bearing/bounds.ts'
import type { Group } from '#shared/bearing/field.ts'
import type { OuterSide } from '#shared/bearing/outer-side.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import { outerWallRefusals } from '#shared/bearing/ring-pair.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'

export const SIZE_TABLE = { name: 'size-table', serves: ['radial', 'thrust', 'roller'] } as const satisfies Question

/** The fields of a design that move a row: the rest is the same in every row, or needs a bore. */
export const SHARED_NAMES = ['outerRing', 'plates', 'groove', 'ballGap'] as const

type Without<I> = Omit<I, 'balls' | 'bore'>
/** The part of a design that every pair shares: the balls come from the lists, and no row needs a bore. */
type SharedSizes =
  | Without<InputByArrangement['radial']>
  | Without<InputByArrangement['roller']>
  | Without<InputByArrangement['thrust']>
export type SizeTableInput = SharedSizes & { readonly diameters: readonly Mm[]; readonly counts: readonly number[] }

interface Row {
  readonly ballCount: number
}
export type SizeRow = OuterSide & Row
export type PlateSizeRow = ThrustBearing & Row

/** A row a pair, of rings or of plates. */
export type SizeTable =
  | { readonly of: 'rings'; readonly rows: readonly SizeRow[] }
  | { readonly of: 'plates'; readonly rows: readonly PlateSizeRow[] }

/** Half a ball deep in a half circle: an inner ring that refuses nothing, for the table has none. */
const ANY_INNER_RING = { engagement: 0.5, groove: { conformity: 0.5 } }
/** A bore, in ball diameters, that refuses nothing: no two sizes near that of a ball differ by so little. */
const ANY_BORE = 1e-30
/** Where a whole input has what a table echoes: what all pairs share, and the balls of the lists. */
const ECHOED = new RegExp(`^/(balls/diameter|${SHARED_NAMES.join('|')})(/|$)`)

/**
 * Ball diameters × counts: the ring, or the plates, that each pair gives, in the order given, counts running fastest.
 *
 * @returns a row a pair, or why the first pair that cannot be made cannot be made; paths are those of this input
 */
export function sizeTable(input: SizeTableInput): Result<SizeTable, readonly Refusal[]> {
  const refused = notServed(input, SIZE_TABLE)
  if (refused.length > 0) return fail(refused)
  if (input.arrangement === 'thrust') {
    const { diameters, counts, ...shared } = input
    const rows = rowsOf(ARRANGEMENTS.thrust.fields, diameters, counts, (balls) =>
      ARRANGEMENTS.thrust.bearingOf({ ...shared, balls, bore: mm(ANY_BORE * balls.diameter) }),
    )
    return rows.ok ? ok({ of: 'plates', rows: rows.value }) : rows
  }
  const rows = input.arrangement === 'roller' ? rollerRows(input) : radialRows(input)
  return rows.ok ? ok({ of: 'rings', rows: rows.value }) : rows
}

type InputOf<Name> = Extract<SizeTableInput, { readonly arrangement: Name }>

// No figure of the outer side depends on the bore or on the inner ring.
const radialRows = ({ diameters, counts, ...shared }: Exclude<SizeTableInput, InputOf<'roller' | 'thrust'>>) =>
  rowsOf(ARRANGEMENTS.radial.fields, diameters, counts, (balls) =>
    withWall(ARRANGEMENTS.radial.outerSideOf({ ...shared, balls, bore: balls.diameter, innerRing: ANY_INNER_RING })),
  )
const rollerRows = ({ diameters, counts, ...shared }: InputOf<'roller'>) =>
  rowsOf(ARRANGEMENTS.roller.fields, diameters, counts, (balls) =>
    withWall(ARRANGEMENTS.roller.outerSideOf({ ...shared, balls, bore: balls.diameter })),
  )

type Made<T> = Result<T, readonly Refusal[]>

function withWall(made: Made<OuterSide>): Made<OuterSide> {
  const refused = made.ok ? outerWallRefusals(made.value.resolved, made.value.outerRing) : []
  return refused.length > 0 ? fail(refused) : made
}

function rowsOf<T extends Pick<OuterSide | ThrustBearing, 'resolved'>>(
  group: Group,
  diameters: readonly Mm[],
  counts: readonly number[],
  make: (balls: { readonly count: number; readonly diameter: Mm }) => Made<T>,
): Made<readonly (T & Row)[]> {
  const rows: (T & Row)[] = []
  for (const [ofDiameters, diameter] of diameters.entries()) {
    for (const [ofCounts, count] of counts.entries()) {
      const made = echoable(make({ count, diameter }), group)
      if (!made.ok) return fail(made.error.map((refusal) => inTable(refusal, ofDiameters, ofCounts)))
      rows.push({ ...made.value, ballCount: count })
    }
  }
  return ok(rows)
}

/** A row as it was made, or the lengths that its table would echo and nobody could send. */
function echoable<T extends Pick<OuterSide | ThrustBearing, 'resolved'>>(made: Made<T>, group: Group): Made<T> {
  if (!made.ok) return made
  const beyond = beyondBounds(made.value.resolved.input, group).filter(({ path }) => ECHOED.test(path))
  return beyond.length > 0 ? fail(beyond) : made
}

/** What is wrong with the balls of a pair is said of their place in the lists. */
function inTable(refusal: Refusal, ofDiameters: number, ofCounts: number): Refusal {
  if (refusal.path === '/balls/count') return { ...refusal, path: `/counts/${ofCounts}` }
  return refusal.path === '/balls/diameter' ? { ...refusal, path: `/diameters/${ofDiameters}` } : refusal
}
