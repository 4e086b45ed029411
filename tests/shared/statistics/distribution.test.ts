import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Distribution,
  densityOf,
  draw,
  drawWithoutReplacement,
  endsOf,
  meanOf,
  momentsOfSize,
  varianceOf,
} from '#shared/statistics/distribution.ts'
import { normalCdf } from '#shared/statistics/normal.ts'
import { FARTHEST_DRAW } from '#shared/statistics/normal-cells.ts'
import { randomStream } from '#shared/statistics/random.ts'
import { between } from '#tests/support/inputs.ts'

const COUNT = 1_000_000

/** Each with its distribution function: the second road. */
const SHAPES: readonly (readonly [Distribution, (value: number) => number])[] = [
  [{ kind: 'normal', mean: 3, standardDeviation: 2 }, (x) => normalCdf((x - 3) / 2)],
  [{ kind: 'uniform', mean: -1, halfWidth: 4 }, (x) => Math.min(1, Math.max(0, (x + 5) / 8))],
  [
    { kind: 'triangular', mean: 10, halfWidth: 0.5 },
    (x) => (x < 10 ? 2 * (x - 9.5) * (x - 9.5) : 1 - 2 * (10.5 - x) * (10.5 - x)),
  ],
]

function drawn(distribution: Distribution, seed: number): Float64Array {
  const out = new Float64Array(COUNT)
  draw(distribution, randomStream(seed, 0), out, COUNT)
  return out
}

const sampleMean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length

describe.each(SHAPES)('a million draws of %o', (distribution, distributionFunction) => {
  const values = drawn(distribution, 42)

  test('have its mean and its variance, to four standard errors', () => {
    const [mean, variance] = [meanOf(distribution), varianceOf(distribution)]
    expect(sampleMean(values)).toBeWithin(4 * Math.sqrt(variance / COUNT), mean)
    const squares = values.map((value) => (value - mean) * (value - mean))
    // No kurtosis here is above the normal one: 3.
    expect(sampleMean(squares)).toBeWithin(4 * variance * Math.sqrt(2 / COUNT), variance)
  })

  test('keep to its distribution function: Kolmogorov and Smirnov, at the level of 1 %', () => {
    const sorted = values.toSorted()
    let apart = 0
    sorted.forEach((value, index) => {
      const expected = distributionFunction(value)
      apart = Math.max(apart, (index + 1) / COUNT - expected, expected - index / COUNT)
    })
    // Kolmogorov's limit, 1.628 / √n (any table of it).
    expect(apart).toBeLessThan(1.628 / Math.sqrt(COUNT))
  })

  test('lie within its ends', () => {
    const { least, most } = endsOf(distribution, FARTHEST_DRAW)
    for (const value of values) {
      if (!(value >= least && value <= most)) expect.fail(`${value} is not within ${least} and ${most}`)
    }
    expect(values.length).toBe(COUNT)
  })
})

test.each([3.2, 3.7, 4.1])('the tails of a normal number are there: beyond %d standard deviations', (z) => {
  const count = [1, 2, 3, 4, 5].reduce((sum, seed) => {
    const values = drawn({ kind: 'normal', mean: 0, standardDeviation: 1 }, seed)
    return sum + values.filter((value) => Math.abs(value) > z).length
  }, 0)
  const expected = 5 * COUNT * 2 * normalCdf(-z)
  expect(count).toBeWithin(4 * Math.sqrt(expected), expected)
})

test('two numbers drawn one after the other have nothing to do with each other', () => {
  const values = drawn({ kind: 'normal', mean: 0, standardDeviation: 1 }, 5)
  let sum = 0
  for (let index = 1; index < COUNT; index++) sum += (values[index - 1] ?? 0) * (values[index] ?? 0)
  expect(sum / COUNT).toBeWithin(4 / Math.sqrt(COUNT), 0)
})

describe('of a list', () => {
  const VALUES = [1, 2, 4, 8, 16]

  test('each with the same chance, again and again', () => {
    const values = drawn({ kind: 'discrete', values: VALUES }, 1)
    for (const value of VALUES) {
      expect(values.filter((each) => each === value).length).toBeWithin(4 * Math.sqrt(COUNT * 0.16), COUNT / 5)
    }
    expect(meanOf({ kind: 'discrete', values: VALUES })).toBe(6.2)
    // By hand: (1 + 4 + 16 + 64 + 256) / 5 − 6.2².
    expect(varianceOf({ kind: 'discrete', values: VALUES })).toBeWithin(1e-13, 68.2 - 38.44)
  })

  test('without putting back: all five are always the five, and each of the sixty orders of three comes as often', () => {
    const trials = 60_000
    const out = new Float64Array(5 * trials)
    drawWithoutReplacement(VALUES, 5, randomStream(3, 0), out, trials)
    const orders = new Map<string, number>()
    for (let trial = 0; trial < trials; trial++) {
      const five = [0, 1, 2, 3, 4].map((place) => out[place * trials + trial] ?? Number.NaN)
      expect(five.toSorted((one, other) => one - other)).toEqual(VALUES)
      const order = five.slice(0, 3).join()
      orders.set(order, (orders.get(order) ?? 0) + 1)
    }
    expect(orders.size).toBe(60)
    // χ² of 59 degrees of freedom: 98.3 is passed with a chance of 0.1 % (Wilson and Hilferty's cube root).
    const apart = Array.from(orders.values(), (count) => ((count - 1000) * (count - 1000)) / 1000)
    expect(apart.reduce((sum, each) => sum + each, 0)).toBeLessThan(98.3)
  })

  test('more than there are is misuse', () => {
    expect(() => drawWithoutReplacement([1, 2], 3, randomStream(1, 0), new Float64Array(3), 1)).toThrow(RangeError)
  })
})

