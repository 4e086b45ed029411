import { describe, expect, test } from 'vitest'
import { type Distribution, varianceOf } from '#shared/statistics/distribution.ts'
import { isStable, numericalTolerance, summaryOf } from '#shared/statistics/monte-carlo.ts'
import { plainModel, run } from '#tests/support/trials.ts'

// JCGM 101:2008, Propagation of distributions using a Monte Carlo method, 9.2 and 9.3: the printed figures, from memory.
// Tolerance: half the last printed digit and four standard errors of our own trials; in 9.2.3 and 9.2.4 the exact ends
// are known too.

const TRIALS = 1_000_000

const normal = (mean: number, standardDeviation: number): Distribution => ({ kind: 'normal', mean, standardDeviation })
const rectangular = (low: number, high: number): Distribution => ({
  kind: 'uniform',
  mean: (low + high) / 2,
  halfWidth: (high - low) / 2,
})
const sum = (...numbers: number[]) => numbers.reduce((total, number) => total + number, 0)
const ROOT3 = Math.sqrt(3)
const four = (distribution: Distribution) => [distribution, distribution, distribution, distribution]

const ADDITIVE = [
  { clause: '9.2.2 four normal', inputs: four(normal(0, 1)), u: 2.0, end: 3.92, half: [0.05, 0.005] },
  {
    clause: '9.2.3 four rectangular',
    inputs: four(rectangular(-ROOT3, ROOT3)),
    u: 2.0,
    end: 3.88,
    half: [0.05, 0.005],
  },
  {
    clause: '9.2.4 one rectangular ten times as wide',
    inputs: [...four(rectangular(-ROOT3, ROOT3)).slice(1), rectangular(-10 * ROOT3, 10 * ROOT3)],
    u: 10.1,
    end: 17.0,
    half: [0.05, 0.05],
  },
] as const

test.each(ADDITIVE)('JCGM 101 $clause: mean 0, u $u, shortest 95 % interval ± $end', ({ inputs, u, end, half }) => {
  const { plan, tally } = run(plainModel(inputs, sum), TRIALS)
  const { mean, standardDeviation, shortest, standardError } = summaryOf(tally, plan, 0)
  expect(mean).toBeWithin(4 * standardError.mean, 0)
  expect(standardDeviation).toBeWithin(half[0] + 4 * standardError.standardDeviation, u)
  expect(shortest.low).toBeWithin(half[1] + 4 * standardError.low, -end)
  expect(shortest.high).toBeWithin(half[1] + 4 * standardError.high, end)
})

test('JCGM 101 9.2.3: the exact end 2 √3 (2 − (3/5)^(1/4)) of four rectangular numbers', () => {
  const { plan, tally } = run(plainModel(four(rectangular(-ROOT3, ROOT3)), sum), TRIALS)
  const exact = 2 * ROOT3 * (2 - Math.sqrt(Math.sqrt(3 / 5)))
  const { shortest, standardError } = summaryOf(tally, plan, 0)
  expect(shortest.high - shortest.low).toBeWithin(0.02, 2 * exact)
  expect(shortest.high).toBeWithin(4 * standardError.high, exact)
})

describe('JCGM 101 9.3, calibration of a mass', () => {
  const INPUTS = [
    normal(100_000, 0.05),
    normal(1.234, 0.02),
    rectangular(1.1, 1.3),
    rectangular(7000, 9000),
    rectangular(7950, 8050),
  ]
  const deviation = (reference = 0, difference = 0, air = 0, weight = 0, standard = 0) =>
    (reference + difference) * (1 + (air - 1.2) * (1 / weight - 1 / standard)) - 100_000

  test('mean 1.2341 mg, u 0.0754 mg, shortest 95 % interval 1.0834 to 1.3825 mg', () => {
    const { plan, tally } = run(plainModel(INPUTS, deviation), TRIALS)
    const { mean, standardDeviation, shortest, standardError } = summaryOf(tally, plan, 0)
    // Table 6 is itself of trials: 5 × 10^-4, its numerical tolerance, for each figure.
    expect(mean).toBeWithin(5e-4 + 4 * standardError.mean, 1.2341)
    expect(standardDeviation).toBeWithin(5e-4 + 4 * standardError.standardDeviation, 0.0754)
    expect(shortest.low).toBeWithin(5e-4 + 4 * standardError.low, 1.0834)
    expect(shortest.high).toBeWithin(5e-4 + 4 * standardError.high, 1.3825)
  })

  test('stands still to two digits after some hundred thousand trials, and not after ten thousand', () => {
    const { plan, tally } = run(plainModel(INPUTS, deviation), TRIALS)
    expect(isStable(tally, plan, 0, 2)).toBe(true)
    const short = run(plainModel(INPUTS, deviation), 10_000)
    expect(isStable(short.tally, short.plan, 0, 2)).toBe(false)
  })
})

