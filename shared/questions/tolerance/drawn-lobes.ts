import type { PathBlock } from '#shared/geometry/balls-on-paths-in-blocks.ts'
import { SLICE } from '#shared/statistics/monte-carlo.ts'
import { lobesOf, together } from './lobes.ts'
import type { Weather } from './weather.ts'

/** The lobes of either ring in a slice of trials: those of the lathe and those of the weather as one. */
export interface SliceLobes {
  readonly outer: PathBlock['lobes']
  /** Where those of the inner ring point makes no difference: the rings are turned to where they leave least. */
  readonly inner: Float64Array
}

/** None as yet. */
export const roomForLobes = (): SliceLobes => ({
  outer: { amplitude: new Float64Array(SLICE), cosine: new Float64Array(SLICE).fill(1), sine: new Float64Array(SLICE) },
  inner: new Float64Array(SLICE),
})

/** What was drawn of lobes; undefined what was not. */
export interface LobesDrawn {
  /** Amplitudes that the lathe left, of the outer rings and then of the inner ones, and where the outer ones point. */
  readonly cut: Float64Array | undefined
  readonly direction: Float64Array | undefined
  /** The state of the weather, and where the grain of either ring lies. */
  readonly state: Float64Array | undefined
  readonly grain: Float64Array | undefined
  readonly innerGrain: Float64Array | undefined
}

/** Puts the lobes of a slice of trials into its room. */
export function drawLobes(drawn: LobesDrawn, weather: Weather | undefined, { outer, inner }: SliceLobes): void {
  const { cut, direction, state, grain, innerGrain } = drawn
  for (let trial = 0; trial < SLICE; trial++) {
    const turned = lobesOf(cut?.[trial] ?? 0, direction?.[trial] ?? 0)
    const place = state?.[trial] ?? 0
    const sum =
      grain === undefined ? turned : together(turned, lobesOf(weather?.outerLobes[place] ?? 0, grain[trial] ?? 0))
    outer.amplitude[trial] = sum.amplitude
    outer.cosine[trial] = sum.cosine
    outer.sine[trial] = sum.sine
    const innerCut = cut?.[SLICE + trial] ?? 0
    inner[trial] =
      innerGrain === undefined
        ? innerCut
        : together(lobesOf(innerCut, 0), lobesOf(weather?.innerLobes[place] ?? 0, innerGrain[trial] ?? 0)).amplitude
  }
}
