import { itemAt } from '#shared/numbers/item-at.ts'
import type { Distribution } from '#shared/statistics/distribution.ts'
import { aside, independent, type Model, type Source, withoutReplacement } from '#shared/statistics/monte-carlo.ts'
import { COPIES } from './check-model.ts'
import type { Check } from './checked.ts'
import { chunkOf } from './chunk.ts'
import { CONTRIBUTORS, type ContributorName } from './input.ts'
import { modelOf } from './model-of.ts'
import { type Weather, weatherOf } from './weather.ts'

/*
 * Trials of one bearing: ball gap (output 0) and radial internal clearance (output 1) of the same balls in the same grooves.
 *
 * The gap is the exact closure of the balls drawn, in the order drawn. The play goes by their mean, as the design's does, and
 * by the direction in which lobes leave least: twice the amplitude of either groove less than in the mean.
 */

/** Lobes take two kinds of random numbers, all other contributors one. The weather takes its own, after all of them. */
type DrawnName = Exclude<ContributorName, 'outOfRound'> | 'lobes' | 'direction' | 'state' | 'grain' | 'innerGrain'

/** The model, and by which names its sources go, in their order. */
export interface TrialModel extends Model {
  readonly names: readonly DrawnName[]
}

/** The model of a bearing: its arrays are used again from chunk to chunk. */
export function trialModel(check: Check): TrialModel {
  const { resolved } = check.bearing
  const { count } = resolved.input.balls
  const weather = check.climate && weatherOf(check.climate)
  const sources = sourcesOf(check, count, weather)
  const chunk = chunkOf(count, resolved.ballDiameter)
  const evaluate = modelOf(check).evaluation(chunk, weather)
  return {
    sources: sources.map(({ source }) => source),
    names: sources.map(({ name }) => name),
    outputs: 2,
    evaluate: (drawn, results) => {
      evaluate((name) => drawn[sources.findIndex((each) => each.name === name)], itemAt(results, 0), itemAt(results, 1))
    },
  }
}

interface NamedSource {
  readonly name: DrawnName
  readonly source: Source
}

/** Directions of lobes: uniformly distributed. */
const TURNS: Distribution = { kind: 'uniform', mean: 0.5, halfWidth: 0.5 }

/** Balls are drawn as they are; all else as it differs. Always in the same order, which is part of the answer. */
function sourcesOf(check: Check, count: number, weather: Weather | undefined): readonly NamedSource[] {
  return [...contributorSources(check, count), ...(weather === undefined ? [] : weatherSources(weather))]
}

/** Drawn aside: a year that does nothing leaves every trial as it is without it. */
function weatherSources({ states, hasLobes }: Weather): readonly NamedSource[] {
  const grain: readonly NamedSource[] = [
    { name: 'grain', source: aside(independent(TURNS)) },
    { name: 'innerGrain', source: aside(independent(TURNS)) },
  ]
  return [{ name: 'state', source: aside(independent(states)) }, ...(hasLobes ? grain : [])]
}

function contributorSources({ bearing, differences }: Check, count: number): readonly NamedSource[] {
  return CONTRIBUTORS.flatMap((name): readonly NamedSource[] => {
    const distribution = differences.get(name)
    if (distribution === undefined) return []
    if (name === 'ballDiameter') {
      return [{ name, source: ballSource(distribution, bearing.resolved.ballDiameter, count) }]
    }
    if (name !== 'outOfRound') return [{ name, source: independent(distribution, COPIES[name]) }]
    return [
      { name: 'lobes', source: independent(distribution, 2) },
      { name: 'direction', source: independent(TURNS) },
    ]
  })
}

function ballSource(difference: Distribution, ballDiameter: number, count: number): Source {
  if (difference.kind !== 'discrete') {
    return independent({ ...difference, mean: difference.mean + ballDiameter }, count)
  }
  return withoutReplacement(
    difference.values.map((value) => value + ballDiameter),
    count,
  )
}
