import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  logNormalCdf,
  normalCdf,
  normalDensity,
  normalQuantile,
  normalQuantileBetween,
} from '#shared/statistics/normal.ts'

/** Simpson's rule: a second road to the distribution function. */
function integral(from: number, to: number, pieces = 4000): number {
  const width = (to - from) / pieces
  let sum = normalDensity(from) + normalDensity(to)
  for (let i = 1; i < pieces; i++) sum += (i % 2 === 0 ? 2 : 4) * normalDensity(from + i * width)
  return (sum * width) / 3
}

test.each([-6, -3, -1.5, -0.3, 0, 0.7, 2, 5])('the distribution function at %d is the integral of the density', (z) => {
  expect(normalCdf(z)).toBeWithin(1e-14, 0.5 + integral(0, z))
})

// Printed in every table of the normal distribution; from memory.
test.each([
  [1, 0.8413],
  [1.96, 0.975],
  [2.5758, 0.995],
  [3, 0.99865],
])('table of the normal distribution: Φ(%d) = %d', (z, printed) => {
  expect(normalCdf(z)).toBeWithin(0.5e-4, printed)
})

test('the quantile is the way back of the distribution function', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true }), (probability) => {
      expect(normalCdf(normalQuantile(probability))).toBeWithin(1e-14 + 1e-8 * Math.min(probability, 1e-6), probability)
    }),
  )
})

test('the logarithm goes on where the function itself is lost', () => {
  expect(logNormalCdf(-10)).toBeWithin(1e-7, Math.log(normalCdf(-10)))
  // Mills' ratio: Φ(−z) ≈ φ(z)/z (1 − 1/z²)
  expect(logNormalCdf(-40)).toBeWithin(1e-3, -800 - Math.log(40 * Math.sqrt(2 * Math.PI)) - 1 / 1600)
  expect(logNormalCdf(-37.01)).toBeLessThan(logNormalCdf(-36.99))
})

test.each([0, 1, Number.NaN, -0.1])('no quantile for a probability of %d', (probability) => {
  expect(() => normalQuantile(probability)).toThrow(RangeError)
})

test('a quantile between two ends lies between them, and so much of what is left lies below it', () => {
  const [mean, deviation, low, high] = [0.65, 0.2, 0, 1]
  const [below, above] = [normalCdf((low - mean) / deviation), normalCdf((high - mean) / deviation)]
  for (const share of [0.001, 0.1, 0.5, 0.9, 0.999]) {
    const found = normalQuantileBetween({ mean, deviation }, low, high, share)
    expect(found).toBeGreaterThan(low)
    expect(found).toBeLessThan(high)
    expect((normalCdf((found - mean) / deviation) - below) / (above - below)).toBeWithin(1e-12, share)
  }
  expect(normalQuantileBetween({ mean, deviation }, -Infinity, Infinity, 0.5)).toBeWithin(1e-15, mean)
  expect(normalQuantileBetween({ mean, deviation }, 2, 1, 0.5)).toBe(2)
})

test('half of all lies below 0, none farther off than a double can tell, and the logarithm joins there', () => {
  expect(normalCdf(0)).toBe(0.5)
  expect([-38, 38].map(normalCdf)).toEqual([0, 1])
  // Mills' ratio to its second term: 1/z − 1/z³ + 3/z⁵
  for (const z of [36.9, 37.1, 60]) {
    const ratio = 1 / z - 1 / z ** 3 + 3 / z ** 5
    expect(logNormalCdf(-z)).toBeWithin(1e-3, -0.5 * z * z - Math.log(Math.sqrt(2 * Math.PI) / ratio))
  }
})

describe('a quantile between two ends, closed', () => {
  const OF = { mean: 3, deviation: 2 }
  test.each([
    ['the middle between ends alike far off', 2, 4, 0.5, 3],
    ['the ends themselves', 2, 4, 0, 2],
    ['the ends themselves', 2, 4, 1, 4],
    ['half of the upper half', 3, Infinity, 0.5, 3 + 2 * 0.6744897501960817],
    ['half of the lower half', -Infinity, 3, 0.5, 3 - 2 * 0.6744897501960817],
    ['ends that cross: the lower', 4, 2, 0.5, 4],
  ])('%s (%s to %s, %s)', (_what, low, high, share, found) => {
    expect(normalQuantileBetween(OF, low, high, share)).toBeWithin(1e-9, found)
  })
})
