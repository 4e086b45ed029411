import { gapsOnPaths } from '#shared/geometry/balls-on-paths-in-blocks.ts'
import { playInBlocks } from '#shared/geometry/play-among-unequal-balls-in-blocks.ts'
import { unequalBallGaps } from '#shared/geometry/unequal-balls-in-blocks.ts'
import type { Evaluate } from '#shared/questions/tolerance/check-model.ts'
import type { RingCheck } from '#shared/questions/tolerance/checked.ts'
import { type Chunk, lotOf, shiftBalls } from '#shared/questions/tolerance/chunk.ts'
import { drawLobes } from '#shared/questions/tolerance/drawn-lobes.ts'
import type { ContributorName } from '#shared/questions/tolerance/input.ts'
import { innerCentre, innerOf, outerCentre, outerOf, sitsOnBottom } from '#shared/questions/tolerance/seats.ts'
import { inStates, type Weather } from '#shared/questions/tolerance/weather.ts'
import { farthest } from '#shared/questions/tolerance/worst-ends.ts'
import { CHUNK } from '#shared/statistics/monte-carlo.ts'
import { FARTHEST_DRAW } from '#shared/statistics/normal-cells.ts'

/**
 * Ball gaps of the balls drawn, all pushed together, and the play of an inner ring that may move among them, the gap then
 * shared by all. Lobes of both rings are in line, which is how the inner ring leaves least.
 */
export function ringEvaluation(check: RingCheck, chunk: Chunk, weather: Weather | undefined): Evaluate {
  const { count } = check.bearing.resolved.input.balls
  const [outer, inner] = [outerOf(check.bearing), innerOf(check.bearing)]
  const isRound = !check.differences.has('outOfRound') && weather?.hasLobes !== true
  const areAlike = isRound && !check.differences.has('ballDiameter')
  const onBottom = sitsOnBottom(outer, largestSeatRadius(check)) && isRound
  const { nothing, centres, standOffs, lobes } = chunk
  const playOf = playInBlocks(count, 'spread')
  return (row, gaps, plays) => {
    const state = row('state')
    const lot = lotOf(row('ballLotMean'), state, weather, chunk.lot)
    const drawn = row('ballDiameter') ?? chunk.alike
    const diameters = lot === undefined ? drawn : shiftBalls(drawn, lot, chunk.shifted)
    const film = row('finishFilm') ?? nothing
    const further = row('outerGrooveBottomRadius') ?? nothing
    const inward = row('innerGrooveBottomRadius') ?? nothing
    const moved = {
      outer: state === undefined || weather === undefined ? nothing : inStates(state, weather.outer, chunk.outer),
      inner: state === undefined || weather === undefined ? nothing : inStates(state, weather.inner, chunk.inner),
    }
    if (!isRound) {
      drawLobes(row, state ?? nothing, weather, lobes)
    }
    const seats = areAlike ? CHUNK : diameters.length
    for (let from = 0; from < seats; from += CHUNK) {
      for (let trial = 0; trial < CHUNK; trial++) {
        const seatRadius = (diameters[from + trial] ?? Number.NaN) / 2 + (film[trial] ?? Number.NaN)
        centres[from + trial] =
          outerCentre(outer, seatRadius, further[trial] ?? Number.NaN) + (moved.outer[trial] ?? Number.NaN)
        standOffs[from + trial] =
          innerCentre(inner, seatRadius, inward[trial] ?? Number.NaN) + (moved.inner[trial] ?? Number.NaN)
      }
    }
    if (onBottom) {
      const { bottomRadii } = chunk
      for (let trial = 0; trial < CHUNK; trial++) {
        bottomRadii[trial] =
          outer.bottomRadius +
          (further[trial] ?? Number.NaN) +
          (moved.outer[trial] ?? Number.NaN) -
          (film[trial] ?? Number.NaN)
      }
      unequalBallGaps({ ballCount: count, rings: CHUNK, bottomRadii, diameters: drawn, larger: lot ?? nothing }, gaps)
    } else {
      if (areAlike) for (let ball = 1; ball < count; ball++) centres.copyWithin(ball * CHUNK, 0, CHUNK)
      gapsOnPaths({ ballCount: count, rings: CHUNK, centres, diameters, lobes: lobes.outer }, chunk.paths, gaps)
    }
    if (areAlike) {
      for (let trial = 0; trial < CHUNK; trial++)
        plays[trial] = 2 * ((centres[trial] ?? Number.NaN) - (standOffs[trial] ?? Number.NaN))
      return
    }
    playOf({ rings: CHUNK, diameters, centres, standOffs, ...(isRound ? {} : { lobes: lobes.both }) }, plays)
  }
}

function largestSeatRadius(check: RingCheck): number {
  const { bearing, climate } = check
  const most = (name: ContributorName): number => farthest(check, name, FARTHEST_DRAW).most
  const swollen = Math.max(0, ...(climate?.states ?? []).map(({ ballLotMean }) => ballLotMean))
  return (bearing.resolved.ballDiameter + most('ballDiameter') + most('ballLotMean') + swollen) / 2 + most('finishFilm')
}
