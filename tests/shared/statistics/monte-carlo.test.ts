import { describe, expect, test } from 'vitest'
import type { Distribution } from '#shared/statistics/distribution.ts'
import {
  ABOVE,
  BELOW,
  blockCount,
  CHUNK,
  countAt,
  independent,
  joined,
  type Model,
  planTrials,
  runBlocks,
  shareOf,
  summaryOf,
  trialsIn,
  WITHIN,
  withoutReplacement,
} from '#shared/statistics/monte-carlo.ts'
import { normalCdf, normalQuantile } from '#shared/statistics/normal.ts'
import { quantile } from '#shared/statistics/streaming-histogram.ts'
import { choicesOf } from '#tests/support/orders.ts'
import { plainModel, run } from '#tests/support/trials.ts'

const sum = (...numbers: number[]) => numbers.reduce((total, number) => total + number, 0)
const SHARES = [0.001, 0.025, 0.3, 0.5, 0.9, 0.999]

test('a sum of normal numbers is normal: its mean, its deviation, every quantile', () => {
  const inputs: readonly Distribution[] = [
    { kind: 'normal', mean: 1, standardDeviation: 3 },
    { kind: 'normal', mean: 2, standardDeviation: 4 },
    { kind: 'normal', mean: -10, standardDeviation: 12 },
  ]
  const { plan, tally } = run(plainModel(inputs, sum), 500_000)
  const { mean, standardDeviation, standardError } = summaryOf(tally, plan, 0)
  expect(mean).toBeWithin(4 * standardError.mean, -7)
  expect(standardDeviation).toBeWithin(4 * standardError.standardDeviation, 13)
  // √(2 (n − 1)) of a normal sample: the error itself.
  expect(standardError.standardDeviation).toBeWithin(0.0005, 13 / Math.sqrt(1_000_000))
  for (const share of SHARES) {
    const { value, standardError: error } = quantile(tally.histograms[0] ?? expect.fail(), share)
    expect(value).toBeWithin(4 * error, -7 + 13 * normalQuantile(share))
  }
})

/** The distribution function of a sum of n uniform numbers from 0 to 1 (Irwin 1927, Hall 1927). */
function irwinHall(count: number, value: number): number {
  let [total, binomial, factorial] = [0, 1, 1]
  for (let k = 0; k <= Math.floor(value); k++) {
    let power = 1
    for (let times = 0; times < count; times++) power *= value - k
    total += (k % 2 === 0 ? 1 : -1) * binomial * power
    binomial = (binomial * (count - k)) / (k + 1)
  }
  for (let k = 2; k <= count; k++) factorial *= k
  return total / factorial
}

test.each([2, 3, 5, 8])('a sum of %d uniform numbers is that of Irwin and Hall', (count) => {
  const inputs = Array.from({ length: count }, (): Distribution => ({ kind: 'uniform', mean: 0.5, halfWidth: 0.5 }))
  const { tally } = run(plainModel(inputs, sum), 300_000)
  for (const share of SHARES) {
    const { value } = quantile(tally.histograms[0] ?? expect.fail(), share)
    expect(irwinHall(count, value)).toBeWithin(4 * Math.sqrt((share * (1 - share)) / 300_000) + 1e-4, share)
  }
})

