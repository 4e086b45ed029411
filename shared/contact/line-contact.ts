import { requireAboveZero } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { Elastic } from './hertz.ts'

/*
 * A roller along its whole length on a track: Hertz's contact of parallel cylinders. K. L. Johnson, Contact Mechanics (1985),
 * 4.2 and 5.6 (from memory). Forces in newtons, pressures and moduli in megapascals, lengths in millimetres.
 */

/** A roller and what it lies on. */
export interface Line {
  /** E* of roller and wood [MPa]. */
  readonly modulus: number
  /** Relative curvature in the plane in which the roller rolls [1/mm]. */
  readonly rolling: number
  /** Along which it touches [mm]. */
  readonly length: number
}

export interface LineContact {
  /** Half the width of the touch [mm]. */
  readonly halfWidth: Mm
  /** [MPa] */
  readonly maxPressure: number
}

/**
 * The contact under a load F spread evenly over the length L:  b² = 4 F / (π E* ρ L),  p₀ = 2 F / (π b L).
 *
 * @param load F [N], above 0
 */
export function lineContactUnder({ modulus, rolling, length }: Line, load: number): LineContact {
  requireAboveZero('load', load)
  const halfWidth = Math.sqrt((4 * load) / (Math.PI * modulus * rolling * length))
  return { halfWidth: mm(halfWidth), maxPressure: (2 * load) / (Math.PI * halfWidth * length) }
}

/** The load that makes the touch so wide, half of it b [N]: `lineContactUnder` turned round. */
export const loadForHalfWidth = ({ modulus, rolling, length }: Line, halfWidth: number): number =>
  (Math.PI * modulus * rolling * length * halfWidth * halfWidth) / 4

/** A roller, and a wall on which it lies. */
export interface RollerOnWall {
  readonly line: Line
  readonly roller: Elastic & { readonly radius: number }
  readonly wall: Elastic & { readonly thickness: number }
}

/**
 * How far a roller's middle comes nearer to the far side of the wall. Unlike a ball's it depends on how thick both are:
 *
 *   δ = F / (π L) · ((1 − ν₁²)/E₁ (2 ln(2 d / b) − 1) + (1 − ν₂²)/E₂ (2 ln(2 t / b) − ν₂ / (1 − ν₂))),
 *
 * d = 2 R the roller's diameter, t the wall's thickness, both well above b (Johnson, 5.57 and 5.58). Where a touch is nearly as
 * wide as they are thick, each logarithm is taken at the least it could be there.
 */
export function lineApproach({ line, roller, wall }: RollerOnWall, load: number): number {
  const { halfWidth } = lineContactUnder(line, load)
  const give = ({ stiffness, poissonsRatio: ratio }: Elastic, thickness: number, less: number): number =>
    ((1 - ratio * ratio) / stiffness) * Math.max(LEAST_GIVE, 2 * Math.log((2 * thickness) / halfWidth) - less)
  const ratio = wall.poissonsRatio
  const both = give(roller, 2 * roller.radius, 1) + give(wall, wall.thickness, ratio / (1 - ratio))
  return (load * both) / (Math.PI * line.length)
}

/** The bracket at a thickness of the touch's own width: 2 ln 2, less what a wood takes off. */
const LEAST_GIVE = 1
