import { seatIn } from '#shared/geometry/seat.ts'
import { ok, type Result } from '#shared/result.ts'
import { type BallRing, ballRing } from './ball-ring.ts'
import type { Refusal } from './refusal.ts'
import type { Resolved } from './resolve.ts'
import { outerRingRound } from './ring-pair.ts'
import type { OuterRing } from './rings.ts'

/** The outer ring with its balls: what a maker cuts first, and all that a ball gap depends on. */
export interface OuterSide extends BallRing {
  readonly resolved: Resolved
  /** d(ball gap) / d(depth of groove cut), through the seat. */
  readonly gapPerGrooveDepth: number
  readonly outerRing: OuterRing
}

/**
 * The outer ring of a resolved input: the pitch radius is the one that leaves the asked ball gap exactly, and the ring is laid
 * round the balls that run on it. The bore and the inner ring are not looked at, nor whether wood is left behind the groove.
 *
 * @returns the outer side, or every reason at once why there is none
 */
export function outerSideOf(resolved: Resolved): Result<OuterSide, readonly Refusal[]> {
  const seat = seatIn(resolved.outerGroove, resolved.ballDiameter)
  const made = ballRing(resolved, 2 * (1 - seat.perBallDiameter))
  if (!made.ok) return made
  const ring = made.value
  const { pitchRadius, gapPerPitchRadius: perRadius } = ring
  return ok({
    ...ring,
    gapPerGrooveDepth: perRadius * seat.perGrooveDepth,
    // On the pitch circle, which itself stands half a ball's growth and the seat's change further in.
    gapPerBallDiameter: ring.gapPerBallDiameter + perRadius * (seat.perBallDiameter - 1 / 2),
    outerRing: outerRingRound(pitchRadius, resolved),
  })
}
