import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bracketedRoot, type ValueAndSlope } from '#shared/numbers/bracketed-root.ts'
import { between, magnitude } from '#tests/support/inputs.ts'

/** Counts how often it is asked. */
function counted(at: (x: number) => ValueAndSlope): { at: (x: number) => ValueAndSlope; times: () => number } {
  let asked = 0
  return {
    at: (x) => {
      asked++
      return at(x)
    },
    times: () => asked,
  }
}

test('the square root of 2, to the last digit but one, in fewer than a dozen questions', () => {
  const square = counted((x) => [x * x - 2, 2 * x])
  expect(bracketedRoot(square.at, 0, 2)).toBeWithin(Number.EPSILON, Math.SQRT2)
  expect(square.times()).toBeLessThan(12)
})

test('cube roots of any size are found to 4 units in the last place', () => {
  fc.assert(
    fc.property(magnitude(1e-6, 1e6), between(1, 1e6), between(1, 1e6), (root, under, over) => {
      const found = bracketedRoot((x) => [x ** 3 - root ** 3, 3 * x * x], root / under, root * over)
      expect(found).toBeWithin(4 * Number.EPSILON * root, root)
    }),
  )
})

test('a root at either end is that end', () => {
  const line = (x: number): ValueAndSlope => [x - 3, 1]
  expect(bracketedRoot(line, 3, 10)).toBe(3)
  expect(bracketedRoot(line, -10, 3)).toBe(3)
})

test('a root at 0 is found', () => {
  expect(bracketedRoot((x) => [Math.sinh(x), Math.cosh(x)], -1, 2)).toBeWithin(1e-15, 0)
})

test('never outside the bracket, whatever the slope says', () => {
  fc.assert(
    fc.property(between(0.1, 0.9), fc.constantFrom(0, -1, 1e-300, 1e300, Infinity, Number.NaN), (root, slope) => {
      const asked: number[] = []
      const found = bracketedRoot(
        (x) => {
          asked.push(x)
          return [x - root, slope]
        },
        0,
        1,
      )
      expect(Math.min(...asked)).toBeGreaterThanOrEqual(0)
      expect(Math.max(...asked)).toBeLessThanOrEqual(1)
      // a slope far too steep ends the search where it stands: it says that the root is there
      if (slope !== 1e300) expect(found).toBeWithin(1e-15, root)
    }),
  )
})

test('a step in place of a root is found by halving', () => {
  const step = counted((x) => [x < 0.3 ? -1 : 1, 0])
  expect(bracketedRoot(step.at, 0, 1)).toBeWithin(1e-15, 0.3)
  expect(step.times()).toBeLessThan(70)
})

test('Newton alone would run away: the arctangent far from its root', () => {
  expect(bracketedRoot((x) => [Math.atan(x - 1), 1 / (1 + (x - 1) ** 2)], -1e6, 1e9)).toBeWithin(1e-14, 1)
})

test('a root at an upright tangent', () => {
  const root = bracketedRoot((x) => [Math.cbrt(x - 2), 1 / (3 * Math.cbrt(x - 2) ** 2)], 0, 5)
  expect(root).toBeWithin(1e-15, 2)
})

test.each([
  ['both ends below', -3, -2],
  ['both ends above', 2, 3],
  ['the ends exchanged', 1, -1],
  ['not a number', Number.NaN, 1],
])('%s: refused', (_, low, high) => {
  expect(() => bracketedRoot((x) => [x, 1], low, high)).toThrow(RangeError)
})
