import { axialPlay, tilt, tiltOnRollers } from '#shared/geometry/axial-play.ts'
import { type EccentricFilling, eccentricFilling } from '#shared/geometry/eccentric-filling.ts'
import { grooveWidth } from '#shared/geometry/groove.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { nameOf, type Question, traitsOf } from './arrangement.ts'
import type { Assembly } from './assembly.ts'
import { beyondBounds } from './bounds.ts'
import * as defaults from './defaults.ts'
import type { DesignInput } from './design-input.ts'
import { type OuterSide, outerSideOf } from './outer-side.ts'
import type { Refusal, RingName } from './refusal.ts'
import { type InnerRing, innerRing, type Ring } from './rings.ts'
import { depthPath } from './settle.ts'

/** A bearing in figures: finished sizes and what follows from them. Lengths in millimetres, tilt in degrees. */
export interface Bearing extends OuterSide {
  readonly innerRing: InnerRing
  readonly landGap: Mm
  /** Land gap less half the play: what is left where the inner ring has moved all the way to one side. */
  readonly leastLandGap: Mm
  readonly radialInternalClearance: Mm
  readonly axialPlay: Mm
  readonly tilt: number
  readonly assembly: Assembly
  readonly eccentricFilling: EccentricFilling
  /** Where nothing else holds what rolls: beside plain tracks. */
  readonly cheeks?: Cheeks
}

/** Discs screwed on both sides of an outer ring: they keep the rollers, and the inner ring between them, from walking out. */
interface Cheeks {
  readonly outsideDiameter: Mm
  /** Within the inner ring's wood, clear of the bore. */
  readonly holeDiameter: Mm
  readonly thickness: Mm
}

/**
 * Every size of the bearing that an input asks for, or all reasons at once why there is none.
 * The inner ring is laid inside the balls of the outer one, half the play further in.
 */
export function bearingOf(input: DesignInput): Result<Bearing, readonly Refusal[]> {
  const outer = outerSideOf(input)
  if (!outer.ok) return outer
  const inner = innerRingIn(outer.value)
  const faults = [...playRefusals(outer.value, inner), ...roomRefusals(outer.value, inner)]
  return faults.length > 0 ? fail(faults) : ok(assembled(outer.value, inner))
}

/** The same for a question that not every arrangement can be asked. */
export function bearingFor(input: DesignInput, question: Question): Result<Bearing, readonly Refusal[]> {
  const unanswered = notAnswered(input, question)
  return unanswered.length > 0 ? fail(unanswered) : bearingOf(input)
}

/**
 * The bearing of a design as a caller sent it: one whose whole input, defaults and all, could be sent again. That is to be
 * asked wherever the whole input is given back.
 */
export function bearingAsked(input: DesignInput, question: Question): Result<Bearing, readonly Refusal[]> {
  const made = bearingFor(input, question)
  if (!made.ok) return made
  const beyond = beyondBounds(made.value.settled.input)
  return beyond.length > 0 ? fail(beyond) : made
}

/** Why a question has no answer of an arrangement; nothing where it has. */
export function notAnswered(input: Pick<DesignInput, 'arrangement'>, question: Question): readonly Refusal[] {
  if (traitsOf(input).answers.includes(question)) return []
  return [{ code: 'not-answered', path: '/arrangement', arrangement: nameOf(input), question }]
}

function innerRingIn({ settled, pitchRadius }: OuterSide): InnerRing {
  const { ballDiameter, innerGroove, radialInternalClearance, input, width } = settled
  const between = input.balls.length ?? width
  return innerRing(mm(pitchRadius - radialInternalClearance / 2), ballDiameter, innerGroove, input.bore, between)
}

/** With more play than this, in roller diameters, rollers wedge over one another instead of running side by side. Common practice, no source. */
const MOST_PLAY_OF_ROLLERS = 1 / 2

