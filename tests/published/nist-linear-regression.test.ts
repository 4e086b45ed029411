import { expect, test } from 'vitest'
import { leastSquares } from '#shared/statistics/least-squares.ts'

// NIST StRD, linear regression: certified values. Norris from memory, refitted; Pontius as carried in the tests of the
// GNU Scientific Library. Relative tolerance 1e-9, what doubles of this size can hold.

/** Norris, y then x. */
const NORRIS = [
  [0.1, 0.2],
  [338.8, 337.4],
  [118.1, 118.2],
  [888.0, 884.6],
  [9.2, 10.1],
  [228.1, 226.5],
  [668.5, 666.3],
  [998.5, 996.3],
  [449.1, 448.6],
  [778.9, 777.0],
  [559.2, 558.2],
  [0.3, 0.4],
  [0.1, 0.6],
  [778.1, 775.5],
  [668.8, 666.9],
  [339.3, 338.0],
  [448.9, 447.5],
  [10.8, 11.6],
  [557.7, 556.0],
  [228.3, 228.1],
  [998.0, 995.8],
  [888.8, 887.6],
  [119.6, 120.2],
  [0.3, 0.3],
  [0.6, 0.3],
  [557.6, 556.8],
  [339.3, 339.1],
  [888.0, 887.2],
  [998.5, 999.0],
  [778.9, 779.0],
  [10.2, 11.1],
  [117.6, 118.3],
  [228.9, 229.2],
  [668.4, 669.1],
  [449.2, 448.9],
  [0.2, 0.5],
]
const NORRIS_CERTIFIED = { b0: -0.262323073774029, b1: 1.00211681802045, residualDeviation: 0.884796396144373 }

const relative = (value: number | undefined, certified: number): void =>
  expect(value).toBeWithin(1e-9 * Math.abs(certified), certified)

test('NIST StRD Norris: slope, intercept and residual deviation', () => {
  const fitted = leastSquares(
    NORRIS.map(([, x = 0]) => [1, x]),
    NORRIS.map(([y = 0]) => y),
  )
  relative(fitted.coefficients[0], NORRIS_CERTIFIED.b0)
  relative(fitted.coefficients[1], NORRIS_CERTIFIED.b1)
  relative(fitted.residualDeviation, NORRIS_CERTIFIED.residualDeviation)
})

const PONTIUS_X = [
  150000, 300000, 450000, 600000, 750000, 900000, 1050000, 1200000, 1350000, 1500000, 1650000, 1800000, 1950000,
  2100000, 2250000, 2400000, 2550000, 2700000, 2850000, 3000000, 150000, 300000, 450000, 600000, 750000, 900000,
  1050000, 1200000, 1350000, 1500000, 1650000, 1800000, 1950000, 2100000, 2250000, 2400000, 2550000, 2700000, 2850000,
  3000000,
]
const PONTIUS_Y = [
  0.11019, 0.21956, 0.32949, 0.43899, 0.54803, 0.65694, 0.76562, 0.87487, 0.98292, 1.09146, 1.20001, 1.30822, 1.41599,
  1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844, 0.11052, 0.22018, 0.32939, 0.43886, 0.54798, 0.65739,
  0.76596, 0.87474, 0.983, 1.0915, 1.20004, 1.30818, 1.41613, 1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177,
  2.16829,
]
const PONTIUS_CERTIFIED = {
  coefficients: [0.000673565789473684, 7.32059160401003e-7, -3.16081871345029e-15],
  standardErrors: [0.000107938612033077, 1.57817399981659e-10, 4.86652849992036e-17],
  chiSquared: 1.55761768796992e-6,
}

test('NIST StRD Pontius: a parabola through loads from 150 000 to 3 000 000', () => {
  const fitted = leastSquares(
    PONTIUS_X.map((x) => [1, x, x * x]),
    PONTIUS_Y,
  )
  PONTIUS_CERTIFIED.coefficients.forEach((certified, index) => {
    relative(fitted.coefficients[index], certified)
  })
  PONTIUS_CERTIFIED.standardErrors.forEach((certified, index) => {
    relative(fitted.standardErrors[index], certified)
  })
  relative(fitted.chiSquared, PONTIUS_CERTIFIED.chiSquared)
})
