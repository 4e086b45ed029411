import { type Groove, grooveHalfWidth } from '#shared/geometry/groove.ts'
import { requireAboveZero } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/** A ball on the two edges of a groove that is tighter than it. */
export interface EdgeSeat {
  /** Between the line of the load and the ball's radius to an edge [radians]. */
  readonly contactAngle: number
  /** Q / δ^1.5 of ball load and depth to which it sinks in along the load [N/mm^1.5]. */
  readonly stiffness: number
  /** Width of the flat that the ball makes of an edge, over how deep it cuts it, square to it. */
  readonly widthPerCut: number
}

/**
 * A groove that is almost as round as the ball has no corner to speak of; flatter than this a corner is not taken [radians].
 * Common practice, no source.
 */
const LEAST_CORNER = 0.02

/**
 * An edge of wood gives way as soon as it is touched: no ellipse of Hertz lies on a corner. It is crushed until the flat
 * that the ball makes of it is large enough for the wood's hardness. Cut square to itself by δ, the corner between the land
 * (α from the ball's tangent) and the groove's wall (β − α) is δ (cot α + cot(β − α)) wide, and along the groove as long as
 * δ reaches, so that its area is 4/3 √(2/ρ) (cot α + cot(β − α)) δ^1.5;  sin α = w / rw, sin β = w / r. Derived here.
 *
 * @param groove tighter than the ball
 * @param rolling relative curvature along the groove [1/mm]
 * @param hardness as a pressure [MPa]
 */
export function edgeSeat(groove: Groove, ballDiameter: Mm, rolling: number, hardness: number): EdgeSeat {
  requireAboveZero('rolling', rolling)
  requireAboveZero('hardness', hardness)
  const halfWidth = grooveHalfWidth(groove)
  const contactAngle = Math.asin(halfWidth / (ballDiameter / 2))
  const wall = Math.asin(Math.min(1, halfWidth / groove.radius))
  const widthPerCut =
    1 / Math.tan(Math.max(LEAST_CORNER, contactAngle)) + 1 / Math.tan(Math.max(LEAST_CORNER, wall - contactAngle))
  const perCut = (4 / 3) * Math.sqrt(2 / rolling) * widthPerCut * hardness
  const cosine = Math.cos(contactAngle)
  return { contactAngle, stiffness: 2 * perCut * cosine * cosine * Math.sqrt(cosine), widthPerCut }
}

/** How deep the ball sinks into its edges under a load, along the load [mm]. */
export const crushedUnder = ({ stiffness }: EdgeSeat, load: number): Mm => {
  const root = Math.cbrt(load / stiffness)
  return mm(root * root)
}

/** The load under which it sinks in so deep [N]. */
export const loadForCrush = ({ stiffness }: EdgeSeat, depth: Mm): number => stiffness * depth * Math.sqrt(depth)

/** Width of the flat on each edge then [mm]. */
export const crushedWidth = ({ contactAngle, widthPerCut }: EdgeSeat, depth: Mm): Mm =>
  mm(depth * Math.cos(contactAngle) * widthPerCut)
