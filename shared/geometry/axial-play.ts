import { requireAboveZero, requireWithin } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { type Groove, grooveHalfWidth } from './groove.ts'
import { seatIn } from './seat.ts'

/** How far a ball's centre may wander in one groove, in axial section. */
interface CentrePath {
  readonly ballRadius: number
  readonly halfWidth: number
  readonly seatDepth: number
  /** Radius of the arc on which the centre moves while the ball touches the groove's arc: re − rw, 0 on the edges. */
  readonly arcRadius: number
  /** Radial way from the seat to where the ball leaves the arc for the edge. */
  readonly arcDrop: number
}

function centrePath(groove: Groove, ballDiameter: Mm): CentrePath {
  const seat = seatIn(groove, ballDiameter)
  const arcRadius = seat.on === 'bottom' ? Math.max(0, groove.radius - ballDiameter / 2) : 0
  return {
    ballRadius: ballDiameter / 2,
    halfWidth: grooveHalfWidth(groove),
    seatDepth: seat.depth,
    arcRadius,
    arcDrop: (arcRadius * groove.depth) / groove.radius,
  }
}

/** How far the centre can stand aside of the middle once it has come away from the seat by `drop`. */
function sideways(path: CentrePath, drop: number): number {
  if (drop <= path.arcDrop) return Math.sqrt(Math.max(0, drop * (2 * path.arcRadius - drop)))
  const centreToLand = path.ballRadius - path.seatDepth + drop
  return path.halfWidth - Math.sqrt(Math.max(0, (path.ballRadius - centreToLand) * (path.ballRadius + centreToLand)))
}

/**
 * How far a ball may stand aside of the middle of its groove when it has come away from its seat by `drop`.
 *
 * @param drop from 0 to the seat's depth, where the ball stands over the groove's edge [mm]
 * @throws RangeError outside that range
 */
export function sidewaysTravel(groove: Groove, ballDiameter: Mm, drop: Mm): Mm {
  const path = centrePath(groove, ballDiameter)
  requireWithin('drop', drop, 0, path.seatDepth)
  return mm(sideways(path, drop))
}

/**
 * Axial play: the whole travel of one ring along the axis, rings concentric.
 *
 * Balls may come away from both seats together by half the radial internal clearance; what one groove takes of that,
 * the other has not. With both contacts on the arcs, and rs = re + ri − Dw the sum of the two centre arcs, the ball
 * leans to the free contact angle cos α = 1 − Gr / (2 rs) and the play is 2 rs sin α = √(4 rs Gr − Gr²), the usual
 * end play of a groove ball bearing (Harris, Rolling Bearing Analysis). Where a groove's edge is met
 * before, the best of a few shares is taken, all in closed form.
 *
 * @param clearance Gr [mm], from 0 to below twice the shallower seat: more would let the balls climb out
 * @throws RangeError outside that range
 */
export function axialPlay(
  grooves: { readonly outer: Groove; readonly inner: Groove },
  ballDiameter: Mm,
  clearance: Mm,
): Mm {
  requireAboveZero('ballDiameter', ballDiameter)
  const outer = centrePath(grooves.outer, ballDiameter)
  const inner = centrePath(grooves.inner, ballDiameter)
  requireWithin('clearance', clearance, 0, 2 * Math.min(outer.seatDepth, inner.seatDepth))
  const drop = clearance / 2
  const aside = (share: number): number => sideways(outer, share) + sideways(inner, drop - share)
  return mm(2 * Math.max(...levelShares(outer, inner, drop).map(aside)))
}

/**
 * The shares of the outer groove among which is the best: where a groove passes from its arc to its edge, and where all is in
 * balance, both contacts and the centre in one line. On an arc the contact's angle from the seat has the cosine 1 − share / R; on an
 * edge it is how far the centre stands below the land, over rw: so each balance is a linear equation. Between two edges a balance is
 * the worst share and not the best. A share that belongs to another pair of contacts than it was solved for does no harm: the
 * centre can stand there too.
 */
function levelShares(outer: CentrePath, inner: CentrePath, drop: number): readonly number[] {
  const ofOuter = shareInBalance(outer, inner, drop)
  const ofInner = drop - shareInBalance(inner, outer, drop)
  const onArcs = (drop * outer.arcRadius) / (outer.arcRadius + inner.arcRadius)
  const inside = [outer.arcDrop, drop - inner.arcDrop, onArcs, ofOuter, ofInner]
  return [0, drop, ...inside.filter((share) => share > 0 && share < drop)]
}

/** The share of a groove whose ball touches its arc here, the other groove's edge there; not a number where any share is in balance. */
const shareInBalance = ({ arcRadius }: CentrePath, { ballRadius, seatDepth }: CentrePath, drop: number): number =>
  (arcRadius * (drop - seatDepth)) / (arcRadius - ballRadius)

/**
 * Tilt: how far the inner ring's axis can lean out of the outer's, either way. At the top the ring is displaced along
 * the axis by half the axial play one way, at the bottom by half the other way:  tan θ ≈ axial play / Dpw.
 * An estimate: the balls at the sides are neglected, as in the textbook's small-angle form.
 *
 * @returns degrees
 */
export const tilt = (play: Mm, pitchRadius: Mm): number => (Math.atan(play / (2 * pitchRadius)) * 180) / Math.PI

/**
 * The same on rollers: a ring on rollers of length L leans until it touches one end of them above and the other end below,
 * Gr apart:  tan θ ≈ Gr / L.
 *
 * @returns degrees
 */
export const tiltOnRollers = (clearance: Mm, length: Mm): number => (Math.atan(clearance / length) * 180) / Math.PI
