import { requireAboveZero, requireWhole, requireWithin } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/** A ring that must lie wholly in one glued up of so many straight pieces. */
export interface RingToGlue {
  readonly outerRadius: Mm
  /** 0 for a disc: the pieces are then wedges. */
  readonly innerRadius: Mm
  readonly count: number
}

/** One of the pieces, and the strip that all of them come from. */
export interface Segments {
  /** Between a cut and the square across the strip: half the angle that a piece spans [degrees]. */
  readonly miter: number
  readonly outerEdge: Mm
  readonly innerEdge: Mm
  readonly stripWidth: Mm
}

/** Length of a strip that gives so many pieces, turned over in turn, with a cut before the first and after each. */
export function stripLength({ miter, outerEdge, innerEdge }: Segments, count: number, kerf: Mm): Mm {
  requireWhole('count', count, 1)
  requireWithin('kerf', kerf, 0, Number.MAX_VALUE)
  // A row of trapezoids, every second one turned over, is as long as their middles; its slanted ends add half a slant.
  const row = (count * (outerEdge + innerEdge)) / 2 + (outerEdge - innerEdge) / 2
  // Along the strip a cut takes kerf / cos(pi / n).
  return mm(row + ((count + 1) * kerf) / Math.cos((miter * Math.PI) / 180))
}

/** How many pieces a strip of that length gives: the most of which `stripLength` is no longer. */
export function piecesOf(segments: Segments, length: Mm, kerf: Mm): number {
  const first = stripLength(segments, 1, kerf)
  return length < first ? 0 : 1 + Math.floor((length - first) / (stripLength(segments, 2, kerf) - first) + 1e-9)
}

/**
 * The pieces of a ring of n straight segments that holds a round ring wholly. Glued up it is a regular polygon outside
 * and inside. Outside, the circle must lie in the polygon: its apothem is the outer radius. Inside, the polygon must lie
 * in the circle: its corners are on the inner radius, its apothem is that times cos(pi / n). A piece is a trapezoid
 * between the two apothems, with edges 2 a tan(pi / n) (regular polygon, any handbook of mathematics).
 *
 * @param ring outer radius above the inner one, inner radius at least 0 [mm]; count whole, at least 3
 * @throws RangeError outside those ranges
 */
export function segmentsOf({ outerRadius, innerRadius, count }: RingToGlue): Segments {
  requireAboveZero('outerRadius', outerRadius)
  requireWithin('innerRadius', innerRadius, 0, outerRadius * (1 - Number.EPSILON))
  requireWhole('count', count, 3)
  const half = Math.PI / count
  const innerApothem = innerRadius * Math.cos(half)
  const outerEdge = 2 * outerRadius * Math.tan(half)
  const innerEdge = 2 * innerApothem * Math.tan(half)
  return {
    miter: 180 / count,
    outerEdge: mm(outerEdge),
    innerEdge: mm(innerEdge),
    stripWidth: mm(outerRadius - innerApothem),
  }
}
