import { requireWhole } from '#shared/precondition.ts'

/** A sample in two figures. */
export interface Summary {
  readonly mean: number
  /** Sample standard deviation, over n − 1; 0 for a single value. */
  readonly standardDeviation: number
}

/**
 * Mean and standard deviation of a sample, in two passes and each corrected by what rounding left over of the
 * differences (Chan, Golub and LeVeque 1983, "Algorithms for computing the sample variance", their corrected two-pass
 * algorithm), so that values which lie close together far from 0 lose no digits.
 *
 * @throws RangeError for an empty sample
 */
export function summary(values: readonly number[]): Summary {
  const count = values.length
  requireWhole('number of values', count, 1)
  const rough = values.reduce((sum, value) => sum + value, 0) / count
  let [left, squares] = [0, 0]
  for (const value of values) {
    left += value - rough
    squares += (value - rough) * (value - rough)
  }
  const variance = count > 1 ? Math.max(0, squares - (left * left) / count) / (count - 1) : 0
  return { mean: rough + left / count, standardDeviation: Math.sqrt(variance) }
}
