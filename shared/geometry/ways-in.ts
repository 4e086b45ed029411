import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { type Groove, grooveHalfWidth, isPlain } from './groove.ts'
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

/**
 * The ways in for the last ball.
 *
 * From inside, the last ball moves out along the bisector of the opening. It passes its neighbours when their centres
 * are two ball diameters apart, 2 R sin ψ ≥ 2 Dw with ψ = π − (Z − 2) asin(Dw / 2R); where the opening is wider than
 * half the ring (few balls), when it fits in the middle at all, R ≥ Dw. At exact closure the centres are only
 * 2 Dw cos(π/Z) apart: the ring is a locked toggle.
 *
 * Over the land, the last ball comes along the axis at the land and rolls over the groove's edge. In its meridian plane
 * its centre must keep rw from the edge E, and k = √(Dw² − R² sin² ψ) from the point C where the plane is nearest to
 * both neighbours' centres, on the bisector at R cos ψ. It gets through between them when |EC| ≥ rw + k: of all wood E
 * is nearest to C, or else C lies above the centre of the groove's arc and the bottom is, where a seated ball has room.
 * A groove wide and shallow enough lets the last ball into a ring that is just closed. Off the meridian plane a centre
 * comes nearer to one neighbour, so no other way is easier. Derived here, no source; tested by rolling balls along the
 * groove and by a search for any path.
 *
 * On a plain track a roller slides in along the axis, which any ring lets it do that closes.
 *
 * The ring's hole is taken to let a ball through at all, which it does unless three to five balls lie in a groove past
 * their middle.
 *
 * @returns ball gaps [mm], 0 or above
 * @throws RangeError for a groove or a ring of balls that cannot be
 */
export function waysIn(filling: Filling): WaysIn {
  const { ballDiameter, ballCount } = filling
  const closed = closedPitchRadius(ballDiameter, ballCount)
  const inside = radiusFromInside(filling, closed)
  const over = isPlain(filling.groove) ? closed : radiusOverLand(filling, closed, inside)
  const gapAt = (radius: Mm): Mm => mm(radius === closed ? 0 : Math.max(0, ballGap(radius, ballDiameter, ballCount)))
  return { fromInside: gapAt(inside), overLand: gapAt(over) }
}

/** With five balls or fewer the middle is narrower than a ball; with more, one ball less leaves a gap of one ball. */
function radiusFromInside({ ballDiameter, ballCount }: Filling, closed: Mm): Mm {
  if (ballCount <= 5) return mm(Math.max(closed, ballDiameter))
  return pitchRadiusForGap(ballDiameter, ballDiameter, ballCount - 1)
}

function radiusOverLand(filling: Filling, closed: Mm, inside: Mm): Mm {
  const room = roomOverLand(filling)
  if (room(closed) >= 0) return closed
  // by a rounding error at the most
  if (room(inside) < 0) return inside
  return mm(bracketedRoot(room, closed, inside))
}

/** |EC| − rw − k, by the pitch radius. */
function roomOverLand({ groove, ballDiameter, ballCount }: Filling): (pitchRadius: number) => number {
  const ballRadius = ballDiameter / 2
  const landToCentre = ballRadius - seatIn(groove, ballDiameter).depth
  const halfWidth = grooveHalfWidth(groove)
  return (pitchRadius) => {
    const open = Math.PI - (ballCount - 2) * Math.asin(ballRadius / pitchRadius)
    const along = pitchRadius * Math.cos(open)
    const aside = pitchRadius * Math.sin(open)
    const landToNeighbours = pitchRadius + landToCentre - along
    const edgeToNeighbours = Math.sqrt(halfWidth * halfWidth + landToNeighbours * landToNeighbours)
    const keepAway = Math.sqrt(Math.max(0, (ballDiameter - aside) * (ballDiameter + aside)))
    return edgeToNeighbours - ballRadius - keepAway
  }
}
