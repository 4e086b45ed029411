import type { Distribution } from '#shared/statistics/distribution.ts'
import {
  type Band,
  CHUNK,
  independent,
  joined,
  type Model,
  type Plan,
  planTrials,
  runBlocks,
  type Tally,
} from '#shared/statistics/monte-carlo.ts'

/** A model of one output, number by number: the slow and plain way to write one. */
export function plainModel(inputs: readonly Distribution[], output: (...numbers: number[]) => number): Model {
  return {
    sources: inputs.map((distribution) => independent(distribution)),
    outputs: 1,
    evaluate: (drawn, [result]) => {
      for (let trial = 0; trial < CHUNK; trial++) {
        result?.set([output(...drawn.map((row) => row[trial] ?? Number.NaN))], trial)
      }
    },
  }
}

const EVERYTHING = { min: Number.NEGATIVE_INFINITY, max: Number.POSITIVE_INFINITY }

/** All trials in one go. */
export function run(
  model: Model,
  trials: number,
  { seed = 1, bands = Array.from({ length: model.outputs }, (): Band => EVERYTHING) } = {},
): { readonly plan: Plan; readonly tally: Tally } {
  const plan = planTrials(model, { seed, trials, bands })
  return { plan, tally: joined(plan, [runBlocks(model, plan, 0, Number.POSITIVE_INFINITY)]) }
}
