import { cutTo } from '#shared/bearing/dimensions.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { ResolvedMaking } from './defaults.ts'

/** A ring before it is turned. */
export interface Blank {
  readonly finishCircle: Mm
  /** The outer ring's land, the inner ring's bore. */
  readonly finishHole: Mm
  /** The same as they are turned, before any finish. */
  readonly cutCircle: Mm
  readonly cutHole: Mm
  readonly roughCircle: Mm
  /** Diameter of the core that is sawn out. Absent if nothing is left of it, and for a bore, which is drilled. */
  readonly roughHole?: Mm
  /** Thickness of each piece, along the axis. */
  readonly thickness: Mm
  /** Two where a ring comes apart in the middle, or where two are made alike. */
  readonly pieces: 1 | 2
}

/** How a blank is made: what the maker leaves on it, and what a finish puts on. */
export interface Allowed {
  readonly stock: ResolvedMaking
  readonly film: Pick<ResolvedBalls, 'finishAllowance'>
}

/** Both rings' blanks: circles wider and holes narrower than they are turned by the turning allowance, all round. */
export function blanksOf(
  { outerRing, innerRing, resolved }: RingPair,
  allowed: Allowed,
): Readonly<Record<RingName, Blank>> {
  const count = (ring: 'outer-ring' | 'inner-ring'): 1 | 2 => (resolved.split === ring ? 2 : 1)
  return {
    outerRing: ringBlank(
      outerRing.outsideDiameter,
      outerRing.landDiameter,
      outerRing.width,
      count('outer-ring'),
      allowed,
    ),
    innerRing: drilled(
      innerRing.landDiameter,
      innerRing.boreDiameter,
      { each: cutTo(innerRing.width, 'width', allowed.film) / count('inner-ring'), count: count('inner-ring') },
      allowed,
    ),
  }
}

/** One of two discs that are made alike. */
export const discBlank = (circle: Mm, hole: Mm, thickness: Mm, allowed: Allowed): Blank =>
  drilled(circle, hole, { each: cutTo(thickness, 'width', allowed.film), count: 2 }, allowed)

/** A ring of one or two pieces. */
export function ringBlank(circle: Mm, hole: Mm, width: Mm, count: 1 | 2, allowed: Allowed): Blank {
  const blank = drilled(circle, hole, { each: cutTo(width, 'width', allowed.film) / count, count }, allowed)
  const roughHole = blank.cutHole - 2 * allowed.stock.allowances.turning
  return roughHole > 0 ? { ...blank, roughHole: mm(roughHole) } : blank
}

interface Pieces {
  readonly each: number
  readonly count: 1 | 2
}

function drilled(circle: Mm, hole: Mm, { each, count }: Pieces, { stock, film }: Allowed): Blank {
  const cutCircle = cutTo(circle, 'outside', film)
  return {
    finishCircle: circle,
    finishHole: hole,
    cutCircle,
    cutHole: cutTo(hole, 'hole', film),
    roughCircle: mm(cutCircle + 2 * stock.allowances.turning),
    thickness: mm(each + 2 * stock.allowances.side),
    pieces: count,
  }
}
