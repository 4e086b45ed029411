import { gapOnPath, type Lobes } from '#shared/geometry/balls-on-a-path.ts'
import { type BlockRoom, blockRoom, unequalBallGaps } from '#shared/geometry/unequal-balls-in-blocks.ts'
import { type Distribution, endsOf } from '#shared/statistics/distribution.ts'
import { independent, type Model, SLICE, type Source, withoutReplacement } from '#shared/statistics/monte-carlo.ts'
import { FARTHEST_DRAW } from '#shared/statistics/normal-cells.ts'
import type { Check } from './check.ts'
import { CONTRIBUTORS, type ContributorName } from './input.ts'
import { type GroovedRing, innerCentre, innerOf, outerCentre, outerOf, sitsOnBottom } from './seats.ts'

/*
 * Trials of one bearing: ball gap (output 0) and radial internal clearance (output 1) of the same balls in the same grooves.
 *
 * The gap is the exact closure of the balls drawn, in the order drawn. The play goes by their mean, as the design's does, and
 * by the direction in which lobes leave least: twice the amplitude of either groove less than in the mean.
 */

/** Names of random numbers: those of the contributors, and the direction of the lobes. */
type Drawn = Exclude<ContributorName, 'ballDiameter' | 'outOfRound'>

/** A slice of trials, as it is worked on. */
interface Slice {
  readonly balls: Float64Array
  readonly diameters: Float64Array
  readonly means: Float64Array
  readonly bottomRadii: Float64Array
  readonly room: BlockRoom
}

export function trialModel(check: Check): Model {
  const { count } = check.bearing.settled.input.balls
  const [outer, inner] = [outerOf(check.bearing), innerOf(check.bearing)]
  const sources = sourcesOf(check, count)
  const slice: Slice = {
    balls: new Float64Array(count * SLICE).fill(check.bearing.settled.ballDiameter),
    diameters: new Float64Array(count * SLICE),
    means: new Float64Array(SLICE),
    bottomRadii: new Float64Array(SLICE),
    room: blockRoom(SLICE),
  }
  const onBottom = sitsOnBottom(outer, largestSeatRadius(check)) && !check.differences.has('outOfRound')
  const nothing = new Float64Array(SLICE)
  return {
    sources: sources.map(({ source }) => source),
    outputs: 2,
    evaluate: (drawn, [gaps = nothing, plays = nothing]) => {
      const row = (name: Drawn | 'lobes' | 'direction'): Float64Array | undefined =>
        drawn[sources.findIndex((each) => each.name === name)]
      const balls = drawn[sources.findIndex(({ name }) => name === 'ballDiameter')] ?? slice.balls
      addUpBalls(balls, row('ballLotMean') ?? nothing, count, slice)
      const film = row('finishFilm') ?? nothing
      const further = row('outerGrooveBottomRadius') ?? nothing
      const lobes = row('lobes')
      if (onBottom) {
        for (let trial = 0; trial < SLICE; trial++) {
          slice.bottomRadii[trial] = outer.bottomRadius + (further[trial] ?? 0) - (film[trial] ?? 0)
        }
        unequalBallGaps({ ballCount: count, rings: SLICE, ...slice }, slice.room, gaps)
      } else {
        gapsOnPaths(outer, { count, film, further, lobes, directions: row('direction') }, slice, gaps)
      }
      playsOf([outer, inner], { film, further, inward: row('innerGrooveBottomRadius') ?? nothing, lobes }, slice, plays)
    },
  }
}

interface NamedSource {
  readonly name: ContributorName | 'lobes' | 'direction'
  readonly source: Source
}

