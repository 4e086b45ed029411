import { requireWhole } from '#shared/precondition.ts'
import { emptyCircle, halfPlanes, inscribeCircle } from './inscribed-circle.ts'
import { FEWEST_BALLS } from './ring-of-balls.ts'

/** A plane that cuts off less is satisfied, in parts of the largest deviation. */
const ROUNDINGS = 4 * Number.EPSILON

/**
 * How much play unequal balls take, to first order and evenly spaced: 2 max Σ λᵢ dᵢ with λ ≥ 0, Σ λᵢ = 1 and Σ λᵢ nᵢ = 0,
 * the linear program of `play-among-unequal-balls.ts`. It has room of its own, which is used again.
 *
 * @param ballCount Z, whole, at least 3
 * @returns takes by how much each ball is larger than the design's, and gives by how much the play is less, in the same unit
 * @throws RangeError outside that range
 */
export function evenPlayLoss(ballCount: number): (larger: Float64Array) => number {
  requireWhole('ballCount', ballCount, FEWEST_BALLS)
  const planes = halfPlanes(ballCount)
  for (let ball = 0; ball < ballCount; ball++) {
    planes.normalX[ball] = Math.cos((2 * Math.PI * ball) / ballCount)
    planes.normalY[ball] = Math.sin((2 * Math.PI * ball) / ballCount)
  }
  const circle = emptyCircle()
  return (larger) => {
    let most = 0
    for (let ball = 0; ball < ballCount; ball++) {
      const own = larger[ball] ?? Number.NaN
      planes.reach[ball] = -own
      most = Math.max(most, Math.abs(own))
    }
    inscribeCircle(planes, circle, ROUNDINGS * most)
    return -2 * circle.radius
  }
}
