import { requireAboveZero, requireWithin } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/** A raceway groove in axial section: a circular arc of `radius`, cut `depth` below the land. */
export interface Groove {
  readonly radius: Mm
  readonly depth: Mm
}

/**
 * No groove at all but a plain cylinder: its limit as the depth goes to nothing and the arc to a straight line. What rolls on
 * it sits on its bottom, which is its land.
 */
export const PLAIN_TRACK: Groove = { radius: mm(Number.POSITIVE_INFINITY), depth: mm(0) }

export const isPlain = ({ depth, radius }: Groove): boolean => depth === 0 && radius === Number.POSITIVE_INFINITY

/** Past a half circle the cutter would have to undercut the land. */
function requireGroove({ radius, depth }: Groove): void {
  requireAboveZero('groove radius', radius)
  requireAboveZero('groove depth', depth)
  requireWithin('groove depth', depth, 0, radius)
}

/**
 * Half the width of the groove at the land: half the chord of a circular segment,  w = √(h (2 r − h))
 * (circular segment, any handbook of mathematics).
 *
 * @param groove depth above 0 and at most the radius [mm]; 0 of a plain track
 * @throws RangeError outside those ranges
 */
export function grooveHalfWidth(groove: Groove): Mm {
  if (isPlain(groove)) return mm(0)
  requireGroove(groove)
  return mm(Math.sqrt(groove.depth * (2 * groove.radius - groove.depth)))
}

/** Width of the groove at the land, 2 √(h (2 r − h)): see `grooveHalfWidth`. */
export const grooveWidth = (groove: Groove): Mm => mm(2 * grooveHalfWidth(groove))

/**
 * How deep an arc must be cut to be so wide at the land:  h = r − √(r² − w²) = w² / (r + √(r² − w²)), w half the width.
 *
 * @param halfWidth above 0 and at most the radius [mm]
 * @throws RangeError outside that range
 */
export function depthForHalfWidth(halfWidth: Mm, radius: Mm): Mm {
  requireAboveZero('halfWidth', halfWidth)
  requireWithin('halfWidth', halfWidth, 0, radius)
  return mm((halfWidth * halfWidth) / (radius + Math.sqrt((radius - halfWidth) * (radius + halfWidth))))
}
