import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { between, magnitude } from '#tests/support/inputs.ts'

/** Keeps what it is asked. */
function watched(at: (x: number) => number): { at: (x: number) => number; asked: number[] } {
  const asked: number[] = []
  return {
    at: (x) => {
      asked.push(x)
      return at(x)
    },
    asked,
  }
}

test('the square root of 2, to the last digit but one, in a dozen questions', () => {
  const square = watched((x) => x * x - 2)
  expect(bracketedRoot(square.at, 0, 2)).toBeWithin(Number.EPSILON, Math.SQRT2)
  expect(square.asked.length).toBeLessThanOrEqual(12)
})

test('cube roots of any size are found to 4 units in the last place, and never asked for outside the bracket', () => {
  fc.assert(
    fc.property(magnitude(1e-6, 1e6), between(1, 1e6), between(1, 1e6), (root, under, over) => {
      const cube = watched((x) => x ** 3 - root ** 3)
      expect(bracketedRoot(cube.at, root / under, root * over)).toBeWithin(4 * Number.EPSILON * root, root)
      expect(Math.min(...cube.asked)).toBeGreaterThanOrEqual(root / under)
      expect(Math.max(...cube.asked)).toBeLessThanOrEqual(root * over)
      // halving alone would take 52 and the places of the bracket
      expect(cube.asked.length).toBeLessThan(60)
    }),
  )
})

test('no nearer than asked for, in fewer questions', () => {
  fc.assert(
    fc.property(magnitude(1e-6, 1e6), magnitude(1e-12, 1e-2), (root, within) => {
      const [near, exact] = [watched((x) => x ** 3 - root ** 3), watched((x) => x ** 3 - root ** 3)]
      expect(bracketedRoot(near.at, 0, 3 * root, within)).toBeWithin(1.01 * within * root, root)
      bracketedRoot(exact.at, 0, 3 * root)
      expect(near.asked.length).toBeLessThanOrEqual(exact.asked.length)
    }),
  )
})

test('a root at either end is that end', () => {
  const line = (x: number): number => x - 3
  expect(bracketedRoot(line, 3, 10)).toBe(3)
  expect(bracketedRoot(line, -10, 3)).toBe(3)
})

test('a root at 0 is found', () => {
  expect(bracketedRoot(Math.sinh, -1, 2)).toBeWithin(1e-15, 0)
})

test('a step in place of a root is found by halving', () => {
  const step = watched((x) => (x < 0.3 ? -1 : 1))
  expect(bracketedRoot(step.at, 0, 1)).toBeWithin(1e-15, 0.3)
  expect(step.asked.length).toBeLessThan(70)
})

test('a function that is endless beyond some place', () => {
  const wall = watched((x) => (x > 0.7 ? Number.POSITIVE_INFINITY : x - 0.6))
  expect(bracketedRoot(wall.at, 0, 1)).toBeWithin(1e-15, 0.6)
  expect(bracketedRoot((x) => (x > 0.3 ? Number.POSITIVE_INFINITY : x - 0.6), 0, 1)).toBeWithin(1e-15, 0.3)
})

test('the arctangent far from its root, where a chord leads nowhere', () => {
  expect(bracketedRoot((x) => Math.atan(x - 1), -1e6, 1e9)).toBeWithin(1e-14, 1)
})

test('a root at an upright tangent', () => {
  expect(bracketedRoot((x) => Math.cbrt(x - 2), 0, 5)).toBeWithin(1e-15, 2)
})

test.each([
  ['both ends below', -3, -2],
  ['both ends above', 2, 3],
  ['the ends exchanged', 1, -1],
  ['not a number', Number.NaN, 1],
])('%s: refused', (_, low, high) => {
  expect(() => bracketedRoot((x) => x, low, high)).toThrow(RangeError)
})
