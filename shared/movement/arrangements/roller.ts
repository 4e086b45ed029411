import type { RollerBearing } from '#shared/bearing/arrangements.ts'
import { movingRings, woodOf } from '#shared/movement/moving-rings.ts'
import { stretchesOf } from '#shared/movement/moving-wood.ts'
import type { MovingArrangement } from '#shared/movement/snapshot.ts'
import { mm } from '#shared/units/length.ts'

/**
 * Two plain rings with rollers between two cheeks, which keep the distance that the outer ring's width gives them. What is
 * left at the ends is that width less the inner ring's or the rollers' length, whichever is more.
 */
export const MOVING_ROLLER: MovingArrangement<RollerBearing> = {
  boards: ['outerRing', 'innerRing'],
  snapshotsOf: (bearing, woods) => {
    const rings = movingRings(bearing, woods)
    const { outerRing, innerRing, resolved } = bearing
    return (change) => {
      const { outerBottom, innerBottom, outer, inner, ball, play } = rings(change)
      const width = outerRing.width * stretchesOf(woodOf(woods, 'outerRing'), outer).height
      const within = innerRing.width * stretchesOf(woodOf(woods, 'innerRing'), inner).height
      return {
        raceways: { outerRing: outerBottom, innerRing: innerBottom },
        bottom: outerBottom,
        ball,
        play,
        rooms: { endPlay: mm(width - Math.max(within, resolved.rollerLength * ball.length)) },
      }
    }
  },
}