/** Balls are drawn as they are; all else as it differs. Always in the same order, which is part of the answer. */
function sourcesOf({ bearing, differences }: Check, count: number): readonly NamedSource[] {
  return CONTRIBUTORS.flatMap((name): readonly NamedSource[] => {
    const distribution = differences.get(name)
    if (distribution === undefined) return []
    if (name === 'ballDiameter') {
      return [{ name, source: ballSource(distribution, bearing.settled.ballDiameter, count) }]
    }
    if (name !== 'outOfRound') return [{ name, source: independent(distribution) }]
    const turns: Distribution = { kind: 'uniform', mean: 0.5, halfWidth: 0.5 }
    return [
      { name: 'lobes', source: independent(distribution, 2) },
      { name: 'direction', source: independent(turns) },
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

function largestSeatRadius({ bearing, differences }: Check): number {
  const most = (name: ContributorName): number => {
    const distribution = differences.get(name)
    return distribution === undefined ? 0 : endsOf(distribution, FARTHEST_DRAW).most
  }
  return (bearing.settled.ballDiameter + most('ballDiameter') + most('ballLotMean')) / 2 + most('finishFilm')
}

/** Each ball with what all have in common, and the mean over the ring. */
function addUpBalls(balls: Float64Array, lot: Float64Array, count: number, { diameters, means }: Slice): void {
  means.fill(0)
  for (let ball = 0; ball < count; ball++) {
    const from = ball * SLICE
    for (let trial = 0; trial < SLICE; trial++) {
      const diameter = (balls[from + trial] ?? 0) + (lot[trial] ?? 0)
      diameters[from + trial] = diameter
      means[trial] = (means[trial] ?? 0) + diameter
    }
  }
  for (let trial = 0; trial < SLICE; trial++) means[trial] = (means[trial] ?? 0) / count
}

/** Directions that lobes are drawn in: finer than anything that depends on them. */
const DIRECTIONS = 1024
const COSINES = Float64Array.from({ length: DIRECTIONS }, (_, index) => Math.cos((2 * Math.PI * index) / DIRECTIONS))

interface OnPaths {
  readonly count: number
  readonly film: Float64Array
  readonly further: Float64Array
  readonly lobes: Float64Array | undefined
  readonly directions: Float64Array | undefined
}

/** Balls on the edges, some or all, and grooves out of round: one trial after the other. */
function gapsOnPaths(outer: GroovedRing, paths: OnPaths, { diameters }: Slice, gaps: Float64Array): void {
  const { count, film, further, lobes, directions } = paths
  for (let trial = 0; trial < SLICE; trial++) {
    const [coat, deeper] = [film[trial] ?? 0, further[trial] ?? 0]
    const radius = (ball: number): number => (diameters[ball * SLICE + trial] ?? 0) / 2
    const centre = (ball: number): number => outerCentre(outer, radius(ball) + coat, deeper)
    gaps[trial] = gapOnPath(count, centre, radius, lobesOf(lobes?.[trial] ?? 0, directions?.[trial] ?? 0))
  }
}

function lobesOf(amplitude: number, turn: number): Lobes {
  const place = Math.floor(turn * DIRECTIONS)
  return {
    amplitude,
    cosine: COSINES[place] ?? 1,
    // The sine is the cosine a quarter turn before.
    sine: COSINES[(place + (3 * DIRECTIONS) / 4) % DIRECTIONS] ?? 0,
  }
}

interface ForPlay {
  readonly film: Float64Array
  readonly further: Float64Array
  readonly inward: Float64Array
  /** Of the outer ring, then of the inner ring. */
  readonly lobes: Float64Array | undefined
}

function playsOf(
  [outer, inner]: readonly [GroovedRing, GroovedRing],
  { film, further, inward, lobes }: ForPlay,
  { means }: Slice,
  plays: Float64Array,
): void {
  for (let trial = 0; trial < SLICE; trial++) {
    const seatRadius = (means[trial] ?? 0) / 2 + (film[trial] ?? 0)
    const apart =
      outerCentre(outer, seatRadius, further[trial] ?? 0) - innerCentre(inner, seatRadius, inward[trial] ?? 0)
    const lobe = Math.abs(lobes?.[trial] ?? 0) + Math.abs(lobes?.[SLICE + trial] ?? 0)
    plays[trial] = 2 * (apart - lobe)
  }
}