function playRefusals({ settled, outerRing: outer }: OuterSide, inner: InnerRing): readonly Refusal[] {
  const { radialInternalClearance: play, finishAllowance: finish } = settled
  const refusals: Refusal[] = []
  const path = '/radialInternalClearance'
  if (settled.traits.raceway === 'groove') {
    const climbs = mm(2 * Math.min(outer.seatDepth, inner.seatDepth))
    if (!(play < climbs)) refusals.push({ code: 'play-lets-balls-out', path, given: play, below: climbs })
    const shallower = mm(Math.min(outer.grooveDepth, inner.grooveDepth))
    if (!(finish < shallower)) {
      refusals.push({ code: 'finish-fills-groove', path: '/finishAllowance', given: finish, below: shallower })
    }
  } else {
    const climbs = mm(MOST_PLAY_OF_ROLLERS * settled.ballDiameter)
    if (!(play < climbs)) refusals.push({ code: 'play-lets-rollers-climb', path, given: play, below: climbs })
  }
  const thinnest = mm(Math.min(inner.width, outer.wall, inner.wall) / 2)
  if (thinnest > 0 && !(finish < thinnest)) {
    refusals.push({ code: 'finish-leaves-no-wood', path: '/finishAllowance', given: finish, below: thinnest })
  }
  return refusals
}

function roomRefusals({ outerRing: outer, settled }: OuterSide, inner: InnerRing): readonly Refusal[] {
  const refusals: Refusal[] = []
  if (!(outer.wall > 0)) {
    const [given, above] = [outer.outsideDiameter, outer.grooveBottomDiameter]
    const path =
      settled.input.outerRing?.outsideDiameter === undefined ? '/outerRing/wall' : '/outerRing/outsideDiameter'
    refusals.push({ code: 'wall-below-zero', path, given, above })
  }
  if (!(inner.grooveBottomDiameter > 0)) {
    refusals.push({ code: 'no-room-inside', path: '/balls/count', ballCount: settled.input.balls.count })
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
    const path = depthPath(settled.input, deeperRing({ outerRing: outer, innerRing: inner }))
    refusals.push({ code: 'lands-overlap', path, overlap: mm(-landGap) })
  }
  return refusals
}

function assembled(outer: OuterSide, inner: InnerRing): Bearing {
  const { ballDiameter, outerGroove, innerGroove, assembly, radialInternalClearance } = outer.settled
  const landGap = landGapOf(outer.outerRing, inner)
  const isOpen = outer.settled.traits.raceway === 'track'
  const play = isOpen
    ? mm(outer.outerRing.width - inner.width)
    : axialPlay({ outer: outerGroove, inner: innerGroove }, ballDiameter, radialInternalClearance)
  return {
    ...outer,
    innerRing: inner,
    landGap,
    leastLandGap: mm(landGap - radialInternalClearance / 2),
    radialInternalClearance,
    axialPlay: play,
    tilt: isOpen
      ? Math.min(tilt(play, outer.pitchRadius), tiltOnRollers(radialInternalClearance, inner.width))
      : tilt(play, outer.pitchRadius),
    assembly,
    eccentricFilling: eccentricFilling(ballDiameter, mm(2 * outer.pitchRadius), landGap),
    ...(isOpen ? { cheeks: cheeksOf(outer, inner) } : {}),
  }
}

/** The hole stands halfway through the inner ring's wood: it holds the ring's sides, and clears what goes through the bore. */
const cheeksOf = ({ outerRing: outer, settled }: OuterSide, inner: InnerRing): Cheeks => ({
  outsideDiameter: outer.outsideDiameter,
  holeDiameter: mm((inner.boreDiameter + inner.landDiameter) / 2),
  thickness: mm(defaults.CHEEK_THICKNESS * settled.ballDiameter),
})

const landGapOf = (outer: Ring, inner: Ring): Mm => mm((outer.landDiameter - inner.landDiameter) / 2)

/** The ring whose groove is the deeper: the one to make shallower. */
export const deeperRing = ({ outerRing: outer, innerRing: inner }: Pick<Bearing, RingName>): RingName =>
  outer.seatDepth > inner.seatDepth ? 'outerRing' : 'innerRing'

/** Width of the wood on each side of a groove. */
export function shoulder({ settled }: Bearing, ring: RingName): Mm {
  const groove = ring === 'outerRing' ? settled.outerGroove : settled.innerGroove
  return mm((settled.width - grooveWidth(groove)) / 2)
}
