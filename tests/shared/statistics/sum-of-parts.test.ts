import { describe, expect, test } from 'vitest'
import { characteristicOf } from '#shared/statistics/characteristic-function.ts'
import { type Distribution, varianceOf } from '#shared/statistics/distribution.ts'
import { normalCdf } from '#shared/statistics/normal.ts'
import { sampleOf } from '#shared/statistics/sample.ts'
import { BINS } from '#shared/statistics/streaming-histogram.ts'
import { binnedSum, type Part, type Pieces, shareBetween, spreadOf } from '#shared/statistics/sum-of-parts.ts'

const QUIET = { variances: [0, 0], covariance: 0 } as const
const part = (distribution: Distribution, slopes: readonly [number, number], copies = 1): Part => ({
  characteristic: characteristicOf(distribution),
  variance: varianceOf(distribution),
  slopes,
  copies,
})
const NORMAL: Distribution = { kind: 'normal', mean: 3, standardDeviation: 1 }
const UNIFORM: Distribution = { kind: 'uniform', mean: 0, halfWidth: 0.5 }

/** The largest difference of the bins' sums from a distribution function about the mean, edge by edge. */
function farthest(shares: Float64Array, reach: number, cdf: (x: number) => number): number {
  let [sum, most] = [0, 0]
  shares.forEach((share, bin) => {
    sum += share
    most = Math.max(most, Math.abs(sum - cdf(-reach + ((bin + 1) / BINS) * 2 * reach)))
  })
  return most
}

describe('one sum in bins', () => {
  test('normal parts are normal, by the root of the sum of squares', () => {
    const parts = [part(NORMAL, [0.6, 0]), part(NORMAL, [0.2, 1], 16)]
    const noise = { variances: [0.1, 0], covariance: 0 } as const
    const { shares, roundedBy } = binnedSum(parts, noise, 0, 9)
    const deviation = Math.sqrt(0.36 + 16 * 0.04 + 0.1)
    expect(farthest(shares, 9, (x) => normalCdf(x / deviation))).toBeLessThan(1e-14)
    expect(roundedBy).toBe(0)
    const other = binnedSum(parts, noise, 1, 36).shares
    expect(farthest(other, 36, (x) => normalCdf(x / 4))).toBeLessThan(1e-14)
  })

  test('uniform ones are the Irwin-Hall distribution', () => {
    // Of three: the cube of each distance from a corner, by turns; from any textbook.
    const cube = (x: number): number => Math.max(0, x) ** 3 / 6
    const cdf = (x: number): number => cube(x + 1.5) - 3 * cube(x + 0.5) + 3 * cube(x - 0.5) - cube(x - 1.5)
    const { shares, roundedBy } = binnedSum([part(UNIFORM, [1, 0], 3)], QUIET, 0, 4)
    expect(farthest(shares, 4, cdf)).toBeLessThan(1e-8)
    expect(roundedBy).toBeLessThan(1e-7)
  })

  test('of a single one the corners are rounded, and it says so', () => {
    const cdf = (x: number): number => Math.min(1, Math.max(0, x + 0.5))
    const { shares, roundedBy } = binnedSum([part(UNIFORM, [1, 0])], QUIET, 0, 8 / Math.sqrt(12))
    const off = farthest(shares, 8 / Math.sqrt(12), cdf)
    expect(off).toBeGreaterThan(1e-5)
    expect(roundedBy).toBeGreaterThan(off)
  })

  test('unlike above and below the mean: which side is which', () => {
    const lopsided: Distribution = { kind: 'discrete', values: [0, 0, 0, 4] }
    const { shares } = binnedSum([part(lopsided, [1, 0]), part(NORMAL, [0.1, 0])], QUIET, 0, 14)
    const cdf = (x: number): number => 0.75 * normalCdf((x + 1) / 0.1) + 0.25 * normalCdf((x - 3) / 0.1)
    expect(farthest(shares, 14, cdf)).toBeLessThan(1e-13)
  })
})

/** Two pieces that move both sums, each with values of its own for the second. */
const WITH_VALUES: Pieces = {
  pieces: [
    { middle: [-1, 0.5], half: [0, 0], own: sampleOf(Float64Array.of(-2, 0, 2)) },
    { middle: [1, -0.5], half: [0, 0], own: sampleOf(Float64Array.of(-0.5, 0.5)) },
  ],
}