test('mean and variance of the size of a number: the mean over its quantiles', () => {
  const shape = fc.constantFrom('normal', 'uniform', 'triangular')
  fc.assert(
    fc.property(shape, between(-3, 3), between(0.1, 2), (kind, mean, width) => {
      const distribution: Distribution =
        kind === 'normal' ? { kind, mean, standardDeviation: width } : { kind, mean, halfWidth: width }
      const sizes = drawn(distribution, 9).subarray(0, 200_000).map(Math.abs)
      const { mean: size, variance } = momentsOfSize(distribution)
      const uncertainty = Math.sqrt(variance / sizes.length)
      expect(sampleMean(sizes)).toBeWithin(5 * uncertainty, size)
      const squares = sizes.map((each) => (each - size) * (each - size))
      expect(sampleMean(squares)).toBeWithin(0.03 * variance, variance)
    }),
    { numRuns: 30 },
  )
})

test('a density is that of its distribution function, and beyond its ends there is none', () => {
  for (const [distribution, below] of SHAPES) {
    if (distribution.kind === 'discrete') continue
    const density = densityOf(distribution)
    const { least, most } = endsOf(distribution, 3)
    const middle = meanOf(distribution)
    const step = 1e-4
    for (const at of [middle - 0.31, middle + 0.07, middle + 0.42])
      expect(density(at)).toBeWithin(1e-3, (below(at + step) - below(at - step)) / (2 * step))
    if (distribution.kind === 'normal') continue
    expect(density(most + 0.01)).toBe(0)
    expect(density(least - 0.01)).toBe(0)
  }
})

describe('closed forms', () => {
  const uniform = (mean: number): Distribution => ({ kind: 'uniform', mean, halfWidth: 3 })
  const triangular = (mean: number): Distribution => ({ kind: 'triangular', mean, halfWidth: 3 })
  const normal = (mean: number, standardDeviation = 2): Distribution => ({ kind: 'normal', mean, standardDeviation })

  test('variances: h²/3, h²/6, σ²', () => {
    expect([uniform(5), triangular(5), normal(5)].map(varianceOf)).toEqual([3, 1.5, 4])
  })

  test('ends: of a normal number as many deviations as are asked for, of a list its own', () => {
    expect([uniform(1), triangular(1), normal(1)].map((each) => endsOf(each, 4))).toEqual([
      { least: -2, most: 4 },
      { least: -2, most: 4 },
      { least: -7, most: 9 },
    ])
    expect(endsOf({ kind: 'discrete', values: [3, -1, 2] }, 4)).toEqual({ least: -1, most: 3 })
  })

  test('densities: even up to both ends; 1/h at the peak and half of that half way; 1/(σ √(2π)) in the middle', () => {
    const [even, peaked] = [
      densityOf({ kind: 'uniform', mean: 1, halfWidth: 3 }),
      densityOf({ kind: 'triangular', mean: 1, halfWidth: 3 }),
    ]
    expect([-2.001, -2, 1, 4, 4.001].map(even)).toEqual([0, 1 / 6, 1 / 6, 1 / 6, 0])
    expect([-2, -0.5, 1, 2.5, 4].map(peaked)).toEqual([0, 1 / 6, 1 / 3, 1 / 6, 0])
    const bell = densityOf({ kind: 'normal', mean: 1, standardDeviation: 2 })
    expect(bell(1)).toBeWithin(1e-15, 1 / (2 * Math.sqrt(2 * Math.PI)))
    expect(bell(3) / bell(1)).toBeWithin(1e-15, Math.exp(-0.5))
  })

  test.each([
    ['uniform about 0: h/2', uniform(0), 1.5],
    ['uniform, partly below 0: (m² + h²)/2h', uniform(-1), 10 / 6],
    ['uniform, all on one side: its mean', uniform(-3), 3],
    ['triangular about 0: h/3', triangular(0), 1],
    ['triangular, partly below 0: m + (h − m)³/3h²', triangular(1), 1 + 8 / 27],
    ['triangular, all on one side: its mean', triangular(-4), 4],
    ['normal about 0: σ √(2/π)', normal(0), 2 * Math.sqrt(2 / Math.PI)],
    ['one figure', normal(-1.5, 0), 1.5],
    ['a list', { kind: 'discrete', values: [-1, 2, -3] } as Distribution, 2],
  ])('mean size, %s', (_what, distribution, size) => {
    const { mean, variance } = momentsOfSize(distribution)
    expect(mean).toBeWithin(1e-15, size)
    // E|X|² = E X²
    expect(variance + size * size).toBeWithin(1e-14, varianceOf(distribution) + meanOf(distribution) ** 2)
  })

  test('as many as there are may be drawn without putting back', () => {
    const out = new Float64Array(2)
    drawWithoutReplacement([1, 2], 2, randomStream(1, 0), out, 1)
    expect(Array.from(out).toSorted()).toEqual([1, 2])
  })
})
