import { expect, test } from 'vitest'
import { summary } from '#shared/statistics/summary.ts'

// NIST StRD, univariate summary statistics: data and certified values as carried in the tests of the GNU Scientific
// Library (Mavro, Michelso, NumAcc1, NumAcc2), and as NIST describes them (NumAcc3, NumAcc4; from memory). The tolerance
// is half the last certified digit, or where a double of that size cannot hold that, what it can.

/** A value, then so many pairs of one below and one above. */
const around = (middle: number, off: number): readonly number[] => [
  middle,
  ...Array.from({ length: 1000 }, (_, index) => (index % 2 === 0 ? middle - off : middle + off)),
]

const MAVRO = [
  2.0018, 2.0017, 2.0018, 2.0019, 2.0018, 2.0017, 2.0015, 2.0014, 2.0015, 2.0015, 2.0017, 2.0018, 2.0018, 2.0019,
  2.0019, 2.0021, 2.002, 2.0016, 2.0014, 2.0013, 2.0013, 2.0015, 2.0015, 2.0016, 2.0015, 2.0014, 2.0013, 2.0014, 2.0015,
  2.0014, 2.0015, 2.0016, 2.0015, 2.0016, 2.0019, 2.002, 2.002, 2.0021, 2.0022, 2.0023, 2.0024, 2.0025, 2.0027, 2.0026,
  2.0026, 2.0026, 2.0027, 2.0026, 2.0025, 2.0024,
]

const MICHELSO = [
  299.85, 299.74, 299.9, 300.07, 299.93, 299.85, 299.95, 299.98, 299.98, 299.88, 300.0, 299.98, 299.93, 299.65, 299.76,
  299.81, 300.0, 300.0, 299.96, 299.96, 299.96, 299.94, 299.96, 299.94, 299.88, 299.8, 299.85, 299.88, 299.9, 299.84,
  299.83, 299.79, 299.81, 299.88, 299.88, 299.83, 299.8, 299.79, 299.76, 299.8, 299.88, 299.88, 299.88, 299.86, 299.72,
  299.72, 299.62, 299.86, 299.97, 299.95, 299.88, 299.91, 299.85, 299.87, 299.84, 299.84, 299.85, 299.84, 299.84,
  299.84, 299.89, 299.81, 299.81, 299.82, 299.8, 299.77, 299.76, 299.74, 299.75, 299.76, 299.91, 299.92, 299.89, 299.86,
  299.88, 299.72, 299.84, 299.85, 299.85, 299.78, 299.89, 299.84, 299.78, 299.81, 299.76, 299.81, 299.79, 299.81,
  299.82, 299.85, 299.87, 299.87, 299.81, 299.74, 299.81, 299.94, 299.95, 299.8, 299.81, 299.87,
]

const NIST = [
  { set: 'NumAcc1', values: [10_000_001, 10_000_003, 10_000_002], mean: 10_000_002, deviation: 1, tolerance: 0 },
  { set: 'NumAcc2', values: around(1.2, 0.1), mean: 1.2, deviation: 0.1, tolerance: 1e-15 },
  { set: 'NumAcc3', values: around(1_000_000.2, 0.1), mean: 1_000_000.2, deviation: 0.1, tolerance: 1e-10 },
  { set: 'NumAcc4', values: around(10_000_000.2, 0.1), mean: 10_000_000.2, deviation: 0.1, tolerance: 1e-9 },
  { set: 'Mavro', values: MAVRO, mean: 2.001856, deviation: 0.000429123454003053, tolerance: 1e-15 },
  { set: 'Michelso', values: MICHELSO, mean: 299.8524, deviation: 0.0790105478190518, tolerance: 1e-13 },
]

test.each(NIST)('NIST StRD $set: mean $mean, standard deviation $deviation', ({ values, ...certified }) => {
  const { mean, standardDeviation } = summary(values)
  expect(mean).toBeWithin(certified.tolerance, certified.mean)
  expect(standardDeviation).toBeWithin(certified.tolerance, certified.deviation)
})
