import type { PathBlock } from '#shared/geometry/balls-on-paths-in-blocks.ts'
import { CHUNK } from '#shared/statistics/monte-carlo.ts'
import { lobesOf, together } from './lobes.ts'
import type { Weather } from './weather.ts'

/** The lobes of a chunk of trials: those of the lathe and those of the weather as one. */
export interface ChunkLobes {
  readonly outer: PathBlock['lobes']
  /** Those of the inner ring added: the rings are turned to where they leave least, so all point one way. */
  readonly both: PathBlock['lobes']
}

/** None as yet. */
export function roomForLobes(): ChunkLobes {
  const outer = {
    amplitude: new Float64Array(CHUNK),
    cosine: new Float64Array(CHUNK).fill(1),
    sine: new Float64Array(CHUNK),
  }
  return { outer, both: { ...outer, amplitude: new Float64Array(CHUNK) } }
}

/** Without weather: one state that changes nothing. */
const NO_LOBES = new Float64Array(1)
const NOTHING = new Float64Array(2 * CHUNK)

/**
 * Puts the lobes of a chunk of trials into its room.
 *
 * @param row the amplitudes that the lathe left, of the outer rings and then of the inner ones, and where the outer ones point;
 *   where the grain of either ring lies
 * @param state of the weather, in each trial
 */
export function drawLobes(
  row: (name: 'lobes' | 'direction' | 'grain' | 'innerGrain') => Float64Array | undefined,
  state: Float64Array,
  weather: Weather | undefined,
  { outer, both }: ChunkLobes,
): void {
  const [cut, direction] = [row('lobes') ?? NOTHING, row('direction') ?? NOTHING]
  const [grain, innerGrain] = [row('grain'), row('innerGrain')]
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
    const inside =
      innerGrain === undefined
        ? Math.abs(innerCut)
        : together(lobesOf(innerCut, 0), lobesOf(innerLobes[place] ?? Number.NaN, innerGrain[trial] ?? Number.NaN))
            .amplitude
    both.amplitude[trial] = sum.amplitude < 0 ? sum.amplitude - inside : sum.amplitude + inside
  }
}
