import { gapsOnPaths, type PathRoom, roomForPaths } from '#shared/geometry/balls-on-paths-in-blocks.ts'
import { unequalBallGaps } from '#shared/geometry/unequal-balls-in-blocks.ts'
import { type Distribution, endsOf } from '#shared/statistics/distribution.ts'
import {
  aside,
  independent,
  type Model,
  SLICE,
  type Source,
  withoutReplacement,
} from '#shared/statistics/monte-carlo.ts'
import { FARTHEST_DRAW } from '#shared/statistics/normal-cells.ts'
import { NORMAL_ROOM, normalsIn } from '#shared/statistics/normal-kernel.ts'
import { type Arena, withArena } from '#shared/wasm/arena.ts'
import type { Check } from './check.ts'
import { drawLobes, roomForLobes, type SliceLobes } from './drawn-lobes.ts'
import { CONTRIBUTORS, type ContributorName } from './input.ts'
import { type GroovedRing, innerCentre, innerOf, outerCentre, outerOf, sitsOnBottom } from './seats.ts'
import { inStates, type Weather, weatherOf } from './weather.ts'

/*
 * Trials of one bearing: ball gap (output 0) and radial internal clearance (output 1) of the same balls in the same grooves.
 *
 * The gap is the exact closure of the balls drawn, in the order drawn. The play goes by their mean, as the design's does, and
 * by the direction in which lobes leave least: twice the amplitude of either groove less than in the mean.
 */

/** Lobes take two kinds of random numbers, all other contributors one. The weather takes its own, after all of them. */
type DrawnName = Exclude<ContributorName, 'outOfRound'> | 'lobes' | 'direction' | 'state' | 'grain' | 'innerGrain'

/** A slice of trials, as it is worked on. */
interface Slice {
  /** Balls that do not differ each on its own. */
  readonly alike: Float64Array
  /** Room for balls that share a difference. */
  readonly shifted: Float64Array
  readonly means: Float64Array
  readonly bottomRadii: Float64Array
  /** What the weather does to all balls alike, and to either ring. */
  readonly lot: Float64Array
  /** Of whatever does not differ. */
  readonly nothing: Float64Array
  readonly outer: Float64Array
  readonly inner: Float64Array
  /** Where balls stand that do not lie on the bottom of a round groove, and what laying them takes. */
  readonly centres: Float64Array
  readonly paths: PathRoom
  readonly lobes: SliceLobes
}

