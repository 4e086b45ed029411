import { type Mm, mm } from '#shared/units/length.ts'
import { ballGapOnCircle, closingCircle } from './balls-on-a-circle.ts'
import { type GapOverOrders, gapOverOrders, gapOverOrdersOnCircle } from './order-round-the-ring.ts'
import { closingRadius, unequalBallGap } from './unequal-balls.ts'

/** The sizes of a lot of balls, and how many are laid. */
interface SizesLaid {
  readonly ballCount: number
  readonly smallest: number
  readonly largest: number
}

/**
 * How unequal balls close where they lie, by the one radius that is cut: that of the bottom of a ring's groove, or that of
 * the circle of a plate's. In both the angle of two neighbours grows with either ball, and for a given order
 *
 *   Σ φ + asin √((r_p + g/2)(r_q + g/2) / (a_p a_q)) = π,   p and q at the gap g, a = Ro − r in a ring and R on a plate,
 *
 * as long as the others cover half the ring; each term grows with each r, so that a ball that grows makes the gap smaller.
 */
export interface Closure {
  /** Between the last ball and the first, in that order. */
  readonly gap: (radius: Mm, diameters: readonly number[]) => Mm
  /** The radius that leaves a gap, 0 by default. */
  readonly radiusFor: (diameters: readonly number[], gap?: Mm) => Mm
  readonly overOrders: (radius: Mm, diameters: readonly number[]) => GapOverOrders
  /** The largest ball of which two fit side by side. */
  readonly largestBall: (radius: Mm) => Mm
  /** An upper bound of the slope of the gap over the radius, from the tightest radius on. */
  readonly steepest: (tightest: Mm, sizes: SizesLaid) => number
}

export const IN_A_RING: Closure = {
  gap: unequalBallGap,
  radiusFor: closingRadius,
  overOrders: gapOverOrders,
  largestBall: (radius) => radius,
  steepest: steepestInRing,
}

export const ON_A_CIRCLE: Closure = {
  gap: (radius, diameters) => ballGapOnCircle(radius, diameters),
  radiusFor: closingCircle,
  overOrders: gapOverOrdersOnCircle,
  largestBall: (radius) => mm(2 * radius),
  steepest: steepestOnCircle,
}

/**
 * √((a₁ + a_Z)² / (a₁ a_Z) + a₁ a_Z (Σ tan φ (1/aᵢ + 1/aⱼ))²):
 * the two parts of `gapPerBottomRadius` go with sin H and cos H, and sin H over the span is 1 / (2 √(a₁ a_Z)) at most.
 * Each is largest for the largest ball in the tightest groove.
 */
function steepestInRing(least: Mm, { ballCount, smallest, largest }: SizesLaid): number {
  const [small, large] = [smallest / 2, largest / 2]
  const tightest = Math.max(least, 2 * large)
  const [near, far] = [tightest - large, tightest - small]
  const tangent = large / Math.sqrt(tightest * (tightest - 2 * large))
  const turn = (far * (ballCount - 1) * tangent * 2) / near
  return Math.sqrt(far / near + near / far + 2 + turn * turn)
}

/** 2 √(1 + (Σ tan φ)²): dg/dR is 2 (sin H − cos H Σ tan φ) where the ends are equal, and less where they are not. */
function steepestOnCircle(least: Mm, { ballCount, largest }: SizesLaid): number {
  const large = largest / 2
  const tightest = Math.max(least, large)
  const turn = ((ballCount - 1) * large) / Math.sqrt((tightest - large) * (tightest + large))
  return 2 * Math.sqrt(1 + turn * turn)
}