describe('a tiny lot: three of five balls, none twice, all ten choices counted out', () => {
  const LOT = [1, 2, 4, 8, 16]
  const model: Model = {
    sources: [withoutReplacement(LOT, 3)],
    outputs: 1,
    evaluate: ([drawn], [result]) => {
      for (let trial = 0; trial < CHUNK; trial++) {
        const three = [0, 1, 2].map((row) => drawn?.[row * CHUNK + trial] ?? Number.NaN)
        result?.set([sum(...three)], trial)
      }
    },
  }
  const sums = choicesOf(LOT, 3).map((choice) => sum(...choice))

  test('every sum comes a tenth of the time', () => {
    const trials = 200_000
    for (const one of sums) {
      const { tally } = run(model, trials, { bands: [{ min: one - 0.5, max: one + 0.5 }] })
      const { value, standardError } = shareOf(countAt(tally, 0, WITHIN), trials)
      expect(value).toBeWithin(4 * standardError, 1 / 10)
      const smaller = sums.filter((other) => other < one).length
      expect(countAt(tally, 0, BELOW) / trials).toBeWithin(0.006, smaller / 10)
      expect(countAt(tally, 0, ABOVE) / trials).toBeWithin(0.006, (9 - smaller) / 10)
    }
  })

  test('mean and deviation over all ten', () => {
    const { plan, tally } = run(model, 200_000)
    const { mean, standardDeviation, standardError } = summaryOf(tally, plan, 0)
    const expected = sum(...sums) / 10
    expect(mean).toBeWithin(4 * standardError.mean, expected)
    const variance = sum(...sums.map((each) => (each - expected) * (each - expected))) / 10
    expect(standardDeviation).toBeWithin(4 * standardError.standardDeviation, Math.sqrt(variance))
  })
})

/** Two outputs with a cause in common. */
const TWO: Model = {
  sources: [independent({ kind: 'normal', mean: 0, standardDeviation: 1 }, 3)],
  outputs: 2,
  evaluate: ([drawn], [one, other]) => {
    for (let trial = 0; trial < CHUNK; trial++) {
      const [a, b, both] = [0, 1, 2].map((row) => drawn?.[row * CHUNK + trial] ?? Number.NaN)
      one?.set([(a ?? 0) + (both ?? 0)], trial)
      other?.set([(b ?? 0) + (both ?? 0)], trial)
    }
  },
}

test('what happens together is counted together: of two with a correlation of 1/2, both above 0 in 1/3 of the trials', () => {
  const band = { min: 0, max: Number.POSITIVE_INFINITY }
  const { tally } = run(TWO, 400_000, { bands: [band, band] })
  // Sheppard 1899: 1/4 + asin(ρ) / 2π.
  const both = tally.joint[WITHIN + 3 * WITHIN] ?? Number.NaN
  expect(both / 400_000).toBeWithin(4 * Math.sqrt(2 / 9 / 400_000), 1 / 3)
  expect(countAt(tally, 1, WITHIN) / 400_000).toBeWithin(0.0032, 1 / 2)
  expect(sum(...tally.joint)).toBe(400_000)
})

test('a lower end that is one of several: each trial is counted once, and as tight by the ends above it', () => {
  const uniform: Distribution = { kind: 'uniform', mean: 1, halfWidth: 2 }
  const lows = Array.from({ length: 101 }, (_, i) => i / 100)
  const { tally } = run(
    plainModel([uniform], (value) => value),
    200_000,
    { bands: [{ min: 0, max: 2, lows }] },
  )
  expect(sum(...tally.joint)).toBe(200_000)
  // from −1 to 3: a quarter below 0, a quarter above 2, and half of the quarter between 0 and 1; four standard errors
  for (const [place, share] of [
    [BELOW, 3 / 8],
    [WITHIN, 3 / 8],
    [ABOVE, 1 / 4],
  ] as const)
    expect(countAt(tally, 0, place) / 200_000).toBeWithin(0.0044, share)
})

test('in whatever parts it is run, the answer is the same to the last bit', () => {
  const bands = [
    { min: -1, max: 1 },
    { min: 0, max: 2 },
  ]
  const plan = planTrials(TWO, { seed: 5, trials: 123_457, bands })
  const whole = joined(plan, [runBlocks(TWO, plan, 0, Number.POSITIVE_INFINITY)])
  expect(trialsIn(whole)).toBe(123_457)
  for (const size of [1, 3, 7]) {
    const parts = []
    for (let first = 0; first < blockCount(plan); first += size) parts.push([first, runBlocks(TWO, plan, first, size)])
    expect(joined(plan, parts.map(([, tally]) => tally) as (typeof whole)[])).toEqual(whole)
  }
})

