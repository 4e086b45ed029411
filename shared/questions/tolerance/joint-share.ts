import { normalDensity } from '#shared/statistics/normal.ts'
import { type Between, type Noise, type Part, type Pieces, shareBetween } from '#shared/statistics/sum-of-parts.ts'

/** From where to where one of two sums is good, as distances from its mean; its own distribution, and how far that goes. */
export interface GoodLine extends Between {
  readonly shares: Float64Array
  readonly reach: number
}

/** Two sums that differ by less than this of the second's deviation are all but one. */
const ALL_BUT_ONE = 0.05

/**
 * The share that has both sums between their ends: by a series in two directions, or, where both are all but the same sum, by
 * the first alone.
 *
 * @param spread of both sums
 * @returns undefined where neither will do
 */
export function jointShare(
  parts: readonly (Part | Pieces)[],
  noise: Noise,
  spread: Noise,
  [one, other]: readonly [GoodLine, GoodLine],
): { readonly value: number; readonly standardError: number } | undefined {
  const [oneVariance, otherVariance] = spread.variances
  const lean = spread.covariance / oneVariance
  const own = Math.sqrt(Math.max(0, otherVariance - lean * spread.covariance))
  if (own < ALL_BUT_ONE * Math.sqrt(otherVariance)) {
    const [value, asOne] = [alongOne(one, other, lean, own), alongOne(one, other, lean, 0)]
    // What the second has of its own is taken as normal and as if it had nothing to do with the first.
    return { value, standardError: Math.abs(value - asOne) / 2 }
  }
  const value = shareBetween(parts, noise, [one, other], [one.reach, other.reach])
  return value === undefined ? undefined : { value, standardError: 0 }
}

/** A normal distribution is taken to end here, in standard deviations, and summed in so many steps. */
const NORMAL_ENDS = 6
const STEPS = 48

/** The second sum as the first times its lean, and a normal deviation of its own. */
function alongOne(one: GoodLine, other: Between, lean: number, own: number): number {
  const below = belowOf(one)
  const between = (off: number): number => {
    // The second has one lower end.
    const ends = [(Math.min(...other.lows) - off) / lean, (other.high - off) / lean]
    const [from, high] = [Math.min(...ends), Math.min(one.high, Math.max(...ends))]
    const reached = one.lows.reduce((sum, low) => sum + Math.max(0, below(high) - below(Math.max(low, from))), 0)
    return reached / one.lows.length
  }
  if (own === 0) return between(0)
  const step = (2 * NORMAL_ENDS) / STEPS
  let sum = 0
  for (let node = 0; node <= STEPS; node++) {
    const place = -NORMAL_ENDS + node * step
    sum += step * normalDensity(place) * between(own * place)
  }
  return sum
}

/** The share of the first sum below a distance from its mean. */
function belowOf({ shares, reach }: GoodLine): (value: number) => number {
  const sums = new Float64Array(shares.length + 1)
  shares.forEach((share, bin) => {
    sums[bin + 1] = (sums[bin] ?? Number.NaN) + share
  })
  return (value) => {
    const place = Math.min(shares.length, Math.max(0, ((value + reach) / (2 * reach)) * shares.length))
    const bin = Math.min(shares.length - 1, Math.floor(place))
    return (sums[bin] ?? Number.NaN) + (place - bin) * (shares[bin] ?? Number.NaN)
  }
}
