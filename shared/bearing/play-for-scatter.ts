import { requireAboveZero } from '#shared/precondition.ts'
import { playQuantile, type RandomBalls } from '#shared/statistics/play-of-random-balls.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import * as defaults from './defaults.ts'

/** How often a ring of the balls may bind that is made as designed: common practice, no source. */
export const ACCEPTED_BINDING = 0.05

/** In ball diameters: with more play a ring knocks, and its balls are better sorted. Common practice, no source. */
export const MOST_PLAY = 0.06

/** Steps to a ball: finer than anyone cuts. */
const STEPS = 1000

/**
 * A play to design with: so much that at most one ring in twenty binds on balls of this scatter laid as they come, but from
 * 0.02 to 0.06 of a ball, in whole thousandths of it. A ring that binds must go back to the lathe, one with too much play only rattles. One in a hundred
 * would give every ring another 0.7 σ of play (14 balls), for a case that another order of the balls cures.
 *
 * @param balls ballDiameter Dw [mm], above 0; scatter and count as in `RandomBalls`
 * @throws RangeError outside these ranges
 */
export function playForScatter({
  ballDiameter,
  ...balls
}: { readonly ballDiameter: Mm } & Omit<RandomBalls, 'play'>): Mm {
  requireAboveZero('ballDiameter', ballDiameter)
  const needed = -playQuantile({ ...balls, play: mm(0), probability: ACCEPTED_BINDING })
  // A step that is passed by a rounding is not passed.
  const part = Math.ceil((needed / ballDiameter) * STEPS - 1e-3) / STEPS
  return mm(Math.min(MOST_PLAY, Math.max(defaults.RADIAL_INTERNAL_CLEARANCE, part)) * ballDiameter)
}
