import { expect, test } from 'vitest'
import { dawson } from '#shared/numbers/dawson.ts'

// Abramowitz and Stegun, Handbook of Mathematical Functions, Table 7.5, from memory; half the last digit.
test.each([
  [0, 0],
  [0.5, 0.4244363835],
  [1, 0.5380795069],
  [2, 0.3013403889],
])('Abramowitz and Stegun, Table 7.5 (from memory): D(%d) = %d', (x, expected) => {
  expect(dawson(x)).toBeWithin(0.5e-10, expected)
})

test('it solves D′ = 1 − 2 x D, is odd, and falls as 1 / 2x', () => {
  const step = 1e-5
  for (let x = -8; x <= 8; x += 0.173) {
    const slope = (dawson(x + step) - dawson(x - step)) / (2 * step)
    expect(slope).toBeWithin(1e-9, 1 - 2 * x * dawson(x))
    expect(dawson(-x)).toBeWithin(1e-15, -dawson(x))
  }
  // D(x) = 1/2x + 1/4x³ + 3/8x⁵ + …
  for (const x of [20, 100, 1000]) {
    expect(dawson(x) * 2 * x).toBeWithin(20 / x ** 6 + 1e-13, 1 + 1 / (2 * x * x) + 3 / (4 * x ** 4))
  }
})
