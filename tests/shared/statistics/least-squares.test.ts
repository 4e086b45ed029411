import { expect, test } from 'vitest'
import { leastSquares } from '#shared/statistics/least-squares.ts'

test('a line through two points is that line', () => {
  const { coefficients, residualDeviation } = leastSquares(
    [
      [1, 0],
      [1, 2],
    ],
    [1, 5],
  )
  expect(coefficients[0]).toBeWithin(1e-14, 1)
  expect(coefficients[1]).toBeWithin(1e-14, 2)
  expect(residualDeviation).toBe(0)
})

test('a weight of four counts as four rows', () => {
  const once = leastSquares([[1], [2], [4]], [1.1, 1.9, 4.2], [1, 4, 1])
  const repeated = leastSquares([[1], [2], [2], [2], [2], [4]], [1.1, 1.9, 1.9, 1.9, 1.9, 4.2])
  expect(once.coefficients[0]).toBeWithin(1e-14, repeated.coefficients[0] ?? Number.NaN)
})

test('too few rows, and columns that say the same, are refused', () => {
  expect(() => leastSquares([[1, 2]], [1])).toThrow(RangeError)
  expect(() => leastSquares([[0], [0]], [1, 2])).toThrow(RangeError)
})
