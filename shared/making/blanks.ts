import type { CagedBearing, RollerBearing, ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { ResolvedStock } from './input.ts'

type Cheeks = RollerBearing['cheeks']
type Cage = CagedBearing['cage']
type Plate = ThrustBearing['plate']

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

/** Two rings, with whatever else is turned for them. */
export interface StockedRings extends RingPair {
  readonly cheeks?: Cheeks
  readonly cage?: Cage
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

/** One of both cheeks, which are made alike. */
export const cheekBlank = ({ outsideDiameter, holeDiameter, thickness }: Cheeks, stock: ResolvedStock): Blank =>
  drilled(outsideDiameter, holeDiameter, { each: thickness, count: 2 }, stock)

export const cageBlank = ({ outsideDiameter, boreDiameter, width, pieces: count }: Cage, stock: ResolvedStock): Blank =>
  sawnOut(outsideDiameter, boreDiameter, pieces(width, count), stock)

/** One of both plates, which are made alike. */
export const plateBlank = ({ outsideDiameter, boreDiameter, thickness }: Plate, stock: ResolvedStock): Blank =>
  drilled(outsideDiameter, boreDiameter, { each: thickness, count: 2 }, stock)

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
