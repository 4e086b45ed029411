import { gapsOnPaths } from '#shared/geometry/balls-on-paths-in-blocks.ts'
import { unequalBallGaps } from '#shared/geometry/unequal-balls-in-blocks.ts'
import { SLICE } from '#shared/statistics/monte-carlo.ts'
import { FARTHEST_DRAW } from '#shared/statistics/normal-cells.ts'
import type { RingCheck } from './checked.ts'
import { drawLobes, type SliceLobes } from './drawn-lobes.ts'
import type { ContributorName } from './input.ts'
import { type GroovedRing, innerCentre, innerOf, outerCentre, outerOf, sitsOnBottom } from './seats.ts'
import { lotOf, meanDiameters, type Slice, shiftBalls } from './slice.ts'
import type { Evaluate } from './ways.ts'
import { inStates, type Weather } from './weather.ts'
import { farthest } from './worst-ends.ts'

/** Ball gaps of balls in the outer ring, and plays of the inner ring inside balls of the mean size. */
export function ringEvaluation(check: RingCheck, slice: Slice, weather: Weather | undefined): Evaluate {
  const { count } = check.bearing.resolved.input.balls
  const [outer, inner] = [outerOf(check.bearing), innerOf(check.bearing)]
  const isRound = !check.differences.has('outOfRound') && weather?.hasLobes !== true
  const onBottom = sitsOnBottom(outer, largestSeatRadius(check)) && isRound
  const { nothing } = slice
  return (row, gaps, plays) => {
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
      const [cut, direction] = [row('lobes') ?? nothing, row('direction') ?? nothing]
      const [grain, innerGrain] = [row('grain'), row('innerGrain')]
      drawLobes({ cut, direction, state: state ?? nothing, grain, innerGrain }, weather, slice.lobes)
    }
    if (onBottom) {
      for (let trial = 0; trial < SLICE; trial++) {
        slice.bottomRadii[trial] =
          outer.bottomRadius +
          (further[trial] ?? Number.NaN) +
          (moved.outer[trial] ?? Number.NaN) -
          (film[trial] ?? Number.NaN)
      }
      const { bottomRadii } = slice
      const block = { ballCount: count, rings: SLICE, bottomRadii, diameters: balls, larger: lot ?? nothing }
      unequalBallGaps(block, gaps, slice.means)
    } else {
      const diameters = lot === undefined ? balls : shiftBalls(balls, lot, slice.shifted)
      const centres = centresOf(outer, { diameters, film, further, moved: moved.outer }, slice.centres)
      const paths = { ballCount: count, rings: SLICE, centres, diameters, lobes: slice.lobes.outer }
      gapsOnPaths(paths, slice.paths, gaps)
      meanDiameters(diameters, slice.means)
    }
    const inward = row('innerGrooveBottomRadius') ?? nothing
    playsOf([outer, inner], { film, further, inward, moved, lobes: slice.lobes }, slice.means, plays)
  }
}

function largestSeatRadius(check: RingCheck): number {
  const { bearing, climate } = check
  const most = (name: ContributorName): number => farthest(check, name, FARTHEST_DRAW).most
  const swollen = Math.max(0, ...(climate?.states ?? []).map(({ ballLotMean }) => ballLotMean))
  return (bearing.resolved.ballDiameter + most('ballDiameter') + most('ballLotMean') + swollen) / 2 + most('finishFilm')
}

/** Where the centres of balls stand that ride on edges, some or all, or in a groove out of round, its lobes apart. */
function centresOf(
  outer: GroovedRing,
  { diameters, film, further, moved }: Seats,
  centres: Float64Array,
): Float64Array {
  for (let from = 0; from < diameters.length; from += SLICE) {
    for (let trial = 0; trial < SLICE; trial++) {
      const seatRadius = (diameters[from + trial] ?? Number.NaN) / 2 + (film[trial] ?? Number.NaN)
      centres[from + trial] =
        outerCentre(outer, seatRadius, further[trial] ?? Number.NaN) + (moved[trial] ?? Number.NaN)
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
    const seatRadius = (means[trial] ?? Number.NaN) / 2 + (film[trial] ?? Number.NaN)
    const outside = outerCentre(outer, seatRadius, further[trial] ?? Number.NaN) + (outerMoved[trial] ?? Number.NaN)
    const inside = innerCentre(inner, seatRadius, inward[trial] ?? Number.NaN) + (innerMoved[trial] ?? Number.NaN)
    const lobe = Math.abs(outerLobes[trial] ?? Number.NaN) + Math.abs(innerLobes[trial] ?? Number.NaN)
    plays[trial] = 2 * (outside - inside - lobe)
  }
}