test('values that pieces have of their own: the mixture, in the second sum alone', () => {
  const parts = [WITH_VALUES, part(NORMAL, [0.3, 0.2])]
  const over = (at: number, places: readonly number[], deviation: number): number =>
    places.reduce((sum, place) => sum + normalCdf((at - place) / deviation), 0) / places.length
  const first = (at: number): number => over(at, [-1, 1], 0.3)
  const second = (at: number): number => (over(at, [-1.5, 0.5, 2.5], 0.2) + over(at, [-1, 0], 0.2)) / 2
  expect(farthest(binnedSum(parts, QUIET, 0, 9).shares, 9, first)).toBeLessThan(1e-13)
  expect(farthest(binnedSum(parts, QUIET, 1, 15).shares, 15, second)).toBeLessThan(1e-13)
  const { variances, covariance } = spreadOf(parts, QUIET)
  expect(variances[0]).toBeWithin(1e-12, 1 + 0.09)
  // (8/3 + 1/4) / 2 of the values, 1/4 of the middles.
  expect(variances[1]).toBeWithin(1e-12, 35 / 24 + 1 / 4 + 0.04)
  expect(covariance).toBeWithin(1e-12, -0.5 + 0.06)
})

describe('both sums between their ends', () => {
  const between = (low: number, high: number) => ({ lows: [low], high })

  test('values that pieces have of their own: only with their piece', () => {
    const parts = [WITH_VALUES, part(NORMAL, [0.4, 0]), part(NORMAL, [0, 0.3])]
    const found = shareBetween(parts, QUIET, [between(-9, 0), between(-9, 0)], [9, 15])
    const below = (places: readonly number[], deviation: number): number =>
      places.reduce((sum, place) => sum + normalCdf(-place / deviation), 0) / places.length
    const [one, other] = [below([-1], 0.4) * below([-1.5, 0.5, 2.5], 0.3), below([1], 0.4) * below([-1, 0], 0.3)]
    expect(found).toBeWithin(1e-6, (one + other) / 2)
  })

  test('on their own: the product', () => {
    const parts = [part(NORMAL, [1, 0]), part(NORMAL, [0, 2])]
    const found = shareBetween(parts, QUIET, [between(-1, 0.5), between(0, 3)], [8, 16])
    const expected = (normalCdf(0.5) - normalCdf(-1)) * (normalCdf(1.5) - normalCdf(0))
    expect(found).toBeWithin(1e-7, expected)
  })

  // Of two normal numbers with a correlation ρ both are above their means in 1/4 + arcsin ρ / 2π of all cases (W. F. Sheppard 1899).
  test.each([-0.9, -0.3, 0, 0.5, 0.99])('a correlation of %d: Sheppard', (correlation) => {
    const parts = [part(NORMAL, [1, correlation]), part(NORMAL, [0, Math.sqrt(1 - correlation * correlation)])]
    const found = shareBetween(parts, QUIET, [between(0, 8), between(0, 8)], [8, 8])
    expect(found).toBeWithin(1e-6, 1 / 4 + Math.asin(correlation) / (2 * Math.PI))
  })

  test('uniform ones that share a part: by the area', () => {
    // U and U + V, both below 0: half of U's, and V below −U of these; the triangle's part is 3/4.
    const parts = [part(UNIFORM, [1, 1]), part(UNIFORM, [0, 1]), part(NORMAL, [0.03, 0.03])]
    const found = shareBetween(parts, QUIET, [between(-4, 0), between(-4, 0)], [4, 4])
    expect(found).toBeWithin(2e-3, 3 / 8)
  })

  test('two that are one take too many terms', () => {
    expect(shareBetween([part(NORMAL, [1, 1])], QUIET, [between(-1, 1), between(-1, 1)], [8, 8])).toBeUndefined()
  })

  test('variances and what is in common', () => {
    const noise = { variances: [0.5, 0.25], covariance: -0.1 } as const
    expect(spreadOf([part(NORMAL, [2, 3], 4)], noise)).toEqual({ variances: [16.5, 36.25], covariance: 23.9 })
  })
})
