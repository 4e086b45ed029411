import { requireAboveZero } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/** A circle stretched along the grain and across it by different amounts: two half axes. */
export interface Ellipse {
  readonly along: Mm
  readonly across: Mm
}

export const shorter = ({ along, across }: Ellipse): Mm => mm(Math.min(along, across))
export const longer = ({ along, across }: Ellipse): Mm => mm(Math.max(along, across))

/**
 * The least radius of curvature, at the ends of the long axis: shorter2 / longer. A ball that is larger than that does
 * not touch the bottom there.
 *
 * @throws RangeError unless both half axes are above 0
 */
export function sharpestRadius(ellipse: Ellipse): Mm {
  requireAboveZero('along', ellipse.along)
  requireAboveZero('across', ellipse.across)
  return mm((shorter(ellipse) * shorter(ellipse)) / longer(ellipse))
}
