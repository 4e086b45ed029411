import { axialPlay, tilt, tiltOnRollers } from '#shared/geometry/axial-play.ts'
import { type EccentricFilling, eccentricFilling } from '#shared/geometry/eccentric-filling.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { finishRefusals } from './finish.ts'
import type { Refusal, RingName } from './refusal.ts'
import { depthPath, outsidePath, type ResolvedRings } from './resolve.ts'
import { type InnerRing, innerRing, type OuterRing, outerRing, type Ring } from './rings.ts'

/** Two rings round what rolls on a pitch circle, whatever keeps the balls apart. Lengths in millimetres, tilt in degrees. */
export interface RingPair {
  readonly resolved: ResolvedRings
  readonly pitchRadius: Mm
  readonly outerRing: OuterRing
  readonly innerRing: InnerRing
  readonly landGap: Mm
  /** Land gap less half the play: what is left where the inner ring has moved all the way to one side. */
  readonly leastLandGap: Mm
  readonly radialInternalClearance: Mm
  readonly axialPlay: Mm
  readonly tilt: number
  readonly eccentricFilling: EccentricFilling
}

/** The outer ring laid round balls that run on a pitch circle. */
export const outerRingRound = (
  pitchRadius: Mm,
  {
    ballDiameter,
    outerGroove,
    outside,
    width,
  }: Pick<ResolvedRings, 'ballDiameter' | 'outerGroove' | 'outside' | 'width'>,
): OuterRing => outerRing(pitchRadius, ballDiameter, outerGroove, outside, width)

/** Why the outer ring has no wood outside; nothing where it has. */
export function outerWallRefusals({ input }: Pick<ResolvedRings, 'input'>, ring: OuterRing): readonly Refusal[] {
  if (ring.wall > 0) return []
  const path = outsidePath(input, 'outerRing')
  return [{ code: 'wall-below-zero', path, given: ring.outsideDiameter, above: ring.grooveBottomDiameter }]
}

/**
 * The inner ring is laid inside the balls that run in the outer one, half the play further in.
 *
 * @param refused what the arrangement itself refuses
 * @returns the pair, or every reason at once why it cannot be
 */
export function ringPair(
  resolved: ResolvedRings,
  pitchRadius: Mm,
  outer: OuterRing,
  refused: readonly Refusal[] = [],
): Result<RingPair, readonly Refusal[]> {
  const inner = innerRingIn(resolved, pitchRadius)
  const faults = [
    ...refused,
    ...playRefusals(resolved, outer, inner),
    ...finishFaults(resolved, outer, inner),
    ...roomRefusals(resolved, outer, inner),
  ]
  if (faults.length > 0) return fail(faults)
  const { ballDiameter, outerGroove, innerGroove, radialInternalClearance, traits } = resolved
  const landGap = landGapOf(outer, inner)
  // Plain tracks let go along the axis: what stops there, stops at the cheeks.
  const isOpen = traits.raceway === 'track'
  const play = isOpen
    ? mm(outer.width - inner.width)
    : axialPlay({ outer: outerGroove, inner: innerGroove }, ballDiameter, radialInternalClearance)
  const lean = tilt(play, pitchRadius)
  return ok({
    resolved,
    pitchRadius,
    outerRing: outer,
    innerRing: inner,
    landGap,
    leastLandGap: mm(landGap - radialInternalClearance / 2),
    radialInternalClearance,
    axialPlay: play,
    tilt: isOpen ? Math.min(lean, tiltOnRollers(radialInternalClearance, inner.width)) : lean,
    eccentricFilling: eccentricFilling({
      ballDiameter,
      pitchDiameter: mm(2 * pitchRadius),
      landGap,
      play: radialInternalClearance,
    }),
  })
}

function innerRingIn(resolved: ResolvedRings, pitchRadius: Mm): InnerRing {
  const { ballDiameter, innerGroove, radialInternalClearance, input, width } = resolved
  const between = input.balls.length ?? width
  return innerRing(mm(pitchRadius - radialInternalClearance / 2), ballDiameter, innerGroove, input.bore, between)
}

function playRefusals(resolved: ResolvedRings, outer: OuterRing, inner: InnerRing): readonly Refusal[] {
  const { radialInternalClearance: given, traits } = resolved
  const below = mm(2 * Math.min(outer.seatDepth, inner.seatDepth))
  return traits.raceway === 'track' || given < below
    ? []
    : [{ code: 'play-lets-balls-out', path: '/radialInternalClearance', given, below }]
}

const finishFaults = ({ finishAllowance, traits }: ResolvedRings, outer: OuterRing, inner: InnerRing) =>
  finishRefusals(finishAllowance, traits.raceway === 'groove' ? [outer.grooveDepth, inner.grooveDepth] : [], [
    inner.width,
    outer.wall,
    inner.wall,
  ])

function roomRefusals(resolved: ResolvedRings, outer: OuterRing, inner: InnerRing): readonly Refusal[] {
  const refusals = [...outerWallRefusals(resolved, outer)]
  if (!(inner.grooveBottomDiameter > 0)) {
    refusals.push({ code: 'no-room-inside', path: '/balls/count', ballCount: resolved.input.balls.count })
  } else if (!(inner.wall > 0)) {
    refusals.push({
      code: 'bore-meets-groove',
      path: '/bore',
      given: inner.boreDiameter,
      below: inner.grooveBottomDiameter,
    })
  }
  const landGap = landGapOf(outer, inner)
  if (!(landGap > 0)) {
    const path = depthPath(resolved.input, deeperRing({ outerRing: outer, innerRing: inner }))
    refusals.push({ code: 'lands-overlap', path, overlap: mm(-landGap) })
  }
  return refusals
}

const landGapOf = (outer: Ring, inner: Ring): Mm => mm((outer.landDiameter - inner.landDiameter) / 2)

/** The ring whose groove is the deeper: the one to make shallower. */
export const deeperRing = ({ outerRing: outer, innerRing: inner }: Pick<RingPair, RingName>): RingName =>
  outer.seatDepth > inner.seatDepth ? 'outerRing' : 'innerRing'

/** Width of the wood on each side of a groove. */
export const shoulder = (pair: RingPair, ring: RingName): Mm => mm((pair.resolved.width - pair[ring].grooveWidth) / 2)
