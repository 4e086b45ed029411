import { type PathRoom, roomForPaths } from '#shared/geometry/balls-on-paths-in-blocks.ts'
import { SLICE } from '#shared/statistics/monte-carlo.ts'
import { roomForLobes, type SliceLobes } from './drawn-lobes.ts'
import { inStates, type Weather } from './weather.ts'

/** A slice of trials, as it is worked on. */
export interface Slice {
  /** Balls that do not differ each on its own. */
  readonly alike: Float64Array
  /** Room for balls that share a difference. */
  readonly shifted: Float64Array
  readonly means: Float64Array
  readonly bottomRadii: Float64Array
  /** What the weather does to all balls alike, and to either ring. */
  readonly lot: Float64Array
  /** Of whatever does not differ: two of each trial, for grooves come in pairs. */
  readonly nothing: Float64Array
  readonly outer: Float64Array
  readonly inner: Float64Array
  /** Where balls stand in the outer ring and over the inner one, and what laying them on a path takes. */
  readonly centres: Float64Array
  readonly standOffs: Float64Array
  readonly paths: PathRoom
  readonly lobes: SliceLobes
}

export const sliceOf = (count: number, ballDiameter: number): Slice => ({
  alike: new Float64Array(count * SLICE).fill(ballDiameter),
  shifted: new Float64Array(count * SLICE),
  means: new Float64Array(SLICE),
  bottomRadii: new Float64Array(SLICE),
  lot: new Float64Array(SLICE),
  nothing: new Float64Array(2 * SLICE),
  outer: new Float64Array(SLICE),
  inner: new Float64Array(SLICE),
  centres: new Float64Array(count * SLICE),
  standOffs: new Float64Array(count * SLICE),
  paths: roomForPaths(SLICE),
  lobes: roomForLobes(),
})

/** What all balls of a ring have in common, of their lot and of the weather; undefined where they have nothing. */
export function lotOf(
  lot: Float64Array | undefined,
  state: Float64Array | undefined,
  weather: Weather | undefined,
  out: Float64Array,
): Float64Array | undefined {
  if (state === undefined || weather === undefined || weather.balls.every((change) => change === 0)) return lot
  inStates(state, weather.balls, out)
  if (lot === undefined) return out
  for (let trial = 0; trial < SLICE; trial++) out[trial] = (out[trial] ?? Number.NaN) + (lot[trial] ?? Number.NaN)
  return out
}

/** Each ball with what all of its ring have in common. */
export function shiftBalls(balls: Float64Array, lot: Float64Array, shifted: Float64Array): Float64Array {
  for (let from = 0; from < balls.length; from += SLICE) {
    for (let trial = 0; trial < SLICE; trial++)
      shifted[from + trial] = (balls[from + trial] ?? Number.NaN) + (lot[trial] ?? Number.NaN)
  }
  return shifted
}

export function meanDiameters(diameters: Float64Array, means: Float64Array): void {
  const share = SLICE / diameters.length
  for (let trial = 0; trial < SLICE; trial++) {
    let sum = 0
    for (let ball = trial; ball < diameters.length; ball += SLICE) sum += diameters[ball] ?? Number.NaN
    means[trial] = sum * share
  }
}
