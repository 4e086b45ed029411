import { itemAt } from '#shared/numbers/item-at.ts'
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
 * before, the best share between the grooves is searched, to about 1e-9 of the ball diameter.
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
  if (drop <= Math.min(outer.arcDrop, inner.arcDrop)) {
    const arcs = outer.arcRadius + inner.arcRadius
    return mm(2 * Math.sqrt(Math.max(0, drop * (2 * arcs - drop))))
  }
  return mm(
    2 *
      widest(
        (share) => sideways(outer, share) + sideways(inner, drop - share),
        [0, Math.min(outer.arcDrop, drop), Math.max(drop - inner.arcDrop, 0), drop],
      ),
  )
}

const SAMPLES = 32
const GOLDEN = (Math.sqrt(5) - 1) / 2
/** Each round keeps 0.618 of the bracket: 48 of them leave 1e-10 of it. */
const GOLDEN_ROUNDS = 48

/** The largest value of a function that is smooth between the given points. */
function widest(at: (x: number) => number, points: readonly number[]): number {
  const ends = [...points].sort((a, b) => a - b)
  let best = Math.max(...ends.map(at))
  for (let piece = 1; piece < ends.length; piece++) {
    const low = itemAt(ends, piece - 1)
    const width = (itemAt(ends, piece) - low) / SAMPLES
    for (let sample = 1; sample < SAMPLES; sample++) {
      const x = low + sample * width
      if (at(x) >= at(x - width) && at(x) >= at(x + width)) best = Math.max(best, peak(at, x - width, x + width))
    }
  }
  return best
}

function peak(at: (x: number) => number, low: number, high: number): number {
  let [from, to] = [low, high]
  for (let round = 0; round < GOLDEN_ROUNDS; round++) {
    const left = to - GOLDEN * (to - from)
    const right = from + GOLDEN * (to - from)
    if (at(left) < at(right)) from = left
    else to = right
  }
  return at((from + to) / 2)
}

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
