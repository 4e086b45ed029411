import { gapOnPath, type Lobes } from '#shared/geometry/balls-on-a-path.ts'
import { unequalBallGaps } from '#shared/geometry/unequal-balls-in-blocks.ts'
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

/** Lobes take two kinds of random numbers, all other contributors one. */
type DrawnName = Exclude<ContributorName, 'outOfRound'> | 'lobes' | 'direction'

/** A slice of trials, as it is worked on. */
interface Slice {
  /** Balls that do not differ each on its own. */
  readonly alike: Float64Array
  /** Room for balls that share a difference. */
  readonly shifted: Float64Array
  readonly means: Float64Array
  readonly bottomRadii: Float64Array
}

export function trialModel(check: Check): Model {
  const { count } = check.bearing.settled.input.balls
  const [outer, inner] = [outerOf(check.bearing), innerOf(check.bearing)]
  const sources = sourcesOf(check, count)
  const slice: Slice = {
    alike: new Float64Array(count * SLICE).fill(check.bearing.settled.ballDiameter),
    shifted: new Float64Array(count * SLICE),
    means: new Float64Array(SLICE),
    bottomRadii: new Float64Array(SLICE),
  }
  const onBottom = sitsOnBottom(outer, largestSeatRadius(check)) && !check.differences.has('outOfRound')
  const nothing = new Float64Array(SLICE)
  return {
    sources: sources.map(({ source }) => source),
    outputs: 2,
    evaluate: (drawn, [gaps = nothing, plays = nothing]) => {
      const row = (name: DrawnName): Float64Array | undefined => drawn[sources.findIndex((each) => each.name === name)]
      const balls = row('ballDiameter') ?? slice.alike
      const lot = row('ballLotMean')
      const diameters = lot === undefined ? balls : shiftBalls(balls, lot, slice.shifted)
      const film = row('finishFilm') ?? nothing
      const further = row('outerGrooveBottomRadius') ?? nothing
      const lobes = row('lobes')
      if (onBottom) {
        for (let trial = 0; trial < SLICE; trial++) {
          slice.bottomRadii[trial] = outer.bottomRadius + (further[trial] ?? 0) - (film[trial] ?? 0)
        }
        unequalBallGaps(
          { ballCount: count, rings: SLICE, bottomRadii: slice.bottomRadii, diameters },
          gaps,
          slice.means,
        )
      } else {
        gapsOnPaths(outer, { diameters, film, further, lobes, directions: row('direction') }, gaps)
        meanDiameters(diameters, slice.means)
      }
      playsOf(
        [outer, inner],
        { film, further, inward: row('innerGrooveBottomRadius') ?? nothing, lobes },
        slice.means,
        plays,
      )
    },
  }
}

interface NamedSource {
  readonly name: DrawnName
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

/** Each ball with what all of its ring have in common. */
function shiftBalls(balls: Float64Array, lot: Float64Array, shifted: Float64Array): Float64Array {
  for (let from = 0; from < balls.length; from += SLICE) {
    for (let trial = 0; trial < SLICE; trial++) shifted[from + trial] = (balls[from + trial] ?? 0) + (lot[trial] ?? 0)
  }
  return shifted
}

function meanDiameters(diameters: Float64Array, means: Float64Array): void {
  const share = SLICE / diameters.length
  for (let trial = 0; trial < SLICE; trial++) {
    let sum = 0
    for (let ball = trial; ball < diameters.length; ball += SLICE) sum += diameters[ball] ?? 0
    means[trial] = sum * share
  }
}

/** Directions that lobes are drawn in: finer than anything that depends on them. */
const DIRECTIONS = 1024
const COSINES = Float64Array.from({ length: DIRECTIONS }, (_, index) => Math.cos((2 * Math.PI * index) / DIRECTIONS))

interface OnPaths {
  readonly diameters: Float64Array
  readonly film: Float64Array
  readonly further: Float64Array
  readonly lobes: Float64Array | undefined
  readonly directions: Float64Array | undefined
}

/** Balls on the edges, some or all, and grooves out of round: one trial after the other. */
function gapsOnPaths(outer: GroovedRing, paths: OnPaths, gaps: Float64Array): void {
  const { diameters, film, further, lobes, directions } = paths
  const count = diameters.length / SLICE
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
  means: Float64Array,
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
