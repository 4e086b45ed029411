import fc from 'fast-check'
import { expect, test } from 'vitest'
import { wholeParts } from '#shared/numbers/whole-parts.ts'

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0)

test.each([
  [[0.626, 0.187, 0.187], 100, [62, 19, 19]],
  [[0.334, 0.333, 0.333], 100, [34, 33, 33]],
  [[0.5, 0.5], 1, [1, 0]],
  [[1, 0, 0], 100, [100, 0, 0]],
  [[0.2, 0.3], 100, [20, 30]],
  [[], 100, []],
])('shares %j of %i are %j', (shares, whole, parts) => {
  expect(wholeParts(shares, whole)).toEqual(parts)
})

test('parts of a whole add to it, none is a step off its share, and none comes from nothing', () => {
  const weights = fc.array(fc.oneof(fc.constant(0), fc.double({ min: 0, max: 1, noNaN: true })), {
    minLength: 1,
    maxLength: 8,
  })
  fc.assert(
    fc.property(weights, fc.constantFrom(100, 1000), (given, whole) => {
      const all = sum(given)
      fc.pre(all > 1e-3)
      const shares = given.map((weight) => weight / all)
      const parts = wholeParts(shares, whole)
      expect(sum(parts)).toBe(whole)
      for (const [index, share] of shares.entries()) {
        expect(Math.abs((parts[index] ?? Number.NaN) - share * whole)).toBeLessThanOrEqual(1)
        if (share === 0) expect(parts[index]).toBe(0)
      }
    }),
  )
})

test.each([-0.1, Number.NaN, Infinity])('a share of %s is no share', (share) => {
  expect(() => wholeParts([0.5, share], 100)).toThrow(RangeError)
})
