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

test('a mean, and what its error is: s / √n', () => {
  const { coefficients, standardErrors, chiSquared, residualDeviation } = leastSquares(
    [[1], [1], [1], [1]],
    [1, 2, 4, 5],
  )
  expect(coefficients[0]).toBeWithin(1e-14, 3)
  expect(chiSquared).toBeWithin(1e-13, 10)
  expect(residualDeviation).toBeWithin(1e-14, Math.sqrt(10 / 3))
  expect(standardErrors[0]).toBeWithin(1e-14, Math.sqrt(10 / 3 / 4))
})

test('a line: the error of its slope is s / √Σ(x − x̄)², whichever way the columns point', () => {
  const [xs, ys] = [
    [0, 1, 2, 3, 4],
    [1, 3.2, 4.8, 7.1, 8.9],
  ]
  const { coefficients, standardErrors, residualDeviation } = leastSquares(
    xs.map((x) => [-1, x]),
    ys,
  )
  const slope = xs.reduce((sum, x, i) => sum + (x - 2) * ((ys[i] ?? 0) - 5), 0) / 10
  expect(coefficients[1]).toBeWithin(1e-13, slope)
  expect(coefficients[0]).toBeWithin(1e-13, -(5 - 2 * slope))
  expect(standardErrors[1]).toBeWithin(1e-13, residualDeviation / Math.sqrt(10))
  expect(standardErrors[0]).toBeWithin(1e-13, residualDeviation * Math.sqrt(1 / 5 + 4 / 10))
})

test('a column that depends on those before is named', () => {
  expect(() =>
    leastSquares(
      [
        [1, 2],
        [1, 2],
        [1, 2],
      ],
      [1, 2, 3],
    ),
  ).toThrow(/column 1/)
})