const sliceOf = (arena: Arena, count: number, ballDiameter: number): Slice => ({
  alike: arena.array(count * SLICE).fill(ballDiameter),
  shifted: new Float64Array(count * SLICE),
  means: arena.array(SLICE),
  bottomRadii: arena.array(SLICE),
  lot: arena.array(SLICE),
  nothing: arena.array(SLICE),
  outer: new Float64Array(SLICE),
  inner: new Float64Array(SLICE),
  centres: new Float64Array(count * SLICE),
  paths: roomForPaths(SLICE),
  lobes: roomForLobes(),
})

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
  const [outer, inner] = [outerOf(check.bearing), innerOf(check.bearing)]
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
  const closeBlock = unequalBallGaps(arena)
  const isRound = !check.differences.has('outOfRound') && weather?.hasLobes !== true
  const onBottom = sitsOnBottom(outer, largestSeatRadius(check)) && isRound
  const { nothing } = slice
  return {
    sources: sources.map(({ source }) => source),
    names: sources.map(({ name }) => name),
    outputs: 2,
    room,
    evaluate: (drawn, [gaps = nothing, plays = nothing]) => {
      const row = (name: DrawnName): Float64Array | undefined => drawn[sources.findIndex((each) => each.name === name)]
      const state = row('state')
      const balls = row('ballDiameter') ?? slice.alike
      const lot = lotOf(row('ballLotMean'), state, weather, slice.lot)
      const film = row('finishFilm') ?? nothing
      const further = row('outerGrooveBottomRadius') ?? nothing
      const moved = {
        outer: state === undefined || weather === undefined ? nothing : inStates(state, weather.outer, slice.outer),
        inner: state === undefined || weather === undefined ? nothing : inStates(state, weather.inner, slice.inner),
      }
      if (!isRound) {
        const [cut, direction, grain, innerGrain] = [row('lobes'), row('direction'), row('grain'), row('innerGrain')]
        drawLobes({ cut, direction, state, grain, innerGrain }, weather, slice.lobes)
      }
      if (onBottom) {
        for (let trial = 0; trial < SLICE; trial++) {
          slice.bottomRadii[trial] =
            outer.bottomRadius + (further[trial] ?? 0) + (moved.outer[trial] ?? 0) - (film[trial] ?? 0)
        }
        const { bottomRadii } = slice
        const block = { ballCount: count, rings: SLICE, bottomRadii, diameters: balls, larger: lot ?? nothing }
        closeBlock(block, gaps, slice.means)
      } else {
        const diameters = lot === undefined ? balls : shiftBalls(balls, lot, slice.shifted)
        const centres = centresOf(outer, { diameters, film, further, moved: moved.outer }, slice.centres)
        const paths = { ballCount: count, rings: SLICE, centres, diameters, lobes: slice.lobes.outer }
        gapsOnPaths(paths, slice.paths, gaps)
        meanDiameters(diameters, slice.means)
      }
      const inward = row('innerGrooveBottomRadius') ?? nothing
      playsOf([outer, inner], { film, further, inward, moved, lobes: slice.lobes }, slice.means, plays)
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
    if (name !== 'outOfRound') return [{ name, source: numbers(distribution) }]
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

function largestSeatRadius({ bearing, differences, climate }: Check): number {
  const most = (name: ContributorName): number => {
    const distribution = differences.get(name)
    return distribution === undefined ? 0 : endsOf(distribution, FARTHEST_DRAW).most
  }
  const swollen = Math.max(0, ...(climate?.states ?? []).map(({ ballLotMean }) => ballLotMean))
  return (bearing.settled.ballDiameter + most('ballDiameter') + most('ballLotMean') + swollen) / 2 + most('finishFilm')
}

/** What all balls of a ring have in common, of their lot and of the weather; undefined where they have nothing. */
function lotOf(
  lot: Float64Array | undefined,
  state: Float64Array | undefined,
  weather: Weather | undefined,
  out: Float64Array,
): Float64Array | undefined {
  if (state === undefined || weather === undefined || weather.balls.every((change) => change === 0)) return lot
  inStates(state, weather.balls, out)
  if (lot === undefined) return out
  for (let trial = 0; trial < SLICE; trial++) out[trial] = (out[trial] ?? 0) + (lot[trial] ?? 0)
  return out
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

/** Where the centres of balls stand that ride on edges, some or all, or in a groove out of round, its lobes apart. */
function centresOf(
  outer: GroovedRing,
  { diameters, film, further, moved }: Seats,
  centres: Float64Array,
): Float64Array {
  for (let from = 0; from < diameters.length; from += SLICE) {
    for (let trial = 0; trial < SLICE; trial++) {
      const seatRadius = (diameters[from + trial] ?? 0) / 2 + (film[trial] ?? 0)
      centres[from + trial] = outerCentre(outer, seatRadius, further[trial] ?? 0) + (moved[trial] ?? 0)
    }
  }
  return centres
}

/** What decides where balls sit in the outer ring. */
interface Seats {
  readonly diameters: Float64Array
  readonly film: Float64Array
  readonly further: Float64Array
  /** By how much the whole ring has grown. */
  readonly moved: Float64Array
}

interface ForPlay {
  readonly film: Float64Array
  readonly further: Float64Array
  readonly inward: Float64Array
  readonly moved: { readonly outer: Float64Array; readonly inner: Float64Array }
  readonly lobes: SliceLobes
}

function playsOf(
  [outer, inner]: readonly [GroovedRing, GroovedRing],
  { film, further, inward, moved, lobes }: ForPlay,
  means: Float64Array,
  plays: Float64Array,
): void {
  const { outer: outerMoved, inner: innerMoved } = moved
  const { amplitude: outerLobes } = lobes.outer
  const { inner: innerLobes } = lobes
  for (let trial = 0; trial < SLICE; trial++) {
    const seatRadius = (means[trial] ?? 0) / 2 + (film[trial] ?? 0)
    const outside = outerCentre(outer, seatRadius, further[trial] ?? 0) + (outerMoved[trial] ?? 0)
    const inside = innerCentre(inner, seatRadius, inward[trial] ?? 0) + (innerMoved[trial] ?? 0)
    const lobe = Math.abs(outerLobes[trial] ?? 0) + Math.abs(innerLobes[trial] ?? 0)
    plays[trial] = 2 * (outside - inside - lobe)
  }
}
