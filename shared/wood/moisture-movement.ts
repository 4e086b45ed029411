import { requireWithin } from '#shared/precondition.ts'

/** Coefficients of movement are given per size at this moisture content [%] (Wood Handbook, footnote of Table 13-5). */
const TABLE_MOISTURE = 10

/** More moisture than any wood holds in its walls [%]: above it no wood moves, and some stop before (Wood Handbook, Table 13-5). */
export const FIBRE_SATURATION = 30

/**
 * How many times as large wood is at one moisture content as at another. Below fibre saturation its size is a straight
 * line over its moisture, D = D10 (1 + C (M - 10)), so the ratio of two sizes is
 *
 *   (1 + C (to - 10)) / (1 + C (from - 10))
 *
 * which is Wood Handbook equation 13-3 with the shrinkage that C was made of, and equation 13-2 where `from` is 10.
 *
 * @param perPercent C, change of size per size at 10 % and per % of moisture, from 0 to 0.01
 * @param from, to moisture contents from 0 to 30 [%]
 * @throws RangeError outside those ranges
 */
export function stretch(perPercent: number, from: number, to: number): number {
  requireWithin('perPercent', perPercent, 0, 0.01)
  requireWithin('from', from, 0, FIBRE_SATURATION)
  requireWithin('to', to, 0, FIBRE_SATURATION)
  return (1 + perPercent * (to - TABLE_MOISTURE)) / (1 + perPercent * (from - TABLE_MOISTURE))
}
