import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { type Groove, grooveHalfWidth } from './groove.ts'
import { ballGap, closedPitchRadius, pitchRadiusForGap } from './ring-of-balls.ts'
import { seatIn } from './seat.ts'

/**
 * Least ball gaps at which the last ball goes in without force, way by way; the other balls lie in the outer groove,
 * pushed together, and the inner ring is not there yet. Rigid balls: wood gives a little, so these are estimates.
 */
export interface WaysIn {
  /** Straight out from the middle, between its two neighbours. */
  readonly fromInside: Mm
  /** Along the axis over the outer ring's land, then down into the groove. Never harder than from inside. */
  readonly overLand: Mm
}

/** The outer groove and the balls that go in. */
export interface Filling {
  readonly groove: Groove
  readonly ballDiameter: Mm
  readonly ballCount: number
}

/** Centres of the two end balls, seen from the last ball's meridian plane: [radius in that plane, distance from it]. */
function neighbours(pitchRadius: number, { ballDiameter, ballCount }: Filling): readonly [number, number] {
  const open = Math.PI - (ballCount - 2) * Math.asin(ballDiameter / (2 * pitchRadius))
  return [pitchRadius * Math.cos(open), pitchRadius * Math.sin(open)]
}

/**
 * The ways in for the last ball.
 *
 * From inside, the last ball moves out along the bisector of the opening. It passes its neighbours when their centres
 * are two ball diameters apart, 2 R sin ψ ≥ 2 Dw with ψ = π − (Z − 2) asin(Dw / 2R); where the opening is wider than
 * half the ring (few balls), when it fits in the middle at all, R ≥ Dw. At exact closure the centres are only
 * 2 Dw cos(π/Z) apart: the ring is a locked toggle.
 *
 * Over the land, the last ball comes along the axis at the land and rolls over the groove's edge. In its meridian plane
 * its centre must keep rw from the edge E, and √(Dw² − R² sin² ψ) from the point C where the plane is nearest to both
 * neighbours' centres. It gets through between them when |EC| is at least the sum of both, or when |EC| is less than the
 * groove radius: then the groove itself is wide enough for the ball to swing aside in it. Derived here, no source.
 *
 * @returns ball gaps [mm], 0 or above
 * @throws RangeError for a groove or a ring of balls that cannot be
 */
export function waysIn(filling: Filling): WaysIn {
  const { ballDiameter, ballCount } = filling
  const closed = closedPitchRadius(ballDiameter, ballCount)
  const inside = radiusFromInside(filling, closed)
  const over = radiusOverLand(filling, closed, inside)
  const gapAt = (radius: Mm): Mm => mm(Math.max(0, ballGap(radius, ballDiameter, ballCount)))
  return { fromInside: gapAt(inside), overLand: gapAt(over) }
}

/** With five balls or fewer the middle is narrower than a ball; with more, one ball less leaves a gap of one ball. */
function radiusFromInside({ ballDiameter, ballCount }: Filling, closed: Mm): Mm {
  if (ballCount <= 5) return mm(Math.max(closed, ballDiameter))
  return pitchRadiusForGap(ballDiameter, ballDiameter, ballCount - 1)
}

function radiusOverLand(filling: Filling, closed: Mm, inside: Mm): Mm {
  const clearance = clearanceOverLand(filling)
  if (clearance(closed) >= 0) return closed
  const slope = (radius: number): number => {
    const step = radius * 1e-7
    return (clearance(radius + step) - clearance(radius - step)) / (2 * step)
  }
  if (clearance(inside) < 0) return inside
  return mm(bracketedRoot((radius) => [clearance(radius), slope(radius)], closed, inside))
}

/** How much room the last ball has between the groove's edge and its neighbours, by pitch radius. */
function clearanceOverLand(filling: Filling): (pitchRadius: number) => number {
  const { groove, ballDiameter } = filling
  const ballRadius = ballDiameter / 2
  const seat = seatIn(groove, ballDiameter)
  const halfWidth = grooveHalfWidth(groove)
  return (pitchRadius) => {
    const [along, aside] = neighbours(pitchRadius, filling)
    const keepAway = Math.sqrt(Math.max(0, ballDiameter * ballDiameter - aside * aside))
    const landToNeighbours = pitchRadius + ballRadius - seat.depth - along
    const edgeToNeighbours = Math.hypot(halfWidth, landToNeighbours)
    if (seat.on === 'bottom' && edgeToNeighbours < groove.radius) return groove.radius - edgeToNeighbours
    return edgeToNeighbours - ballRadius - keepAway
  }
}
