import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { requireWhole, requireWithin } from '#shared/precondition.ts'

/*
 * How a load beside the axis is shared by equal balls that stand evenly on a circle between two rigid plates, each giving way
 * by itself as Q = K δⁿ. The upper plate goes down and leans, so that δ goes with 1 − k + k cos ψ, ψ from the side of the
 * load; balls for which that is below 0 are free. Forces and moments leave one unknown, k:
 *
 *   Σ δⁿ cos ψ / Σ δⁿ = e / R
 *
 * The left side is the mean of cos ψ, each weighted with δⁿ. With k the weight of a ball grows more, the larger its cos ψ: so it rises
 * all the way, from 0 at k = 0 to the first ball alone. As long as no ball is free (k ≤ 1/2) a straight law, n = 1, has the textbook's
 * F/Z (1 + 2 cos ψ e/R); any n has it to first order. Derived here.
 */

/** How equal balls share a load, whatever its size. */
export interface SharedBeside {
  /** Share of each ball, 1 in all, from the one at `phase` on round the circle. */
  readonly shares: readonly number[]
  /** k. */
  readonly lean: number
  /** Σ (1 − k + k cos ψ)ⁿ over the balls that carry: the load over K, for a plate that presses by 1. */
  readonly sum: number
}

/** Short of the line between two balls by so little, a load stands on it within rounding. */
const ON_THE_LINE = 1e-9

/** So far from the axis, as a part of R, the balls hold a load up however they stand: to the line between two of them. */
export function farthestHeld(count: number): number {
  requireWhole('count', count, 3)
  return (1 - ON_THE_LINE) * Math.cos(Math.PI / count)
}

/**
 * The most that one ball can come to carry where three of unequal balls hold the load up, whichever they are:
 * (e / R + c) / (1 + c). Over the line through the other two the load stands so much nearer than the ball, and that comes to most
 * with the load on the ball's own radius and the other two as far across as there are balls: right across where Z is even, c = 1,
 * on either side of that where it is odd, c = cos(π / Z). Derived here; tested with every three and every side.
 *
 * @param count Z, whole, at least 3
 * @param beside e / R, from 0 to `farthestHeld`
 * @returns a part of the load, 1/3 for three balls and a load over the axis, 1/2 at the most there
 */
export function mostOnOne(count: number, beside: number): number {
  requireWithin('beside', beside, 0, farthestHeld(count))
  const across = count % 2 === 0 ? 1 : Math.cos(Math.PI / count)
  return (beside + across) / (1 + across)
}

/**
 * @param count Z, whole, at least 3
 * @param exponent n, from 1 to 2
 * @param beside e / R, from 0 to `farthestHeld`
 * @param phase where the first ball stands, in spaces between balls from the side of the load: 0 right under it, 1/2 with two astride
 */
export function sharedBeside(count: number, exponent: number, beside: number, phase: 0 | 0.5): SharedBeside {
  requireWithin('exponent', exponent, 1, 2)
  requireWithin('beside', beside, 0, farthestHeld(count))
  const cosines = Array.from({ length: count }, (_, ball) => Math.cos((2 * Math.PI * (ball + phase)) / count))
  const lean = beside > OVER_THE_MIDDLE ? leanFor(cosines, exponent, beside) : 0
  const forces = cosines.map((cosine) => power(pressed(cosine, lean), exponent))
  const sum = forces.reduce((total, force) => total + force, 0)
  return { shares: forces.map((force) => force / sum), lean, sum }
}

/** A load nearer to the axis stands over it within rounding. */
const OVER_THE_MIDDLE = 1e-12

/** How far a ball is pressed together, over what the plate presses on its middle and leans. */
const pressed = (cosine: number, lean: number): number => Math.max(0, 1 - lean + lean * cosine)

const power = (base: number, exponent: number): number => Math.exp(exponent * Math.log(base))

function leanFor(cosines: readonly number[], exponent: number, beside: number): number {
  const beyond = (lean: number): number => {
    let [load, moment] = [0, 0]
    for (const cosine of cosines) {
      const force = power(pressed(cosine, lean), exponent)
      load += force
      moment += force * cosine
    }
    return moment / load - beside
  }
  // Halfway between the ball that is nearest to the load and the next, the nearest carry alone.
  const nearest = Math.max(...cosines)
  const next = Math.max(...cosines.filter((cosine) => cosine < nearest - SAME))
  return bracketedRoot(beyond, 0, 1 / (1 - (nearest + next) / 2))
}

/** Two balls as near to the load as each other have the same cosine but for its rounding. */
const SAME = 1e-12
