import type { RadialBearing } from '#shared/bearing/arrangements.ts'
import { leastLandGap, movingRings } from '#shared/movement/moving-rings.ts'
import type { MovingArrangement } from '#shared/movement/snapshot.ts'

/** Two grooved rings with a full ring of balls. */
export const MOVING_RADIAL: MovingArrangement<RadialBearing> = {
  boards: ['outerRing', 'innerRing'],
  snapshotsOf: (bearing, woods) => {
    const rings = movingRings(bearing, woods)
    return (change) => {
      const moved = rings(change)
      const { outerBottom, innerBottom, ball, play } = moved
      return {
        raceways: { outerRing: outerBottom, innerRing: innerBottom },
        bottom: outerBottom,
        ball,
        play,
        rooms: { leastLandGap: leastLandGap(moved) },
      }
    }
  },
}
