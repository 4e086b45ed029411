import type { Distribution } from '#shared/statistics/distribution.ts'
import type { ClimateChange, ClimateMovement } from './climate-movement.ts'

/** The changes in each state of the weather, in rows as trials use them. */
export interface Weather {
  /** A number of a state, as trials draw it. */
  readonly states: Distribution
  readonly outer: Float64Array
  readonly inner: Float64Array
  readonly outerLobes: Float64Array
  readonly innerLobes: Float64Array
  /** Radii of the circle of either plate. */
  readonly circles: Float64Array
  readonly balls: Float64Array
  /** Whether in any state a ring is out of round. */
  readonly hasLobes: boolean
}

export function weatherOf({ states }: ClimateMovement): Weather {
  const row = (name: keyof ClimateChange): Float64Array => Float64Array.from(states, (state) => state[name])
  const [outerLobes, innerLobes] = [row('outerOutOfRound'), row('innerOutOfRound')]
  return {
    states: { kind: 'discrete', values: Array.from(states.keys()) },
    outer: row('outerGrooveBottomRadius'),
    inner: row('innerGrooveBottomRadius'),
    outerLobes,
    innerLobes,
    circles: row('grooveCircleRadius'),
    balls: row('ballLotMean'),
    hasLobes: [...outerLobes, ...innerLobes].some((amplitude) => amplitude > 0),
  }
}

/** For each trial what its state has in a row. */
export function inStates(drawn: Float64Array, row: Float64Array, out: Float64Array): Float64Array {
  for (let trial = 0; trial < out.length; trial++) out[trial] = row[drawn[trial] ?? Number.NaN] ?? Number.NaN
  return out
}
