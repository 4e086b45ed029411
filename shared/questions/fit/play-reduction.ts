/*
 * What unequal balls take from the play of a disc among them. Balls of diameters d = m + σ z stand at the bottom of one groove;
 * the largest disc between them, free to move sideways, has a diameter less than that inside equal balls by σ W, where
 *
 *   W = 2 min over (a, b) of max over balls of (zᵢ − a cos φᵢ − b sin φᵢ),      Σ zᵢ = 0
 *
 * A plug meets it, and so does an inner ring: its play among unequal balls is that among equal ones less σ W.
 */

/** The law of W for one number of balls: mean, standard deviation and skewness. */
export interface PlayReduction {
  readonly mean: number
  readonly deviation: number
  readonly skewness: number
}

/** By trials of the linear program above (derived here; the test repeats it). Three balls always find their one circle. */
const TABLE: readonly (readonly [count: number, mean: number, deviation: number, skewness: number])[] = [
  [3, 0, 0, 0],
  [4, 0.8, 0.605, 1],
  [5, 0.92, 0.49, 0.6],
  [6, 1.29, 0.62, 0.75],
  [7, 1.44, 0.565, 0.5],
  [8, 1.7, 0.635, 0.65],
  [10, 1.96, 0.635, 0.6],
  [14, 2.345, 0.637, 0.58],
  [20, 2.74, 0.625, 0.53],
  [30, 3.14, 0.605, 0.5],
  [50, 3.61, 0.59, 0.45],
  [100, 4.23, 0.552, 0.4],
  [200, 4.77, 0.515, 0.36],
]

/** The law of W, between the rows of the table by the logarithm of the count. */
export function playReduction(count: number): PlayReduction {
  const after = TABLE.findIndex(([row]) => row >= count)
  const [high, low] = [TABLE[after === -1 ? TABLE.length - 1 : after], TABLE[Math.max(after - 1, 0)]]
  if (high === undefined || low === undefined || after === -1 || high[0] === count || high === low) {
    const [, mean, deviation, skewness] = high ?? [0, 0, 0, 0]
    return { mean, deviation, skewness }
  }
  const share = Math.log(count / low[0]) / Math.log(high[0] / low[0])
  const between = (column: 1 | 2 | 3): number => low[column] + share * (high[column] - low[column])
  return { mean: between(1), deviation: between(2), skewness: between(3) }
}

/** W at a standard normal number: Cornish and Fisher's first correction for skewness, never below 0. */
export const reductionAt = ({ mean, deviation, skewness }: PlayReduction, z: number): number =>
  Math.max(0, mean + deviation * (z + (skewness / 6) * (z * z - 1)))
