import { type BallRing, ballRing } from '#shared/bearing/ball-ring.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { FootstepInput } from './input.ts'
import { type ResolvedFootstep, resolveFootstep } from './resolve.ts'

interface Cup {
  /** The balls touch the inside: their centres stand half a ball within it. */
  readonly insideDiameter: Mm
  readonly outsideDiameter: Mm
  readonly boreDiameter: Mm
}

export interface FootstepBearing extends BallRing {
  readonly resolved: ResolvedFootstep
  readonly cup: Cup
  /** From under the cup to the top of the balls. */
  readonly height: Mm
}

/** Every size of a footstep, or all reasons at once why there is none. */
export function footstepOf(input: FootstepInput): Result<FootstepBearing, readonly Refusal[]> {
  const resolution = resolveFootstep(input)
  if (!resolution.ok) return resolution
  const ring = ballRing(resolution.value, 2)
  if (!ring.ok) return ring
  const { resolved, pitchRadius } = ring.value
  const { ballDiameter, floor, wall } = resolved
  const insideDiameter = mm(2 * pitchRadius + ballDiameter)
  const insideBalls = mm(2 * pitchRadius - ballDiameter)
  if (!(input.bore < insideBalls)) {
    return fail([{ code: 'bore-meets-groove', path: '/bore', given: input.bore, below: insideBalls }])
  }
  const cup = { insideDiameter, outsideDiameter: mm(insideDiameter + 2 * wall), boreDiameter: input.bore }
  return ok({ ...ring.value, cup, height: mm(floor + ballDiameter) })
}
