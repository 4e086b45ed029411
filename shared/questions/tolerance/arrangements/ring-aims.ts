import type { FullRings } from '#shared/bearing/full-rings.ts'
import { isPlain } from '#shared/geometry/groove.ts'
import { grooveDepthForSeat, seatIn } from '#shared/geometry/seat.ts'
import type { AimPlace } from '#shared/questions/tolerance/check-model.ts'
import type { RingCheck } from '#shared/questions/tolerance/checked.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/** Least part of its depth that a groove keeps. Common practice, no source. */
const LEAST_DEPTH = 0.01

/** There is a groove where it has some depth, is not undercut, and has wood behind it. */
export function ringShifts({ bearing }: RingCheck, from: number, to: number): readonly [from: number, to: number] {
  const { outerRing, resolved } = bearing
  if (isPlain(resolved.outerGroove)) {
    const most = (1 - LEAST_DEPTH) * Math.min(outerRing.wall, outerRing.grooveBottomDiameter / 2)
    return [Math.max(from, -most), Math.min(to, most)]
  }
  const most = seatIn({ ...resolved.outerGroove, depth: resolved.outerGroove.radius }, resolved.ballDiameter)
  const roomBelow = most.depth - outerRing.seatDepth
  return [
    Math.max(from, -(1 - LEAST_DEPTH) * outerRing.seatDepth),
    Math.min(to, (1 - LEAST_DEPTH) * roomBelow, (1 - LEAST_DEPTH) * outerRing.wall),
  ]
}

/** A shift of the balls as a depth of the groove, through the seat. */
export function ringPlaceAt({ bearing }: RingCheck, shift: number): AimPlace {
  const { outerRing, resolved } = bearing
  const isTrack = isPlain(resolved.outerGroove)
  const grooveDepth = isTrack ? outerRing.grooveDepth : depthShifted(bearing, shift)
  const deeper = isTrack ? mm(shift) : mm(grooveDepth - outerRing.grooveDepth)
  return { grooveDepth, grooveBottomDiameter: mm(outerRing.grooveBottomDiameter + 2 * deeper), deeper }
}

function depthShifted({ outerRing, resolved }: FullRings, further: number): Mm {
  const seated = mm(outerRing.seatDepth + further)
  const found = grooveDepthForSeat(seated, resolved.outerGroove.radius, resolved.ballDiameter)
  return further === 0 || found === undefined ? outerRing.grooveDepth : found
}
