import { type Gauge, type PlugGaps, plugGauge } from '#shared/geometry/gauge.ts'
import {
  ballGap,
  closedPitchRadius,
  gapPerBallDiameterAtPitchRadius,
  gapPerPitchRadius,
  leastPitchRadius,
  pitchRadiusForGap,
} from '#shared/geometry/ring-of-balls.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { Refusal } from './refusal.ts'
import { LARGEST_GAP, type ResolvedBallRing } from './resolve.ts'

/** A ring of balls on its pitch circle, whatever holds them there. */
export interface BallRing {
  readonly resolved: ResolvedBallRing
  readonly closedPitchRadius: Mm
  readonly pitchRadius: Mm
  readonly ballGap: Mm
  /** d(ball gap) / d(pitch radius) here. */
  readonly gapPerPitchRadius: number
  /** All balls growing together in what is cut already. */
  readonly gapPerBallDiameter: number
  readonly gauge: Gauge
  /** How much smaller the circle inside the balls is per diameter of a ball, in diameter over diameter, the groove staying as it is. */
  readonly insidePerBallDiameter: number
}

/**
 * The ring of balls that leaves the asked gap exactly, or every reason at once why there is none.
 *
 * @param insidePerBallDiameter what the seat of the balls makes it; 2 on the bottom of a ring's groove
 */
export function ballRing<S extends ResolvedBallRing>(
  resolved: S,
  insidePerBallDiameter: number,
): Result<BallRing & { readonly resolved: S }, readonly Refusal[]> {
  const refused = gapRefusals(resolved)
  return refused.length > 0 ? fail(refused) : ok({ resolved, ...onPitchCircle(resolved), insidePerBallDiameter })
}

/** Why no ring leaves the gaps that were asked. */
function gapRefusals(resolved: ResolvedBallRing): readonly Refusal[] {
  const { ballGap: gap, minBallGap: min, maxBallGap: max, ballDiameter, assumed } = resolved
  const below = mm(LARGEST_GAP * ballDiameter)
  const gaps = [
    ['/minBallGap', min],
    ['/ballGap', gap],
    ['/maxBallGap', max],
  ] as const
  const tooWide = gaps
    .filter(([path, given]) => !(given < below || assumed.includes(path)))
    .map(([path, given]): Refusal => ({ code: 'gap-takes-another-ball', path, given, below }))
  if (tooWide.length > 0) return tooWide
  if (!(min <= max)) return [{ code: 'gap-band-reversed', path: '/minBallGap', min, max }]
  return gap >= min && gap <= max ? [] : [{ code: 'gap-outside-band', path: '/ballGap', given: gap, min, max }]
}

/** The pitch circle that leaves the asked gap exactly, with its plug. Balls that grow on it close the gap by −Z at closure. */
function onPitchCircle(resolved: ResolvedBallRing): Omit<BallRing, 'resolved' | 'insidePerBallDiameter'> {
  const { ballDiameter } = resolved
  const ballCount = resolved.input.balls.count
  const pitchRadius = pitchRadiusForGap(resolved.ballGap, ballDiameter, ballCount)
  const perRadius = gapPerPitchRadius(pitchRadius, ballDiameter, ballCount)
  const perBall = gapPerBallDiameterAtPitchRadius(pitchRadius, ballDiameter, ballCount)
  return {
    closedPitchRadius: closedPitchRadius(ballDiameter, ballCount),
    pitchRadius,
    ballGap: resolved.ballGap,
    gapPerPitchRadius: perRadius,
    gapPerBallDiameter: perBall,
    gauge: plugGauge({ pitchRadius, ballDiameter, ballCount }, plugGaps(resolved), {
      gapPerPitchRadius: perRadius,
      gapPerBallDiameterAtPitchRadius: perBall,
    }),
  }
}

/** The gaps that the two plugs stand for. A groove is deep enough only when the last ball goes in, whatever the smallest gap allowed. */
export const plugGaps = ({ minBallGap, maxBallGap, assembly }: ResolvedBallRing): PlugGaps => ({
  go: mm(Math.max(minBallGap, assembly.assemblyGap)),
  noGo: maxBallGap,
})

/**
 * The gaps between which a ring that was cut to the rule is as good as the one that was designed: from go to no-go. Where the aim
 * itself lies below what the last ball needs, which has a warning of its own, from the smallest gap allowed.
 */
export function gapLimits(resolved: ResolvedBallRing): { readonly least: Mm; readonly most: Mm } {
  const { go, noGo } = plugGaps(resolved)
  return { least: resolved.ballGap >= go ? go : resolved.minBallGap, most: noGo }
}

/** Which gaps are good: from `free` to `most` without a doubt, and from `min` on if the last ball goes in. */
export function goodGaps(resolved: ResolvedBallRing): { readonly min: Mm; readonly free: Mm; readonly most: Mm } {
  const { go, noGo } = plugGaps(resolved)
  return { min: resolved.minBallGap, free: go, most: noGo }
}

/** The ball gap at another pitch radius, or undefined where the balls but one do not even go in. */
export function gapAt({ resolved: { ballDiameter, input } }: BallRing, pitchRadius: Mm): Mm | undefined {
  const { count } = input.balls
  return pitchRadius >= leastPitchRadius(ballDiameter, count) ? ballGap(pitchRadius, ballDiameter, count) : undefined
}
