import { type Mm, mm } from '#shared/units/length.ts'
import { type Ellipse, longer, shorter } from './ellipse.ts'

/** The way of one ring from side to side, in its tightest direction, by how the two are turned to one another. */
export interface EllipticPlay {
  /** Turned to where it is tightest: below 0 the rings bind. */
  readonly worst: Mm
  /** Turned to where it is loosest. */
  readonly best: Mm
}

/**
 * Play of an elliptic inner ring on balls in an elliptic outer ring, the balls standing everywhere round the ring (a ring
 * with gaps has a hair more). Centres of balls keep a ball radius from both bottoms, so by supporting lines in direction n
 * the room is c(n) = h_outer(n) - h_inner(n) - Dw, h = sqrt(a2 cos2 + b2 sin2), and the way across is 2 c(n), least in the
 * direction where c is least. Over all turns of the inner ring c is least where its long axis meets the short one of the
 * outer, and at its best where the long axes lie together.
 *
 * @returns below 0 where they bind [mm]
 */
export function playInEllipse(outer: Ellipse, inner: Ellipse, ballDiameter: Mm): EllipticPlay {
  const worst = 2 * (shorter(outer) - longer(inner) - ballDiameter)
  return { worst: mm(worst), best: mm(2 * (leastDifference(outer, inner) - ballDiameter)) }
}

/** Least of sqrt(A + B x) - sqrt(C + D x) over x = sin2 from 0 to 1, long axes together: at an end or where it is level. */
function leastDifference(outer: Ellipse, inner: Ellipse): number {
  const [a, c] = [longer(outer) * longer(outer), longer(inner) * longer(inner)]
  const [b, d] = [shorter(outer) * shorter(outer) - a, shorter(inner) * shorter(inner) - c]
  const at = (x: number): number => Math.sqrt(a + b * x) - Math.sqrt(c + d * x)
  const level = (d * d * a - b * b * c) / (b * d * (b - d))
  return Math.min(at(0), at(1), level > 0 && level < 1 ? at(level) : Number.POSITIVE_INFINITY)
}
