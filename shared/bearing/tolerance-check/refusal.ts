import type { Bearing } from '#shared/bearing/bearing.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import { isPlain } from '#shared/geometry/groove.ts'
import { type Distribution, type Ends, endsOf } from '#shared/statistics/distribution.ts'
import { FARTHEST_DRAW } from '#shared/statistics/normal-cells.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { Differences } from './differences.ts'
import { CONTRIBUTORS, type ContributorName } from './input.ts'
import { type GroovedRing, innerOf, outerCentre, outerOf, sitsOnBottom } from './seats.ts'

/** Why there is nothing to say: facts only. Paths are those of the input. */
export type ToleranceRefusal =
  | { readonly code: 'limits-reversed'; readonly path: string; readonly min: Mm; readonly max: Mm }
  | {
      readonly code: 'contributor-too-wide'
      readonly path: string
      readonly name: ContributorName
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

/**
 * Contributors so wide that somewhere in their reach no bearing is left: balls that are none, grooves of no depth, balls that
 * do not fit side by side. Within, every trial has a gap.
 */
export function unfitContributors(bearing: Bearing, differences: Differences): readonly (Refusal | ToleranceRefusal)[] {
  const few = tooFewMeasured(bearing, differences.get('ballDiameter'))
  if (few.length > 0) return few
  const reaches = new Map<ContributorName, Ends>(
    CONTRIBUTORS.map((name) => {
      const distribution = differences.get(name)
      return [name, distribution === undefined ? NOTHING : endsOf(distribution, FARTHEST_DRAW)]
    }),
  )
  const blamed = new Map<ContributorName, Break['because']>()
  for (const { names, because } of breaks(bearing, (name) => reaches.get(name) ?? NOTHING)) {
    const name = widest(names, reaches)
    if (!blamed.has(name)) blamed.set(name, because)
  }
  return Array.from(blamed, ([name, because]) => ({
    code: 'contributor-too-wide',
    path: `/contributors/${name}`,
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

const widest = (names: readonly ContributorName[], reaches: ReadonlyMap<ContributorName, Ends>): ContributorName =>
  names.reduce((most, name) =>
    reachOf(reaches.get(name) ?? NOTHING) > reachOf(reaches.get(most) ?? NOTHING) ? name : most,
  )

interface Break {
  readonly names: readonly [ContributorName, ...ContributorName[]]
  readonly because: Extract<ToleranceRefusal, { code: 'contributor-too-wide' }>['because']
}

function breaks(bearing: Bearing, reach: (name: ContributorName) => Ends): readonly Break[] {
  const { ballDiameter, input } = bearing.settled
  const [each, lot, film, lobes] = [
    reach('ballDiameter'),
    reach('ballLotMean'),
    reach('finishFilm'),
    reach('outOfRound'),
  ]
  const smallest = ballDiameter + each.least + lot.least
  const largest = ballDiameter + each.most + lot.most
  const found: Break[] = []
  if (!(smallest > 0 && largest <= MOST_UNEVEN * smallest && smallest / 2 + film.least > 0)) {
    found.push({ names: ['ballDiameter', 'ballLotMean', 'finishFilm'], because: 'balls' })
  }
  const [outer, inner] = [outerOf(bearing), innerOf(bearing)]
  const [outerReach, innerReach] = [reach('outerGrooveBottomRadius'), reach('innerGrooveBottomRadius')]
  const seatRadius = largest / 2 + film.most
  if (!isGroove(outer, seatRadius, outerReach))
    found.push({ names: ['outerGrooveBottomRadius'], because: 'outer-groove' })
  const innerDepths = { least: -innerReach.most, most: -innerReach.least }
  if (!(isGroove(inner, seatRadius, innerDepths) && inner.bottomRadius + innerReach.least > 0)) {
    found.push({ names: ['innerGrooveBottomRadius'], because: 'inner-groove' })
  }
  const lobe = reachOf(lobes)
  if (!(lobe <= LARGEST_LOBE * bearing.pitchRadius)) found.push({ names: ['outOfRound'], because: 'lobes' })
  if (found.length > 0) return found
  const sine = largest / 2 / (outerCentre(outer, seatRadius, outerReach.least) - lobe)
  const round = sine > 0 && sine < 1 ? 2 * (input.balls.count - 1) * Math.asin(sine) : Number.NaN
  if (round < FARTHEST_ROUND) return []
  return [
    {
      names: ['ballDiameter', 'ballLotMean', 'outerGrooveBottomRadius', 'finishFilm', 'outOfRound'],
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
