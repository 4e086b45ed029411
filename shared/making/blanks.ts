import type { RingName } from '#shared/bearing/refusal.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { ResolvedStock } from './input.ts'

/** A ring before it is turned. */
export interface Blank {
  readonly finishCircle: Mm
  /** The outer ring's land, the inner ring's bore. */
  readonly finishHole: Mm
  readonly roughCircle: Mm
  /** What is sawn out. Absent where nothing is left of it, and for a bore, which is drilled. */
  readonly roughHole?: Mm
  /** Of each piece, along the axis. */
  readonly thickness: Mm
  /** Two where a ring comes apart in the middle, or where two are made alike. */
  readonly pieces: 1 | 2
}

/** Both rings' blanks: circles wider and holes narrower than finished by the turning allowance, all round. */
export function blanksOf(
  { outerRing, innerRing, resolved }: RingPair,
  stock: ResolvedStock,
): Readonly<Record<RingName, Blank>> {
  return {
    outerRing: sawnOut(
      outerRing.outsideDiameter,
      outerRing.landDiameter,
      pieces(outerRing.width, resolved.split === 'outer-ring' ? 2 : 1),
      stock,
    ),
    innerRing: drilled(
      innerRing.landDiameter,
      innerRing.boreDiameter,
      pieces(innerRing.width, resolved.split === 'inner-ring' ? 2 : 1),
      stock,
    ),
  }
}

/** One of two discs that are made alike. */
export const discBlank = (circle: Mm, hole: Mm, thickness: Mm, stock: ResolvedStock): Blank =>
  drilled(circle, hole, { each: thickness, count: 2 }, stock)

/** A ring of one or two pieces. */
export const ringBlank = (circle: Mm, hole: Mm, width: Mm, count: 1 | 2, stock: ResolvedStock): Blank =>
  sawnOut(circle, hole, pieces(width, count), stock)

interface Pieces {
  readonly each: number
  readonly count: 1 | 2
}

const pieces = (width: number, count: 1 | 2): Pieces => ({ each: width / count, count })

function drilled(circle: Mm, hole: Mm, { each, count }: Pieces, stock: ResolvedStock): Blank {
  return {
    finishCircle: circle,
    finishHole: hole,
    roughCircle: mm(circle + 2 * stock.turningAllowance),
    thickness: mm(each + 2 * stock.sideAllowance),
    pieces: count,
  }
}

function sawnOut(circle: Mm, hole: Mm, of: Pieces, stock: ResolvedStock): Blank {
  const blank = drilled(circle, hole, of, stock)
  const roughHole = hole - 2 * stock.turningAllowance
  return roughHole > 0 ? { ...blank, roughHole: mm(roughHole) } : blank
}
