// Wood Handbook Table 4-2: equilibrium moisture content [%] over temperature [degrees F] and relative humidity, 5 to 95 %
// in steps of 5. The last column is how many cells of a row were read; the others, from the damp end, are from memory.
// Tolerance: half the last printed digit, and the 0.02 that equation 4-5 strays from its own table.
import { describe, expect, test } from 'vitest'
import { equilibriumMoisture } from '#shared/wood/equilibrium-moisture.ts'

const TABLE: readonly (readonly [fahrenheit: number, emc: readonly number[], read: number])[] = [
  [30, [1.4, 2.6, 3.7, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.4, 13.5, 14.9, 16.5, 18.5, 21.0, 24.3], 18],
  [40, [1.4, 2.6, 3.7, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.3, 13.5, 14.9, 16.5, 18.5, 21.0, 24.3], 18],
  [50, [1.4, 2.6, 3.6, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.4, 14.8, 16.4, 18.4, 20.9, 24.3], 18],
  [60, [1.3, 2.5, 3.6, 4.6, 5.4, 6.2, 7.0, 7.8, 8.6, 9.4, 10.2, 11.1, 12.1, 13.3, 14.6, 16.2, 18.2, 20.7, 24.1], 18],
  [70, [1.3, 2.5, 3.5, 4.5, 5.4, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11.0, 12.0, 13.1, 14.4, 16.0, 17.9, 20.5, 23.9], 18],
  [80, [1.3, 2.4, 3.5, 4.4, 5.3, 6.1, 6.8, 7.6, 8.3, 9.1, 9.9, 10.8, 11.7, 12.9, 14.2, 15.7, 17.7, 20.2, 23.6], 18],
  [90, [1.2, 2.3, 3.4, 4.3, 5.1, 5.9, 6.7, 7.4, 8.1, 8.9, 9.7, 10.5, 11.5, 12.6, 13.9, 15.4, 17.3, 19.8, 23.3], 17],
  [100, [1.2, 2.3, 3.3, 4.2, 5.0, 5.8, 6.5, 7.2, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.6, 15.1, 17.0, 19.5, 22.9], 17],
  [110, [1.1, 2.2, 3.2, 4.0, 4.9, 5.6, 6.3, 7.0, 7.7, 8.4, 9.2, 10.0, 11.0, 12.0, 13.2, 14.7, 16.6, 19.1, 22.4], 16],
  [120, [1.1, 2.1, 3.0, 3.9, 4.7, 5.4, 6.1, 6.8, 7.5, 8.2, 8.9, 9.7, 10.6, 11.7, 12.9, 14.4, 16.2, 18.6, 22.0], 17],
  [130, [1.0, 2.0, 2.9, 3.7, 4.5, 5.2, 5.9, 6.6, 7.2, 7.9, 8.7, 9.4, 10.3, 11.3, 12.5, 14.0, 15.8, 18.2, 21.5], 17],
  [140, [0.9, 1.9, 2.8, 3.6, 4.3, 5.0, 5.7, 6.3, 7.0, 7.7, 8.4, 9.1, 10.0, 11.0, 12.1, 13.6, 15.3, 17.7, 21.0], 0],
  [150, [0.9, 1.8, 2.6, 3.4, 4.1, 4.8, 5.5, 6.1, 6.7, 7.4, 8.1, 8.8, 9.7, 10.6, 11.8, 13.1, 14.9, 17.2, 20.4], 0],
  [160, [0.8, 1.6, 2.4, 3.2, 3.9, 4.6, 5.2, 5.8, 6.4, 7.1, 7.8, 8.5, 9.3, 10.3, 11.4, 12.7, 14.4, 16.7, 19.9], 0],
]

describe.each(TABLE)('Table 4-2 at %s degrees F', (fahrenheit, emc, read) => {
  test.each(emc.map((moisture, i) => [5 * (i + 1), moisture, i < read] as const))(
    '%s %% of humidity: %s %% (read: %s)',
    (relativeHumidity, moisture) => {
      expect(equilibriumMoisture({ temperature: (fahrenheit - 32) / 1.8, relativeHumidity })).toBeWithin(0.07, moisture)
    },
  )
})

// Equation 4-5 with either set of coefficients. Degrees F: Simpson 1973 (FPL 190), as a public file quotes it; exact.
// Degrees C: from memory; within 0.06 of the table, and the two sets are fits of one another.
const FAHRENHEIT = {
  w: [330, 0.452, 0.00415],
  k: [0.791, 0.000463, -0.000000844],
  k1: [6.34, 0.000775, -0.0000935],
  k2: [1.09, 0.0284, -0.0000904],
} as const
const CELSIUS = {
  w: [349, 1.29, 0.0135],
  k: [0.805, 0.000736, -0.00000273],
  k1: [6.27, -0.00938, -0.000303],
  k2: [1.91, 0.0407, -0.000293],
} as const

function byEquation(set: typeof FAHRENHEIT | typeof CELSIUS, t: number, h: number): number {
  const at = ([a, b, c]: readonly [number, number, number]): number => a + b * t + c * t * t
  const [w, k, k1, k2] = [at(set.w), at(set.k), at(set.k1), at(set.k2)]
  const kh = k * h
  return (1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh))
}

test.each([30, 70, 100, 160])('equation 4-5 at %s degrees F', (fahrenheit) => {
  for (let relativeHumidity = 0; relativeHumidity <= 95; relativeHumidity += 5) {
    const expected = byEquation(FAHRENHEIT, fahrenheit, relativeHumidity / 100)
    expect(equilibriumMoisture({ temperature: (fahrenheit - 32) / 1.8, relativeHumidity })).toBeWithin(1e-9, expected)
  }
})

test.each([0, 10, 20, 30, 40, 50])('equation 4-5 in degrees C, at %s degrees', (temperature) => {
  for (let relativeHumidity = 0; relativeHumidity <= 95; relativeHumidity += 5) {
    const expected = byEquation(CELSIUS, temperature, relativeHumidity / 100)
    expect(equilibriumMoisture({ temperature, relativeHumidity })).toBeWithin(0.08, expected)
  }
})

// Wengert, as kiln drying has it: 30, 50, 65, 80 % of humidity give 6, 9, 12, 16 % of moisture. Half the last digit.
test.each([
  [30, 6],
  [50, 9],
  [65, 12],
  [80, 16],
])('rule of kiln drying: %s %% of humidity, %s %% of moisture', (relativeHumidity, moisture) => {
  expect(equilibriumMoisture({ temperature: 21, relativeHumidity })).toBeWithin(0.5, moisture)
})

// Worked examples of a calculator of the same table, stoves.bioenergylists.org/emccalc, 70 degrees F. Its humidity is rounded
// to 1 %; the tolerance is what that makes.
test.each([
  [25, 5.3, 0.35],
  [60, 11.1, 0.35],
  [84, 17.6, 0.35],
  [87, 19.0, 0.35],
  [97, 25.0, 0.7],
])('a calculator, 70 degrees F: humidity %s, moisture %s, within %s', (relativeHumidity, moisture, tolerance) => {
  expect(equilibriumMoisture({ temperature: 38 / 1.8, relativeHumidity })).toBeWithin(tolerance, moisture)
})
