import type { Bearing } from '#shared/bearing/bearing.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { SettledStock } from './input.ts'

/** A ring before it is turned. */
export interface Blank {
  readonly ring: RingName
  readonly finishCircle: Mm
  /** The outer ring's land, the inner ring's bore. */
  readonly finishHole: Mm
  readonly roughCircle: Mm
  /** What is sawn out. Absent where nothing is left of it, and for the bore, which is drilled. */
  readonly roughHole?: Mm
  /** Of each piece, along the axis. */
  readonly thickness: Mm
  /** Two where the ring comes apart at mid groove. */
  readonly pieces: 1 | 2
}

/** Both rings' blanks: circles wider and holes narrower than finished by the turning allowance, all round. */
export function blanksOf(bearing: Bearing, stock: SettledStock): Readonly<Record<RingName, Blank>> {
  const { outerRing, innerRing, settled } = bearing
  const { turningAllowance } = stock
  const roughHole = outerRing.landDiameter - 2 * turningAllowance
  return {
    outerRing: {
      ring: 'outerRing',
      finishCircle: outerRing.outsideDiameter,
      finishHole: outerRing.landDiameter,
      roughCircle: mm(outerRing.outsideDiameter + 2 * turningAllowance),
      ...(roughHole > 0 ? { roughHole: mm(roughHole) } : {}),
      ...piecesOf(bearing, stock, settled.split === 'outer-ring'),
    },
    innerRing: {
      ring: 'innerRing',
      finishCircle: innerRing.landDiameter,
      finishHole: innerRing.boreDiameter,
      roughCircle: mm(innerRing.landDiameter + 2 * turningAllowance),
      ...piecesOf(bearing, stock, settled.split === 'inner-ring'),
    },
  }
}

function piecesOf(
  { settled }: Bearing,
  { sideAllowance }: SettledStock,
  split: boolean,
): Pick<Blank, 'thickness' | 'pieces'> {
  return { thickness: mm(settled.width / (split ? 2 : 1) + 2 * sideAllowance), pieces: split ? 2 : 1 }
}
