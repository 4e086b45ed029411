import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { requireWithin } from '#shared/precondition.ts'

/** Air as a thermometer and a hygrometer show it. */
export interface Air {
  /** [degrees C] */
  readonly temperature: number
  /** [%] */
  readonly relativeHumidity: number
}

/** The temperatures of the table that the equation is held against: 30 to 160 degrees F, here [degrees C]. */
export const TEMPERATURES = { least: (30 - 32) / 1.8, most: (160 - 32) / 1.8 } as const

/** The nearest temperature that the equation holds for: colder and hotter than its table nothing is known [degrees C]. */
export const knownTemperature = (temperature: number): number =>
  Math.min(Math.max(temperature, TEMPERATURES.least), TEMPERATURES.most)

/** Coefficients of 1, T and T2, T in degrees F: Wood Handbook equation 4-5 (Simpson 1973). */
const W = [330, 0.452, 0.00415] as const
const K = [0.791, 0.000463, -0.000000844] as const
const K1 = [6.34, 0.000775, -0.0000935] as const
const K2 = [1.09, 0.0284, -0.0000904] as const

/**
 * Moisture content at which wood neither takes up nor gives off water, in air of that temperature and humidity:
 *
 *   M = 1800/W [ K h / (1 - K h) + (K1 K h + 2 K1 K2 K2 h2) / (1 + K1 K h + K1 K2 K2 h2) ]
 *
 * with h the humidity as a fraction and W, K, K1, K2 polynomials of the temperature (Wood Handbook, equation 4-5). It is
 * within 0.07 of Table 4-2 wherever that was looked at. Woods differ by a percent or so: one equation stands for all.
 *
 * @param air temperature within `TEMPERATURES`, humidity from 0 to 100
 * @returns moisture content, of the dry mass [%]
 * @throws RangeError outside those ranges
 */
export function equilibriumMoisture(air: Air): number {
  requireWithin('relativeHumidity', air.relativeHumidity, 0, 100)
  return moistureBy(air.temperature)(air.relativeHumidity / 100)
}

/**
 * The humidity at which wood comes to a moisture content: the way back of `equilibriumMoisture`.
 *
 * @param moisture from 0 up [%]
 * @returns relative humidity [%], or undefined where even saturated air gives less moisture
 * @throws RangeError for a temperature outside `TEMPERATURES`
 */
export function relativeHumidityFor(moisture: number, temperature: number): number | undefined {
  requireWithin('moisture', moisture, 0, Number.MAX_VALUE)
  const moistureAt = moistureBy(temperature)
  if (moisture > moistureAt(1)) return undefined
  return 100 * bracketedRoot((humidity) => moistureAt(humidity) - moisture, 0, 1)
}

/** Moisture content by the humidity as a fraction, at one temperature. */
function moistureBy(temperature: number): (h: number) => number {
  requireWithin('temperature', temperature, TEMPERATURES.least, TEMPERATURES.most)
  const fahrenheit = 1.8 * temperature + 32
  const at = ([constant, linear, square]: readonly [number, number, number]): number =>
    constant + fahrenheit * (linear + fahrenheit * square)
  const [w, k, k1, k2] = [at(W), at(K), at(K1), at(K2)]
  return (h) => {
    const a = k1 * k * h
    const b = k1 * k2 * k * k * h * h
    return (1800 / w) * ((k * h) / (1 - k * h) + (a + 2 * b) / (1 + a + b))
  }
}
