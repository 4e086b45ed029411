import type { HeightOf } from '#shared/geometry/balls-on-a-circle.ts'
import { gapsOnCircles } from '#shared/geometry/balls-on-circles-in-blocks.ts'
import type { Evaluate } from '#shared/questions/tolerance/check-model.ts'
import type { PlateCheck } from '#shared/questions/tolerance/checked.ts'
import { type Chunk, lotOf, meanDiameters, shiftBalls } from '#shared/questions/tolerance/chunk.ts'
import { type GroovedRing, innerCentre } from '#shared/questions/tolerance/seats.ts'
import { inStates, type Weather } from '#shared/questions/tolerance/weather.ts'
import { CHUNK } from '#shared/statistics/monte-carlo.ts'

/**
 * Ball gaps on the mean of both plates' circles, and the space between their faces as balls of the mean size leave it, as the
 * play of a ring goes by that size.
 */
export function plateEvaluation(
  { bearing }: PlateCheck,
  face: GroovedRing,
  chunk: Chunk,
  weather: Weather | undefined,
): Evaluate {
  const { count } = bearing.resolved.input.balls
  const { nothing, means, bottomRadii: radii } = chunk
  return (row, gaps, plays) => {
    const balls = row('ballDiameter') ?? chunk.alike
    const state = row('state')
    const lot = lotOf(row('ballLotMean'), state, weather, chunk.lot)
    const diameters = lot === undefined ? balls : shiftBalls(balls, lot, chunk.shifted)
    const grown = state === undefined || weather === undefined ? nothing : inStates(state, weather.circles, chunk.outer)
    const [circles, depths] = [row('grooveCircleRadius') ?? nothing, row('grooveDepth') ?? nothing]
    for (let trial = 0; trial < CHUNK; trial++) {
      radii[trial] =
        bearing.pitchRadius +
        (grown[trial] ?? Number.NaN) +
        ((circles[trial] ?? Number.NaN) + (circles[CHUNK + trial] ?? Number.NaN)) / 2
    }
    const heightOf = (trial: number): HeightOf => {
      const deeper = depths[trial] ?? Number.NaN
      return (diameter) => innerCentre(face, diameter / 2, -deeper)
    }
    gapsOnCircles({ ballCount: count, rings: CHUNK, radii, diameters, heightOf }, gaps)
    meanDiameters(diameters, means)
    for (let trial = 0; trial < CHUNK; trial++) {
      const seatRadius = (means[trial] ?? Number.NaN) / 2
      const lower = innerCentre(face, seatRadius, -(depths[trial] ?? Number.NaN))
      const upper = innerCentre(face, seatRadius, -(depths[CHUNK + trial] ?? Number.NaN))
      plays[trial] = lower + upper
    }
  }
}
