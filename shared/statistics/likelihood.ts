import { logNormalCdf, normalCdf } from './normal.ts'

/** How a figure was read: rounded to a graduation (0: not rounded), by a hand that errs (normally distributed). */
export interface ReadingError {
  readonly graduation: number
  /** Above 0: no hand is without error. */
  readonly standardUncertainty: number
}

const HALF_LOG_TWO_PI = 0.9189385332046727

/** Below this the difference of two distribution functions has lost its digits to rounding. */
const DIFFERENCE_LOST = 1e-300

/**
 * Logarithm of the chance (or, unrounded, the density) of a reading when the figure really is `truth`: the hand's
 * normal error, and the uniform one of rounding to the nearest graduation, convolved.
 */
export function logReading(reading: number, truth: number, { graduation, standardUncertainty }: ReadingError): number {
  const off = reading - truth
  if (graduation === 0) {
    const z = off / standardUncertainty
    return -0.5 * z * z - Math.log(standardUncertainty) - HALF_LOG_TWO_PI
  }
  // The distribution is symmetric: take the side on which both terms are small and their difference exact.
  const near = (Math.abs(off) - graduation / 2) / standardUncertainty
  const far = (Math.abs(off) + graduation / 2) / standardUncertainty
  const chance = normalCdf(-near) - normalCdf(-far)
  return chance > DIFFERENCE_LOST ? Math.log(chance) : logNormalCdf(-near)
}

/** Standard deviation of a reading's error: that of the hand and that of rounding, which is graduation / √12. */
export const readingDeviation = ({ graduation, standardUncertainty }: ReadingError): number =>
  Math.sqrt(standardUncertainty * standardUncertainty + (graduation * graduation) / 12)