test('another seed is another answer, within its errors', () => {
  const [one, other] = [1, 2]
    .map((seed) => run(TWO, 50_000, { seed }))
    .map(({ plan, tally }) => summaryOf(tally, plan, 0))
  if (one === undefined || other === undefined) return expect.fail()
  expect(one.mean).not.toBe(other.mean)
  expect(one.mean - other.mean).toBeWithin(6 * one.standardError.mean, 0)
})

test('standard errors are what answers scatter by from seed to seed', () => {
  const model = plainModel([{ kind: 'normal', mean: 0, standardDeviation: 1 }], sum)
  const SEEDS = 200
  const runs = Array.from({ length: SEEDS }, (_, seed) => run(model, 20_000, { seed: seed + 1 }))
  const figures = {
    mean: runs
      .map(({ plan, tally }) => summaryOf(tally, plan, 0))
      .map(({ mean, standardError }) => [mean, standardError.mean]),
    deviation: runs
      .map(({ plan, tally }) => summaryOf(tally, plan, 0))
      .map(({ standardDeviation, standardError }) => [standardDeviation, standardError.standardDeviation]),
    quantile: runs
      .map(({ tally }) => quantile(tally.histograms[0] ?? expect.fail(), 0.975))
      .map(({ value, standardError }) => [value, standardError]),
    end: runs
      .map(({ plan, tally }) => summaryOf(tally, plan, 0))
      .map(({ shortest, standardError }) => [shortest.high, standardError.high]),
  }
  for (const [name, pairs] of Object.entries(figures)) {
    const values = pairs.map(([value = 0]) => value)
    const middle = sum(...values) / SEEDS
    const scatter = Math.sqrt(sum(...values.map((value) => (value - middle) * (value - middle))) / (SEEDS - 1))
    const said = sum(...pairs.map(([, error = 0]) => error)) / SEEDS
    // The ends of a shortest interval have no error that is exact; the others have, and 200 seeds tell it to 5 %.
    expect(said / scatter, name).toBeWithin(name === 'end' ? 0.4 : 0.2, 1)
  }
})

test('what nothing moves comes out as it is', () => {
  for (const value of [0, 1e-9, -3.25, 1e6]) {
    const { plan, tally } = run(plainModel([{ kind: 'normal', mean: value, standardDeviation: 0 }], sum), 1000)
    const { mean, standardDeviation, shortest } = summaryOf(tally, plan, 0)
    expect([mean, standardDeviation, shortest]).toEqual([value, 0, { low: value, high: value }])
    expect(quantile(tally.histograms[0] ?? expect.fail(), 0.5)).toEqual({ value, standardError: 0 })
  }
})

test('a share of none or all has an error all the same', () => {
  expect(shareOf(0, 10_000)).toMatchObject({ value: 0, standardError: expect.closeTo(1e-4, 5) })
  expect(shareOf(10_000, 10_000).standardError).toBeWithin(1e-6, 1e-4)
  expect(shareOf(5000, 10_000).standardError).toBeWithin(1e-6, 0.005)
})

test('a far tail is kept to its ends: one value in a thousand forty deviations off', () => {
  const values = Array.from({ length: 1000 }, (_, index) => (index === 0 ? 1000 : index / 1000))
  const { tally } = run(plainModel([{ kind: 'discrete', values }], sum), 100_000)
  const [histogram] = tally.histograms
  expect(histogram?.most).toBe(1000)
  expect(quantile(histogram ?? expect.fail(), 0.5).value).toBeWithin(0.2, 0.5)
})

test('a model that gives no number is misuse', () => {
  const model = plainModel([{ kind: 'uniform', mean: 0, halfWidth: 1 }], (x = 0) => Math.sqrt(x))
  expect(() => run(model, 1000)).toThrow(RangeError)
  expect(normalCdf(0)).toBe(0.5)
})
