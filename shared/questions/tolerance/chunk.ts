import { type PathRoom, roomForPaths } from '#shared/geometry/balls-on-paths-in-blocks.ts'
import { CHUNK } from '#shared/statistics/monte-carlo.ts'
import { type ChunkLobes, roomForLobes } from './drawn-lobes.ts'
import { inStates, type Weather } from './weather.ts'

/** A chunk of trials, as it is worked on. */
export interface Chunk {
  /** Balls that do not differ each on its own. */
  readonly alike: Float64Array
  /** Room for balls that share a difference. */
  readonly shifted: Float64Array
  readonly means: Float64Array
  readonly bottomRadii: Float64Array
  /** The change by the weather of all balls alike, and of either ring. */
  readonly lot: Float64Array
  /** Zeros, for contributors that do not differ: two for each trial, because grooves come in pairs. */
  readonly nothing: Float64Array
  readonly outer: Float64Array
  readonly inner: Float64Array
  /** Places of the balls in the outer ring and over the inner one, and scratch arrays for laying them on a path. */
  readonly centres: Float64Array
  readonly standOffs: Float64Array
  readonly paths: PathRoom
  readonly lobes: ChunkLobes
}

export const chunkOf = (count: number, ballDiameter: number): Chunk => ({
  alike: new Float64Array(count * CHUNK).fill(ballDiameter),
  shifted: new Float64Array(count * CHUNK),
  means: new Float64Array(CHUNK),
  bottomRadii: new Float64Array(CHUNK),
  lot: new Float64Array(CHUNK),
  nothing: new Float64Array(2 * CHUNK),
  outer: new Float64Array(CHUNK),
  inner: new Float64Array(CHUNK),
  centres: new Float64Array(count * CHUNK),
  standOffs: new Float64Array(count * CHUNK),
  paths: roomForPaths(CHUNK),
  lobes: roomForLobes(),
})

/** The change that all balls of a ring share, by their lot and by the weather; undefined if there is none. */
export function lotOf(
  lot: Float64Array | undefined,
  state: Float64Array | undefined,
  weather: Weather | undefined,
  out: Float64Array,
): Float64Array | undefined {
  if (state === undefined || weather === undefined || weather.balls.every((change) => change === 0)) return lot
  inStates(state, weather.balls, out)
  if (lot === undefined) return out
  for (let trial = 0; trial < CHUNK; trial++) out[trial] = (out[trial] ?? Number.NaN) + (lot[trial] ?? Number.NaN)
  return out
}

/** Each ball with what all of its ring have in common. */
export function shiftBalls(balls: Float64Array, lot: Float64Array, shifted: Float64Array): Float64Array {
  for (let from = 0; from < balls.length; from += CHUNK) {
    for (let trial = 0; trial < CHUNK; trial++)
      shifted[from + trial] = (balls[from + trial] ?? Number.NaN) + (lot[trial] ?? Number.NaN)
  }
  return shifted
}

export function meanDiameters(diameters: Float64Array, means: Float64Array): void {
  const share = CHUNK / diameters.length
  for (let trial = 0; trial < CHUNK; trial++) {
    let sum = 0
    for (let ball = trial; ball < diameters.length; ball += CHUNK) sum += diameters[ball] ?? Number.NaN
    means[trial] = sum * share
  }
}
