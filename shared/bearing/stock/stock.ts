import type { Bearing } from '#shared/bearing/bearing.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import { type Segments, segmentsOf } from '#shared/geometry/segments.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { type Blank, blanksOf } from './blanks.ts'
import { type BoardOption, boardOptions } from './boards.ts'
import { type SettledStock, type StockInput, settleStock } from './input.ts'
import { type Nesting, nestingOf } from './nesting.ts'
import { bladesFor, type EntryHole, entryHole } from './sawing.ts'
import { type SplitRing, splitRing } from './split-ring.ts'
import { type Mandrel, mandrelFor, type Turning, turningOf } from './work-holding.ts'

/** A ring from the board to the lathe. */
export interface RingStock {
  readonly blank: Blank
  /** The least planing first. */
  readonly boards: readonly BoardOption[]
  readonly blades: readonly string[]
  readonly turning: Turning
  readonly segments?: Segments & { readonly count: number }
}

export interface Stock {
  readonly settled: SettledStock
  readonly outerRing: RingStock
  readonly innerRing: RingStock
  readonly nesting: Nesting
  readonly entryHole?: EntryHole
  readonly split?: SplitRing
  readonly mandrel?: Mandrel
}

/** Where the bearing comes from: boards, blanks, saw cuts, what holds the split ring, and what holds the work. */
export function stockOf(bearing: Bearing, input: StockInput): Stock {
  const settled = settleStock(input, bearing.settled.input.units)
  const blanks = blanksOf(bearing, settled)
  const hole = entryHole(blanks.outerRing, blanks.innerRing, settled)
  const split = splitRing(bearing, settled)
  const mandrel = mandrelFor(bearing)
  return {
    settled,
    outerRing: ringStock(blanks.outerRing, settled),
    innerRing: ringStock(blanks.innerRing, settled),
    nesting: nestingOf(blanks.outerRing, blanks.innerRing, bearing.landGap, settled),
    ...(hole === undefined ? {} : { entryHole: hole }),
    ...(split === undefined ? {} : { split }),
    ...(mandrel === undefined ? {} : { mandrel }),
  }
}

function ringStock(blank: Blank, stock: SettledStock): RingStock {
  const count = stock.segments?.[blank.ring]
  return {
    blank,
    boards: boardOptions(blank, stock),
    blades: bladesFor(blank.roughCircle),
    turning: turningOf(blank, stock),
    ...(count === undefined ? {} : { segments: { count, ...gluedUp(blank, count, stock) } }),
  }
}

/** The rough ring must lie in the glued-up one: so the lathe finds its allowance all round. */
function gluedUp(blank: Blank, count: number, { turningAllowance, miterKerf }: SettledStock): Segments {
  const hole: Readonly<Record<RingName, number>> = {
    outerRing: blank.roughHole ?? 0,
    innerRing: Math.max(0, blank.finishHole - 2 * turningAllowance),
  }
  return segmentsOf({ outerRadius: mm(blank.roughCircle / 2), innerRadius: half(hole[blank.ring]), count }, miterKerf)
}

const half = (diameter: number): Mm => mm(diameter / 2)
