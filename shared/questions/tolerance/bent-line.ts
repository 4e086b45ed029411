import { polynomialFit } from '#shared/statistics/polynomial-fit.ts'

/*
 * A figure that is nearly a straight line in what differs: exact = line + curve(line) + rest. The curve is fitted to some exact
 * trials; the rest has nothing to do with the line on the mean, and is small.
 */

export interface BentLine {
  /** The curve's value at a point of the line. Beyond all trials it continues straight. */
  readonly at: (line: number) => number
  /** Standard error of a share's end there: of the curve, of what it misses, and of a rest that is not the same all along. */
  readonly errorAt: (line: number) => number
  /** Standard error of the slope there. */
  readonly slopeErrorAt: (line: number) => number
  /** Difference of each trial from the curve. */
  readonly rest: Float64Array
  readonly restVariance: number
}

/** Bends enough for what is left of a sum at the ends of a contributor that has ends. */
const DEGREE = 5

/** So many standard deviations either way the trials are looked at by the group, to see what the curve misses. */
const LOOKED_AT = 2.5
const GROUPS = 20

/** @param standardDeviation of the line, above 0 */
export function bentLine(
  line: Float64Array,
  exact: Float64Array,
  { mean, standardDeviation }: { readonly mean: number; readonly standardDeviation: number },
): BentLine {
  const placeOf = (value: number): number => (value - mean) / standardDeviation
  const places = line.map(placeOf)
  const curve = polynomialFit(
    places,
    exact.map((value, trial) => value - (line[trial] ?? Number.NaN)),
    DEGREE,
  )
  const { residuals, residualVariance } = curve
  const misfit = misfitOf(places, residuals, residualVariance)
  const [least, most] = endsOf(places)
  const kept = (place: number): number => Math.min(most, Math.max(least, place))
  const [slopeBelow, slopeAbove] = [slopeOf(curve.at, least), slopeOf(curve.at, most)]
  return {
    at: (value) => {
      const place = placeOf(value)
      const beyond = place - kept(place)
      return value + curve.at(kept(place)) + beyond * (beyond < 0 ? slopeBelow : slopeAbove)
    },
    errorAt: (value) => {
      const place = placeOf(value)
      const [ofCurve, uneven] = [curve.errorAt(place), (residualVariance / standardDeviation) * place]
      return Math.sqrt(ofCurve * ofCurve + misfit + uneven * uneven)
    },
    slopeErrorAt: (value) => curve.slopeErrorAt(placeOf(value)) / standardDeviation,
    rest: residuals,
    restVariance: residualVariance,
  }
}

function endsOf(values: Float64Array): readonly [least: number, most: number] {
  return values.reduce<readonly [number, number]>(
    ([least, most], value) => [Math.min(least, value), Math.max(most, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  )
}

const STEP = 1e-4
const slopeOf = (at: (place: number) => number, place: number): number =>
  (at(place + STEP) - at(place - STEP)) / (2 * STEP)

/** Mean square of what the curve misses along the line, beyond what the rest's own scatter makes of it. */
function misfitOf(places: Float64Array, residuals: Float64Array, variance: number): number {
  const [sums, counts] = [new Float64Array(GROUPS), new Float64Array(GROUPS)]
  places.forEach((place, trial) => {
    const group = Math.floor(((place + LOOKED_AT) / (2 * LOOKED_AT)) * GROUPS)
    if (group < 0 || group >= GROUPS) return
    sums[group] = (sums[group] ?? Number.NaN) + (residuals[trial] ?? Number.NaN)
    counts[group] = (counts[group] ?? Number.NaN) + 1
  })
  const [square, looked] = sums.reduce<readonly [number, number]>(
    ([total, all], sum, group) => {
      const count = counts[group] ?? Number.NaN
      return count === 0 ? [total, all] : [total + (sum * sum) / count - variance, all + count]
    },
    [0, 0],
  )
  return looked > 0 ? Math.max(0, square / looked) : 0
}
