import type { Distribution } from '#shared/statistics/distribution.ts'
import {
  aside,
  independent,
  type Model,
  SLICE,
  type Source,
  withoutReplacement,
} from '#shared/statistics/monte-carlo.ts'
import { NORMAL_ROOM, normalsIn } from '#shared/statistics/normal-kernel.ts'
import { type Arena, withArena } from '#shared/wasm/arena.ts'
import type { Check } from './checked.ts'
import { CONTRIBUTORS, type ContributorName } from './input.ts'
import { sliceOf } from './slice.ts'
import { COPIES } from './ways.ts'
import { waysOf } from './ways-of.ts'
import { type Weather, weatherOf } from './weather.ts'

/*
 * Trials of one bearing: ball gap (output 0) and radial internal clearance (output 1) of the same balls in the same grooves.
 *
 * The gap is the exact closure of the balls drawn, in the order drawn. The play goes by their mean, as the design's does, and
 * by the direction in which lobes leave least: twice the amplitude of either groove less than in the mean.
 */

/** Lobes take two kinds of random numbers, all other contributors one. The weather takes its own, after all of them. */
type DrawnName = Exclude<ContributorName, 'outOfRound'> | 'lobes' | 'direction' | 'state' | 'grain' | 'innerGrain'

/** Rows in the arena beside those of the balls: of all else that is drawn, of what comes of it, and of a slice's own. */
const OTHER_ROWS = 20

/** The model, and by which names its sources go, in their order. */
export interface TrialModel extends Model {
  readonly names: readonly DrawnName[]
}

/** The model of a bearing, good until `use` is done. */
export function withTrialModel<T>(check: Check, use: (model: TrialModel) => T): T {
  const { count } = check.bearing.settled.input.balls
  // Balls as drawn, balls that are alike, and all else.
  const doubles = (2 * count + OTHER_ROWS) * SLICE + NORMAL_ROOM.doubles
  return withArena(doubles, OTHER_ROWS + 2 + NORMAL_ROOM.arrays, (arena) => use(trialModel(check, arena)))
}

function trialModel(check: Check, arena: Arena): TrialModel {
  const { settled } = check.bearing
  const { count } = settled.input.balls
  const weather = check.climate && weatherOf(check.climate)
  const normals = normalsIn(arena)
  /** Normal numbers by the kernel; all others as ever. */
  const numbers: Independent = (distribution, rows = 1) =>
    distribution.kind === 'normal'
      ? { rows, draw: (random, out) => normals(distribution, random, out) }
      : independent(distribution, rows)
  const sources = sourcesOf(check, count, weather, numbers)
  const slice = sliceOf(arena, count, settled.ballDiameter)
  const room = {
    drawn: sources.map(({ source }) => arena.array(source.rows * SLICE)),
    results: [arena.array(SLICE), arena.array(SLICE)],
  }
  const evaluate = waysOf(check).evaluation(slice, weather)
  return {
    sources: sources.map(({ source }) => source),
    names: sources.map(({ name }) => name),
    outputs: 2,
    room,
    evaluate: (drawn, [gaps = slice.nothing, plays = slice.nothing]) => {
      evaluate((name) => drawn[sources.findIndex((each) => each.name === name)], gaps, plays)
    },
  }
}

interface NamedSource {
  readonly name: DrawnName
  readonly source: Source
}

/** Where lobes point: any direction alike. */
const TURNS: Distribution = { kind: 'uniform', mean: 0.5, halfWidth: 0.5 }

/** As many numbers of a distribution as there are rows, one where it does not say. */
type Independent = (distribution: Distribution, rows?: number) => Source

/** Balls are drawn as they are; all else as it differs. Always in the same order, which is part of the answer. */
function sourcesOf(
  check: Check,
  count: number,
  weather: Weather | undefined,
  numbers: Independent,
): readonly NamedSource[] {
  return [...contributorSources(check, count, numbers), ...(weather === undefined ? [] : weatherSources(weather))]
}

/** Drawn aside: a year that does nothing leaves every trial as it is without it. */
function weatherSources({ states, hasLobes }: Weather): readonly NamedSource[] {
  const grain: readonly NamedSource[] = [
    { name: 'grain', source: aside(independent(TURNS)) },
    { name: 'innerGrain', source: aside(independent(TURNS)) },
  ]
  return [{ name: 'state', source: aside(independent(states)) }, ...(hasLobes ? grain : [])]
}

function contributorSources(
  { bearing, differences }: Check,
  count: number,
  numbers: Independent,
): readonly NamedSource[] {
  return CONTRIBUTORS.flatMap((name): readonly NamedSource[] => {
    const distribution = differences.get(name)
    if (distribution === undefined) return []
    if (name === 'ballDiameter') {
      return [{ name, source: ballSource(distribution, bearing.settled.ballDiameter, count, numbers) }]
    }
    if (name !== 'outOfRound') return [{ name, source: numbers(distribution, COPIES[name]) }]
    return [
      { name: 'lobes', source: numbers(distribution, 2) },
      { name: 'direction', source: independent(TURNS) },
    ]
  })
}

function ballSource(difference: Distribution, ballDiameter: number, count: number, numbers: Independent): Source {
  if (difference.kind !== 'discrete') {
    return numbers({ ...difference, mean: difference.mean + ballDiameter }, count)
  }
  return withoutReplacement(
    difference.values.map((value) => value + ballDiameter),
    count,
  )
}
