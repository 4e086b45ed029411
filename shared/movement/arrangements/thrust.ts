import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { Ellipse } from '#shared/geometry/ellipse.ts'
import { woodOf } from '#shared/movement/moving-rings.ts'
import { largestRadius, leastRadius, movedBall, movedCircle } from '#shared/movement/moving-wood.ts'
import type { MovingArrangement } from '#shared/movement/snapshot.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/**
 * Two plates with a full ring of balls between their grooves. A ball lies over the middle between the two groove circles. Where
 * the circles differ by an offset, which is most where one plate's grain lies across the other's, each ball climbs both
 * flanks: an arc of radius re lets a ball of radius r aside by (re − r) sin φ, φ the slope at the groove's edge, before it
 * rides on the edge. Derived here, no source.
 */
export const MOVING_THRUST: MovingArrangement<ThrustBearing> = {
  boards: ['plates', 'plates'],
  snapshotsOf: ({ plate, resolved }, woods) => {
    const wood = woodOf(woods, 'plates')
    const radius = mm(plate.grooveCircleDiameter / 2)
    const hoop = { inner: mm(plate.boreDiameter / 2), outer: mm(plate.outsideDiameter / 2) }
    const slope = plate.grooveWidth / 2 / plate.grooveRadius
    return (change) => {
      const lower = movedCircle(radius, wood, hoop, itemAt(change.boards, 0))
      const upper = movedCircle(radius, wood, hoop, itemAt(change.boards, 1))
      const ball = movedBall(resolved, woods.balls, change)
      const offset = Math.max(largestRadius(lower) - leastRadius(upper), largestRadius(upper) - leastRadius(lower))
      const aside = Math.max(0, plate.grooveRadius - ball.mean / 2) * slope
      return {
        raceways: { plates: lower },
        bottom: bottomRound(lower, upper, ball.mean),
        ball,
        rooms: { flankRoom: mm(2 * aside - offset) },
      }
    }
  },
}

/** The bottom of a radial groove in which balls have their centres where those of the plates have them. */
const bottomRound = (lower: Ellipse, upper: Ellipse, ballDiameter: Mm): Ellipse => ({
  along: mm((lower.along + upper.along + ballDiameter) / 2),
  across: mm((lower.across + upper.across + ballDiameter) / 2),
})
