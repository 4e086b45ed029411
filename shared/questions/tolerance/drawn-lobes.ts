import type { PathBlock } from '#shared/geometry/balls-on-paths-in-blocks.ts'
import { CHUNK } from '#shared/statistics/monte-carlo.ts'
import { lobesOf, together } from './lobes.ts'
import type { Weather } from './weather.ts'

/** The lobes of either ring in a chunk of trials: those of the lathe and those of the weather as one. */
export interface ChunkLobes {
  readonly outer: PathBlock['lobes']
  /** The direction of the inner ring's lobes makes no difference: the rings are turned to where they leave least. */
  readonly inner: Float64Array
}

/** None as yet. */
export const roomForLobes = (): ChunkLobes => ({
  outer: { amplitude: new Float64Array(CHUNK), cosine: new Float64Array(CHUNK).fill(1), sine: new Float64Array(CHUNK) },
  inner: new Float64Array(CHUNK),
})

/** The lobes as drawn; zeros or undefined if none were drawn. */
export interface LobesDrawn {
  /** Amplitudes that the lathe left, of the outer rings and then of the inner ones, and where the outer ones point. */
  readonly cut: Float64Array
  readonly direction: Float64Array
  /** The state of the weather, and where the grain of either ring lies. */
  readonly state: Float64Array
  readonly grain: Float64Array | undefined
  readonly innerGrain: Float64Array | undefined
}

/** Without weather: one state that changes nothing. */
const NO_LOBES = new Float64Array(1)

/** Puts the lobes of a chunk of trials into its room. */
export function drawLobes(drawn: LobesDrawn, weather: Weather | undefined, { outer, inner }: ChunkLobes): void {
  const { cut, direction, state, grain, innerGrain } = drawn
  const { outerLobes, innerLobes } = weather ?? { outerLobes: NO_LOBES, innerLobes: NO_LOBES }
  for (let trial = 0; trial < CHUNK; trial++) {
    const turned = lobesOf(cut[trial] ?? Number.NaN, direction[trial] ?? Number.NaN)
    const place = state[trial] ?? Number.NaN
    const sum =
      grain === undefined
        ? turned
        : together(turned, lobesOf(outerLobes[place] ?? Number.NaN, grain[trial] ?? Number.NaN))
    outer.amplitude[trial] = sum.amplitude
    outer.cosine[trial] = sum.cosine
    outer.sine[trial] = sum.sine
    const innerCut = cut[CHUNK + trial] ?? Number.NaN
    inner[trial] =
      innerGrain === undefined
        ? innerCut
        : together(lobesOf(innerCut, 0), lobesOf(innerLobes[place] ?? Number.NaN, innerGrain[trial] ?? Number.NaN))
            .amplitude
  }
}
