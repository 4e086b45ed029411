import { type BallRing, ballRing } from '#shared/bearing/ball-ring.ts'
import { finishRefusals } from '#shared/bearing/finish.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import { depthPath, outsidePath } from '#shared/bearing/resolve.ts'
import { diameterOf } from '#shared/bearing/rings.ts'
import { grooveWidth } from '#shared/geometry/groove.ts'
import { type Seat, seatIn } from '#shared/geometry/seat.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { ThrustInput } from './input.ts'
import { type ResolvedThrust, resolveThrust } from './resolve.ts'

/** A plate in finished sizes; the other is cut alike. */
interface Plate {
  readonly outsideDiameter: Mm
  readonly boreDiameter: Mm
  /** Across the circle in which the groove is deepest: the pitch circle. */
  readonly grooveCircleDiameter: Mm
  readonly grooveDepth: Mm
  readonly seatDepth: Mm
  readonly grooveRadius: Mm
  readonly grooveWidth: Mm
  /** Wood from the groove's outer edge to the outside, from its inner edge to the bore, and under its bottom. */
  readonly wall: Mm
  readonly innerWall: Mm
  readonly floor: Mm
  readonly thickness: Mm
  readonly seat: Seat['on']
}

/** Two plates with a full ring of balls between them, the axis upright. */
export interface ThrustBearing extends BallRing {
  readonly resolved: ResolvedThrust
  readonly plate: Plate
  /** Between the faces of the plates. */
  readonly plateGap: Mm
  /** Height of the whole bearing, plates included. */
  readonly height: Mm
}

/**
 * Every size of a thrust bearing, or all reasons at once why there is none.
 *
 * A ball of whatever size lies over the lowest circle of its groove: larger ones stand higher, not further out. So the
 * centres stand at the groove circle's radius R, which is what closes the ring, and neither depth nor arc of the groove
 * moves the gap. Equal balls lie level, and their ring is that of any full ring (`ring-of-balls.ts`); unequal neighbours are
 * 2 √(ri rj) apart as seen from above (`balls-on-a-circle.ts`). Balls that all grow by one unit close the gap by Z units at closure, with
 * no half ball in it, for the circle stays. The last ball comes straight down between its neighbours, from which it
 * is never nearer than at the end: it needs no more than g ≥ 0.
 */
export function thrustBearingOf(input: ThrustInput): Result<ThrustBearing, readonly Refusal[]> {
  const resolution = resolveThrust(input)
  if (!resolution.ok) return resolution
  // Larger balls stand no further out.
  const ring = ballRing(resolution.value, 1)
  if (!ring.ok) return ring
  const { resolved, pitchRadius } = ring.value
  const plate = plateRound(pitchRadius, resolved)
  const faults = [
    ...roomRefusals(plate, resolved),
    ...finishRefusals(resolved.finishAllowance, [plate.grooveDepth], [plate.floor, plate.wall, plate.innerWall]),
  ]
  if (faults.length > 0) return fail(faults)
  const plateGap = mm(resolved.ballDiameter - 2 * plate.seatDepth)
  return ok({ ...ring.value, plate, plateGap, height: mm(2 * plate.thickness + plateGap) })
}

function plateRound(pitchRadius: Mm, { input, ballDiameter, groove, outside, thickness }: ResolvedThrust): Plate {
  const seat = seatIn(groove, ballDiameter)
  const width = grooveWidth(groove)
  const edges = [2 * pitchRadius - width, 2 * pitchRadius + width] as const
  const outsideDiameter = diameterOf(outside, edges[1])
  return {
    outsideDiameter,
    boreDiameter: input.bore,
    grooveCircleDiameter: mm(2 * pitchRadius),
    grooveDepth: groove.depth,
    seatDepth: seat.depth,
    grooveRadius: groove.radius,
    grooveWidth: width,
    wall: mm((outsideDiameter - edges[1]) / 2),
    innerWall: mm((edges[0] - input.bore) / 2),
    floor: mm(thickness - groove.depth),
    thickness,
    seat: seat.on,
  }
}

function roomRefusals(plate: Plate, { input, ballDiameter }: ResolvedThrust): readonly Refusal[] {
  const refusals: Refusal[] = []
  const { grooveCircleDiameter: circle, grooveWidth: width, grooveDepth } = plate
  if (!(plate.wall > 0)) {
    const path = outsidePath(input, 'plates')
    refusals.push({ code: 'wall-below-zero', path, given: plate.outsideDiameter, above: mm(circle + width) })
  }
  if (!(circle > width)) {
    refusals.push({ code: 'no-room-inside', path: '/balls/count', ballCount: input.balls.count })
  } else if (!(plate.innerWall > 0)) {
    refusals.push({ code: 'bore-meets-groove', path: '/bore', given: plate.boreDiameter, below: mm(circle - width) })
  }
  if (!(plate.floor > 0)) {
    refusals.push({ code: 'plate-cut-through', path: '/plates/thickness', given: plate.thickness, above: grooveDepth })
  }
  const middle = mm(ballDiameter / 2)
  if (!(plate.seatDepth < middle)) {
    refusals.push({ code: 'plates-meet', path: depthPath(input, 'plates'), depth: plate.seatDepth, below: middle })
  }
  return refusals
}
