import type { CagedBearing } from '#shared/bearing/arrangements.ts'
import { leastLandGap, movingRings, woodOf } from '#shared/movement/moving-rings.ts'
import { largestRadius, leastRadius, movedCircle, stretchesOf } from '#shared/movement/moving-wood.ts'
import type { MovingArrangement } from '#shared/movement/snapshot.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { mm } from '#shared/units/length.ts'

/**
 * Two grooved rings with balls in a cage. The cage goes round with the balls, in the middle of the outer ring, while the inner
 * ring may lie to one side by half the play. A pocket is as narrow as its wood is in its narrowest direction.
 */
export const MOVING_CAGED: MovingArrangement<CagedBearing> = {
  boards: ['outerRing', 'innerRing', 'cage'],
  snapshotsOf: (bearing, woods) => {
    const rings = movingRings(bearing, woods)
    const wood = woodOf(woods, 'cage')
    const { boreDiameter, outsideDiameter, pocketDiameter } = bearing.cage
    const hoop = { inner: mm(boreDiameter / 2), outer: mm(outsideDiameter / 2) }
    return (change) => {
      const moved = rings(change)
      const { outerBottom, outerLand, innerBottom, innerLand, ball, play } = moved
      const cage = itemAt(change.boards, 2)
      const outside = movedCircle(hoop.outer, wood, hoop, cage)
      const bore = movedCircle(hoop.inner, wood, hoop, cage)
      const { along, across, height } = stretchesOf(wood, cage)
      const aside = Math.max(0, play.best) / 2
      return {
        raceways: { outerRing: outerBottom, innerRing: innerBottom, cage: bore },
        ball,
        play,
        rooms: {
          leastLandGap: leastLandGap(moved),
          cageClearance: mm(
            Math.min(
              leastRadius(outerLand) - largestRadius(outside),
              leastRadius(bore) - largestRadius(innerLand) - aside,
            ),
          ),
          pocketClearance: mm(pocketDiameter * Math.min(along, across, height) - ball.most),
        },
      }
    }
  },
}
