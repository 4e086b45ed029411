import type { ResolvedBalls } from './resolve.ts'

/* How far the balls of a ring may be from what was stated. All common practice, no source. */

/** How far the mean of a bought lot may lie from its nominal diameter, over the scatter of single balls. */
const LOT_MEAN_OVER_SCATTER = 0.6

/** Balls may scatter more than stated: these multiples, with these chances. */
export const SCATTER_TIMES: readonly (readonly [times: number, chance: number])[] = [
  [1, 0.8],
  [1.8, 0.15],
  [3, 0.05],
]
const AS_MEASURED = [[1, 1]] as const

/** A caliper on single balls, for a lot whose balls were all measured [mm]. */
const BALL_CALIPER = 0.02

/** The multiples of the scatter to allow for: of measured balls, and of equal ones, there is one. */
export const scatterTimes = ({ input, ballScatter }: ResolvedBalls): typeof SCATTER_TIMES =>
  input.balls.diameters !== undefined || ballScatter === 0 ? AS_MEASURED : SCATTER_TIMES

/**
 * Standard uncertainty of the mean of the balls in a ring of a bought lot [mm]: that of the lot, and that of so many balls of it.
 *
 * @param scatter of single balls [mm], 0 or above
 * @param count whole, at least 1
 */
export const boughtMeanUncertainty = (scatter: number, count: number): number =>
  scatter * Math.sqrt(LOT_MEAN_OVER_SCATTER * LOT_MEAN_OVER_SCATTER + 1 / count)

/**
 * The same of balls that were measured: the caliper's part, and the open choice of which of them go in.
 *
 * @param measured how many, at least `count`
 */
export function measuredMeanUncertainty(scatter: number, count: number, measured: number): number {
  const open = Math.max(0, 1 / count - 1 / measured)
  return Math.sqrt(scatter * scatter * open + (BALL_CALIPER * BALL_CALIPER) / measured)
}
