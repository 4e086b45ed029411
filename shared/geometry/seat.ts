import { requireAboveZero } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { depthForHalfWidth, type Groove, grooveHalfWidth } from './groove.ts'

/** A groove as round as the ball counts as one that the ball touches at the bottom: equal within rounding. */
const EQUAL_WITHIN = 1e-9

/** The contact of a ball with its groove: place, depth, and the slope of that depth. */
export interface Seat {
  readonly on: 'bottom' | 'edges'
  /** Land to the ball's deepest point. On the edges it is less than the groove is deep. */
  readonly depth: Mm
  /** Seat depth gained per depth of groove cut, the land staying where it is: 1 on the bottom, less on the edges. */
  readonly perGrooveDepth: number
  /** Seat depth gained per ball diameter, the groove staying as it is: 0 on the bottom, below 0 on the edges. */
  readonly perBallDiameter: number
}

/**
 * How a ball sits in a groove. A groove at least as round as the ball lets it touch the bottom. A tighter one holds it
 * on its two edges, w either side of the middle, and the ball's own segment is what dips in:  s = rw − √(rw² − w²).
 * The edges are circles round the ring's axis and the nearest points of a sphere to them lie in the axial plane, so this
 * plane figure is exact for the ring too.
 *
 * @param groove depth above 0, at most its radius [mm]
 * @param ballDiameter above 0 [mm]
 * @throws RangeError outside those ranges
 */
export function seatIn(groove: Groove, ballDiameter: Mm): Seat {
  requireAboveZero('ballDiameter', ballDiameter)
  const halfWidth = grooveHalfWidth(groove)
  const ballRadius = ballDiameter / 2
  if (groove.radius >= ballRadius * (1 - EQUAL_WITHIN)) {
    return { on: 'bottom', depth: groove.depth, perGrooveDepth: 1, perBallDiameter: 0 }
  }
  const centreToLand = Math.sqrt((ballRadius - halfWidth) * (ballRadius + halfWidth))
  return {
    on: 'edges',
    depth: mm((halfWidth * halfWidth) / (ballRadius + centreToLand)),
    perGrooveDepth: (groove.radius - groove.depth) / centreToLand,
    perBallDiameter: (1 - ballRadius / centreToLand) / 2,
  }
}

/**
 * How deep a groove of this radius must be for the ball to sit at a given depth: the way back of `seatIn`.
 *
 * @returns undefined where no depth of this groove lets the ball sit so deep
 */
export function grooveDepthForSeat(seatDepth: Mm, grooveRadius: Mm, ballDiameter: Mm): Mm | undefined {
  requireAboveZero('seatDepth', seatDepth)
  if (grooveRadius >= (ballDiameter / 2) * (1 - EQUAL_WITHIN)) return seatDepth <= grooveRadius ? seatDepth : undefined
  const squaredHalfWidth = seatDepth * (ballDiameter - seatDepth)
  if (!(seatDepth < ballDiameter / 2 && squaredHalfWidth <= grooveRadius * grooveRadius)) return undefined
  return depthForHalfWidth(mm(Math.sqrt(squaredHalfWidth)), grooveRadius)
}
