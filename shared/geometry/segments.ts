import { requireAboveZero, requireWhole, requireWithin } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/** A ring that must lie wholly in one glued up of so many straight pieces. */
export interface RingToGlue {
  readonly outerRadius: Mm
  /** 0 for a disc: the pieces are then wedges. */
  readonly innerRadius: Mm
  readonly count: number
}

/** One of the pieces, and the stock that all of them come from. */
export interface Segments {
  /** Between a cut and the square across the strip: half the angle that a piece spans [degrees]. */
  readonly miter: number
  readonly outerEdge: Mm
  readonly innerEdge: Mm
  readonly stripWidth: Mm
  /** Of a strip of that width, pieces turned over in turn, a cut before the first and after each. */
  readonly stockLength: Mm
}

/**
 * The pieces of a ring of n straight segments that holds a round ring wholly. Glued up it is a regular polygon outside
 * and inside. Outside, the circle must lie in the polygon: its apothem is the outer radius. Inside, the polygon must lie
 * in the circle: its corners are on the inner radius, its apothem is that times cos(pi / n). A piece is a trapezoid
 * between the two apothems, with edges 2 a tan(pi / n) (regular polygon, any handbook of mathematics).
 *
 * @param ring outer radius above the inner one, inner radius at least 0 [mm]; count whole, at least 3
 * @param kerf of the saw that cuts the miters, at least 0 [mm]: along the strip it takes kerf / cos(pi / n)
 * @throws RangeError outside those ranges
 */
export function segmentsOf({ outerRadius, innerRadius, count }: RingToGlue, kerf: Mm): Segments {
  requireAboveZero('outerRadius', outerRadius)
  requireWithin('innerRadius', innerRadius, 0, outerRadius * (1 - Number.EPSILON))
  requireWhole('count', count, 3)
  requireWithin('kerf', kerf, 0, Number.MAX_VALUE)
  const half = Math.PI / count
  const innerApothem = innerRadius * Math.cos(half)
  const outerEdge = 2 * outerRadius * Math.tan(half)
  const innerEdge = 2 * innerApothem * Math.tan(half)
  const cut = kerf / Math.cos(half)
  // A row of trapezoids, every second one turned over, is as long as their middles; its slanted ends add half a slant.
  const row = (count * (outerEdge + innerEdge)) / 2 + (outerEdge - innerEdge) / 2
  return {
    miter: 180 / count,
    outerEdge: mm(outerEdge),
    innerEdge: mm(innerEdge),
    stripWidth: mm(outerRadius - innerApothem),
    stockLength: mm(row + (count + 1) * cut),
  }
}
