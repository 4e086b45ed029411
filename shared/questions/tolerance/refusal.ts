import type { Refusal } from '#shared/bearing/refusal.ts'
import type { Distribution, Ends } from '#shared/statistics/distribution.ts'
import { FARTHEST_DRAW } from '#shared/statistics/normal-cells.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { Break, WeatherReach } from './check-model.ts'
import type { Check } from './checked.ts'
import type { ClimateChange } from './climate-movement.ts'
import { type CauseName, CONTRIBUTORS, type ContributorName } from './input.ts'
import { modelOf } from './model-of.ts'
import { reachOf } from './reach.ts'
import { farthest } from './worst-ends.ts'

/** Why there is nothing to say: facts only. Paths are those of the input. */
export type ToleranceRefusal =
  | { readonly code: 'limits-reversed'; readonly path: string; readonly min: Mm; readonly max: Mm }
  | {
      readonly code: 'contributor-too-wide'
      readonly path: string
      readonly name: CauseName
      /** How far it may take something from the design, as drawn. */
      readonly reach: Mm
      readonly because: Break['because']
    }

const NOTHING: Ends = { least: 0, most: 0 }

/**
 * Contributors so wide that somewhere in their reach no bearing is left: balls that are none, grooves of no depth, balls that
 * do not fit side by side. Within, every trial has a gap.
 */
export function unfitContributors(check: Check): readonly (Refusal | ToleranceRefusal)[] {
  const { bearing, differences, climate } = check
  const few = tooFewMeasured(bearing, differences.get('ballDiameter'))
  if (few.length > 0) return few
  const reachOfOne = (name: ContributorName): Ends => farthest(check, name, FARTHEST_DRAW)
  const weather = weatherReach(climate?.ends ?? [])
  const reaches = new Map<CauseName, Ends>([
    ...CONTRIBUTORS.map((name) => [name, reachOfOne(name)] as const),
    ['climate', widestOf(Object.values(weather))],
  ])
  const blamed = new Map<CauseName, Break['because']>()
  for (const { names, because } of modelOf(check).breaks(reachOfOne, weather)) {
    const name = widest(names, reaches)
    if (!blamed.has(name)) blamed.set(name, because)
  }
  return Array.from(blamed, ([name, because]) => ({
    code: 'contributor-too-wide',
    path: name === 'climate' ? '/climate' : `/contributors/${name}`,
    name,
    reach: mm(reachOf(reaches.get(name) ?? NOTHING)),
    because,
  }))
}

function tooFewMeasured({ resolved }: Check['bearing'], balls: Distribution | undefined): readonly Refusal[] {
  const needed = resolved.input.balls.count
  if (balls?.kind !== 'discrete' || balls.values.length >= needed) return []
  return [
    {
      code: 'too-few-measured',
      path: '/contributors/ballDiameter/diameters',
      given: balls.values.length,
      needed,
    },
  ]
}

const widestOf = (reaches: readonly Ends[]): Ends =>
  reaches.reduce((most, reach) => (reachOf(reach) > reachOf(most) ? reach : most), NOTHING)

function weatherReach(ends: readonly ClimateChange[]): WeatherReach {
  const of = (name: keyof ClimateChange): Ends => {
    const values = ends.map((change) => change[name])
    return { least: Math.min(0, ...values), most: Math.max(0, ...values) }
  }
  return {
    outerGrooveBottomRadius: of('outerGrooveBottomRadius'),
    innerGrooveBottomRadius: of('innerGrooveBottomRadius'),
    outerOutOfRound: of('outerOutOfRound'),
    innerOutOfRound: of('innerOutOfRound'),
    grooveCircleRadius: of('grooveCircleRadius'),
    ballLotMean: of('ballLotMean'),
  }
}

const widest = (names: readonly [CauseName, ...CauseName[]], reaches: ReadonlyMap<CauseName, Ends>): CauseName =>
  names.reduce((most, name) =>
    reachOf(reaches.get(name) ?? NOTHING) > reachOf(reaches.get(most) ?? NOTHING) ? name : most,
  )
