import { type Belief, expectation } from '#shared/statistics/belief.ts'
import { readingDeviation } from '#shared/statistics/likelihood.ts'
import type { ErrorToCome } from './error-to-come.ts'
import type { Reading } from './input.ts'
import type { GrooveModel } from './model.ts'

/** The reading that would tell most about the figure now, and how much. */
export interface NextReading {
  readonly reading: Reading
  /** Standard uncertainty of the figure now, and expected after that reading. */
  readonly uncertaintyNow: number
  readonly uncertaintyAfter: number
}

/**
 * Which reading would shrink the doubt most: the variance that is left of the figure g after a reading of f with error
 * variance s² is  Var g − Cov(g, f)² / (Var f + s²),  exact for normal beliefs, with the variances and the covariance
 * of the belief as it is.
 */
export function bestNextReading(belief: Belief, model: GrooveModel, errorOf: ErrorToCome): NextReading {
  const figure = expectation(belief, model.figure)
  const now = expectation(belief, (x, y) => (model.figure(x, y) - figure) ** 2)
  const judged = model.offers(belief, errorOf).flatMap((reading) => {
    const truth = model.truth(reading)
    if (truth === undefined || !('error' in reading)) return []
    const mean = expectation(belief, truth)
    const variance = expectation(belief, (x, y) => (truth(x, y) - mean) ** 2)
    const covariance = expectation(belief, (x, y) => (model.figure(x, y) - figure) * (truth(x, y) - mean))
    const left = now - (covariance * covariance) / (variance + readingDeviation(reading.error) ** 2)
    return [{ reading, uncertaintyNow: Math.sqrt(now), uncertaintyAfter: Math.sqrt(Math.max(0, left)) }]
  })
  const best = judged.reduce<NextReading | undefined>(
    (least, each) => (least === undefined || each.uncertaintyAfter < least.uncertaintyAfter ? each : least),
    undefined,
  )
  if (best === undefined) throw new RangeError('a model must offer a reading of a figure')
  return best
}
