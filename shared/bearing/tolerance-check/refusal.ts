import type { Bearing } from '#shared/bearing/bearing.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import type { ClimateChange, ClimateMovement } from '#shared/bearing/seasonal-fit/climate-movement.ts'
import { isPlain } from '#shared/geometry/groove.ts'
import { type Distribution, type Ends, endsOf } from '#shared/statistics/distribution.ts'
import { FARTHEST_DRAW } from '#shared/statistics/normal-cells.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { Differences } from './differences.ts'
import { type CauseName, CONTRIBUTORS, type ContributorName } from './input.ts'
import { type GroovedRing, innerOf, outerCentre, outerOf, sitsOnBottom } from './seats.ts'

/** Why there is nothing to say: facts only. Paths are those of the input. */
export type ToleranceRefusal =
  | { readonly code: 'limits-reversed'; readonly path: string; readonly min: Mm; readonly max: Mm }
  | {
      readonly code: 'contributor-too-wide'
      readonly path: string
      readonly name: CauseName
      /** How far it may take something from the design, as drawn. */
      readonly reach: Mm
      readonly because: 'balls' | 'outer-groove' | 'inner-groove' | 'closes' | 'lobes'
    }

/** Neighbours alone touch where no ball is below 2/3 of another: `unequal-balls.ts`. */
const MOST_UNEVEN = 1.5

/** A row of balls may reach round 5/4 times at most: `unequal-balls-in-blocks.ts`. */
const FARTHEST_ROUND = (5 / 4) * 2 * Math.PI

/** A groove is hardly a circle with lobes of this share of its radius. */
const LARGEST_LOBE = 0.05

const NOTHING: Ends = { least: 0, most: 0 }

/** A bearing, and all that may make it differ. */
interface Causes {
  readonly bearing: Bearing
  readonly differences: Differences
  readonly climate?: ClimateMovement
}

/**
 * Contributors so wide that somewhere in their reach no bearing is left: balls that are none, grooves of no depth, balls that
 * do not fit side by side. Within, every trial has a gap.
 */
export function unfitContributors({ bearing, differences, climate }: Causes): readonly (Refusal | ToleranceRefusal)[] {
  const few = tooFewMeasured(bearing, differences.get('ballDiameter'))
  if (few.length > 0) return few
  const reachOfOne = (name: ContributorName): Ends => {
    const distribution = differences.get(name)
    return distribution === undefined ? NOTHING : endsOf(distribution, FARTHEST_DRAW)
  }
  const weather = weatherReach(climate?.ends ?? [])
  const reaches = new Map<CauseName, Ends>([
    ...CONTRIBUTORS.map((name) => [name, reachOfOne(name)] as const),
    ['climate', widestOf(Object.values(weather))],
  ])
  const blamed = new Map<CauseName, Break['because']>()
  for (const { names, because } of breaks(bearing, reachOfOne, weather)) {
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

function tooFewMeasured({ settled }: Bearing, balls: Distribution | undefined): readonly Refusal[] {
  const needed = settled.input.balls.count
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

const reachOf = ({ least, most }: Ends): number => Math.max(Math.abs(least), Math.abs(most))

const widestOf = (reaches: readonly Ends[]): Ends =>
  reaches.reduce((most, reach) => (reachOf(reach) > reachOf(most) ? reach : most), NOTHING)

/** How far the weather takes each thing that it moves, the day of making among its states. */
type WeatherReach = Readonly<Record<Exclude<keyof ClimateChange, 'moistureContent'>, Ends>>

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
    ballLotMean: of('ballLotMean'),
  }
}

const widest = (names: readonly [CauseName, ...CauseName[]], reaches: ReadonlyMap<CauseName, Ends>): CauseName =>
  names.reduce((most, name) =>
    reachOf(reaches.get(name) ?? NOTHING) > reachOf(reaches.get(most) ?? NOTHING) ? name : most,
  )

interface Break {
  readonly names: readonly [CauseName, ...CauseName[]]
  readonly because: Extract<ToleranceRefusal, { code: 'contributor-too-wide' }>['because']
}

function breaks(bearing: Bearing, reach: (name: ContributorName) => Ends, weather: WeatherReach): readonly Break[] {
  const { ballDiameter, input } = bearing.settled
  const [each, lot, film, lobes] = [
    reach('ballDiameter'),
    reach('ballLotMean'),
    reach('finishFilm'),
    reach('outOfRound'),
  ]
  const smallest = ballDiameter + each.least + lot.least + weather.ballLotMean.least
  const largest = ballDiameter + each.most + lot.most + weather.ballLotMean.most
  const found: Break[] = []
  if (!(smallest > 0 && largest <= MOST_UNEVEN * smallest && smallest / 2 + film.least > 0)) {
    found.push({ names: ['ballDiameter', 'ballLotMean', 'finishFilm', 'climate'], because: 'balls' })
  }
  const [outer, inner] = [outerOf(bearing), innerOf(bearing)]
  const [outerReach, innerReach] = [reach('outerGrooveBottomRadius'), reach('innerGrooveBottomRadius')]
  const seatRadius = largest / 2 + film.most
  if (!isGroove(outer, seatRadius, outerReach))
    found.push({ names: ['outerGrooveBottomRadius'], because: 'outer-groove' })
  const innerDepths = { least: -innerReach.most, most: -innerReach.least }
  const innermost = inner.bottomRadius + innerReach.least + weather.innerGrooveBottomRadius.least
  if (!(isGroove(inner, seatRadius, innerDepths) && innermost > 0)) {
    found.push({ names: ['innerGrooveBottomRadius', 'climate'], because: 'inner-groove' })
  }
  const lobe = reachOf(lobes) + Math.max(weather.outerOutOfRound.most, weather.innerOutOfRound.most)
  if (!(lobe <= LARGEST_LOBE * bearing.pitchRadius)) {
    found.push({ names: ['outOfRound', 'climate'], because: 'lobes' })
  }
  if (found.length > 0) return found
  const tightest = outerCentre(outer, seatRadius, outerReach.least) + weather.outerGrooveBottomRadius.least - lobe
  const sine = largest / 2 / tightest
  const round = sine > 0 && sine < 1 ? 2 * (input.balls.count - 1) * Math.asin(sine) : Number.NaN
  if (round < FARTHEST_ROUND) return []
  return [
    {
      names: ['ballDiameter', 'ballLotMean', 'outerGrooveBottomRadius', 'finishFilm', 'outOfRound', 'climate'],
      because: 'closes',
    },
  ]
}

/** Whether a groove, where it is one and no plain track, keeps some depth, and where balls ride on its edges, is no more than a half circle. */
function isGroove(ring: GroovedRing, seatRadius: number, { least, most }: Ends): boolean {
  const { grooveDepth, grooveRadius } = ring
  if (isPlain({ depth: mm(grooveDepth), radius: mm(grooveRadius) })) return true
  return grooveDepth + least > 0 && (sitsOnBottom(ring, seatRadius) || grooveDepth + most <= grooveRadius)
}