// JCGM 101:2008, 7.9.2, the examples of a numerical tolerance; from memory.
test.each([
  [0.0003504, 2, 0.000005],
  [0.0754, 2, 0.0005],
  [2, 1, 0.5],
  [2.0, 2, 0.05],
  [0.099_9, 2, 0.005],
])('the numerical tolerance of %d with %d digits is %d', (value, digits, tolerance) => {
  expect(numericalTolerance(value, digits)).toBe(tolerance)
})

// JCGM 101 9.3.2, the law of propagation of uncertainty to first order: with all densities at their means only the two masses
// have a slope, so it misses a third. JCGM 100 4.3.7: a rectangle of half-width a has u = a / √3.
test('JCGM 101 9.3: u to first order is 0.0539 mg', () => {
  expect(Math.sqrt(varianceOf(normal(100_000, 0.05)) + varianceOf(normal(1.234, 0.02)))).toBeWithin(0.00005, 0.0539)
})

test('three rectangles of half-width 0.1: u 0.1, worst case 0.3, and root of squares of the half-widths 0.173205', () => {
  const variance = 3 * varianceOf(rectangular(-0.1, 0.1))
  expect(Math.sqrt(variance)).toBeWithin(1e-12, 0.1)
  expect(Math.sqrt(3 * variance)).toBeWithin(5e-7, 0.173205)
  const { plan, tally } = run(plainModel(Array(3).fill(rectangular(-0.1, 0.1)), sum), 100_000)
  const { shortest } = summaryOf(tally, plan, 0)
  expect(shortest.high).toBeLessThan(0.3)
})

// A public worked note on models that are not linear. Its u is printed to two decimals, its interval to what trials give.
test('y = x² of a normal x, 1.0 and 0.5: mean 1.25, u 1.06, shortest 95 % interval 0 to 3.32', () => {
  const { plan, tally } = run(
    plainModel([normal(1, 0.5)], (x = 0) => x * x),
    TRIALS,
  )
  const { mean, standardDeviation, shortest, standardError } = summaryOf(tally, plan, 0)
  expect(mean).toBeWithin(4 * standardError.mean, 1.25)
  expect(standardDeviation).toBeWithin(0.005 + 4 * standardError.standardDeviation, 1.06)
  expect(shortest.low).toBeWithin(0.005, 0)
  expect(shortest.high).toBeWithin(0.03, 3.32)
})

// JCGM 101 9.5, comparison loss of an end gauge of 50 mm (JCGM 100 H.1), deviation from 50 mm [nm]. Student's t of n degrees
// is a normal number over the root of the mean of n squares; an arcsine is a sine of a uniform angle; a curvilinear trapezoid
// is a uniform of uncertain half-width. Its interval is of 99 %, ours of 95 %, so mean and u alone are held.
test('JCGM 101 9.5, end gauge: mean 838 nm, u 36 nm', () => {
  const DEGREES = [18, 24, 5, 8]
  const inputs = [
    ...DEGREES.flatMap((degrees) => Array.from({ length: degrees + 1 }, () => normal(0, 1))),
    rectangular(9.5e-6, 13.5e-6),
    normal(-0.1, 0.2),
    rectangular(0, Math.PI),
    ...Array.from({ length: 4 }, () => rectangular(-1, 1)),
  ]
  const deviation = (...drawn: number[]): number => {
    const rest = [...drawn]
    const [standard = 0, difference = 0, random = 0, systematic = 0] = DEGREES.map((degrees) => {
      const [z = 0, ...others] = rest.splice(0, degrees + 1)
      return z / Math.sqrt(others.reduce((total, one) => total + one * one, 0) / degrees)
    })
    const [expansion = 0, mean = 0, angle = 0, ...rectangles] = rest
    const [a = 0, b = 0, c = 0, d = 0] = rectangles
    const length = 50_000_623 + 25 * standard
    const temperature = mean + 0.5 * Math.cos(angle)
    const expansionApart = a * (1e-6 + 0.1e-6 * b)
    const temperatureApart = c * (0.05 + 0.025 * d)
    const measured = 215 + 6 * difference + 4 * random + 7 * systematic
    return (
      (length * (1 + expansion * (temperature - temperatureApart)) + measured) /
        (1 + (expansion + expansionApart) * temperature) -
      50_000_000
    )
  }
  const { plan, tally } = run(plainModel(inputs, deviation), 200_000)
  const { mean, standardDeviation, standardError } = summaryOf(tally, plan, 0)
  expect(mean).toBeWithin(0.5 + 4 * standardError.mean, 838)
  expect(standardDeviation).toBeWithin(0.5 + 4 * standardError.standardDeviation, 36)
})
