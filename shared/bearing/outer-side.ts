import { type Gauge, plugGauge } from '#shared/geometry/gauge.ts'
import {
  ballGap,
  closedPitchRadius,
  gapPerBallDiameterAtPitchRadius,
  gapPerPitchRadius,
  leastPitchRadius,
  pitchRadiusForGap,
} from '#shared/geometry/ring-of-balls.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { DesignInput } from './design-input.ts'
import type { Refusal } from './refusal.ts'
import { type OuterRing, type Outside, outerRing } from './rings.ts'
import { LARGEST_GAP, type Settled, settle } from './settle.ts'

/** The outer ring with its balls: what a maker cuts first, and all that a ball gap depends on. */
export interface OuterSide {
  readonly settled: Settled
  readonly closedPitchRadius: Mm
  readonly pitchRadius: Mm
  readonly ballGap: Mm
  /** d(ball gap) / d(pitch radius) here. */
  readonly gapPerPitchRadius: number
  /** The same by depth of groove cut, through the seat. */
  readonly gapPerGrooveDepth: number
  /** All balls growing together in the outer groove as it is. */
  readonly gapPerBallDiameter: number
  readonly outerRing: OuterRing
  readonly gauge: Gauge
}

/**
 * The outer ring of an input: the pitch radius is the one that leaves the asked ball gap exactly, and the ring is laid
 * round the balls that run on it. The bore and the inner ring are not looked at.
 *
 * @returns the outer side, or every reason at once why there is none
 */
export function outerSideOf(input: DesignInput): Result<OuterSide, readonly Refusal[]> {
  const settling = settle(input)
  if (!settling.ok) return settling
  const refused = gapRefusals(settling.value)
  return refused.length > 0 ? fail(refused) : ok(laidOut(settling.value))
}

function gapRefusals(settled: Settled): readonly Refusal[] {
  const { ballGap: gap, minBallGap: min, maxBallGap: max, ballDiameter, assumed } = settled
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

function laidOut(settled: Settled): OuterSide {
  const { input, ballDiameter, outerGroove, width } = settled
  const ballCount = input.balls.count
  const pitchRadius = pitchRadiusForGap(settled.ballGap, ballDiameter, ballCount)
  const perRadius = gapPerPitchRadius(pitchRadius, ballDiameter, ballCount)
  const perBallAtPitch = gapPerBallDiameterAtPitchRadius(pitchRadius, ballDiameter, ballCount)
  const seat = seatIn(outerGroove, ballDiameter)
  return {
    settled,
    closedPitchRadius: closedPitchRadius(ballDiameter, ballCount),
    pitchRadius,
    ballGap: settled.ballGap,
    gapPerPitchRadius: perRadius,
    gapPerGrooveDepth: perRadius * seat.perGrooveDepth,
    gapPerBallDiameter: perBallAtPitch + perRadius * (seat.perBallDiameter - 1 / 2),
    outerRing: outerRing(pitchRadius, ballDiameter, outerGroove, outsideOf(input), width),
    gauge: plugGauge({ pitchRadius, ballDiameter, ballCount }, settled, {
      gapPerPitchRadius: perRadius,
      gapPerBallDiameterAtPitchRadius: perBallAtPitch,
    }),
  }
}

/** How a settled input says the outside: `settle` leaves one of both ways. */
function outsideOf({ outerRing: ring }: DesignInput): Outside {
  return ring?.outsideDiameter === undefined
    ? { wall: ring?.wall ?? mm(0), roundTo: ring?.roundOutsideDiameterTo ?? null }
    : { outsideDiameter: ring.outsideDiameter }
}

/** The ball gap at another pitch radius, or undefined where the balls but one do not even go in. */
export function gapAt({ settled: { ballDiameter, input } }: OuterSide, pitchRadius: Mm): Mm | undefined {
  const { count } = input.balls
  return pitchRadius >= leastPitchRadius(ballDiameter, count) ? ballGap(pitchRadius, ballDiameter, count) : undefined
}
