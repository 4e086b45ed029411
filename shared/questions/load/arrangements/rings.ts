import { type BearingByArrangement, echoedBearingFor } from '#shared/bearing/arrangements.ts'
import { type Refused, type RingName, refusedDesign } from '#shared/bearing/refusal.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import {
  type LoadByBall,
  loadWhenBallCarries,
  type SharedLoad,
  type Sharing,
  sharedByBalls,
  sharedByMany,
} from '#shared/contact/load-distribution.ts'
import { GRAVITY } from '#shared/contact/turntable.ts'
import { type ContactWood, contactWood } from '#shared/data/contact-woods.ts'
import { withdrawalPerInch } from '#shared/data/wood-screws.ts'
import { NEWTONS_PER_LBF } from '#shared/data/wood-strength.ts'
import { isPlain } from '#shared/geometry/groove.ts'
import { type CheckedLoad, woodFigures } from '#shared/questions/load/checked-load.ts'
import { RADIAL_LOAD_FIELDS } from '#shared/questions/load/fields.ts'
import { frictionOf, type Spun, startingTorque } from '#shared/questions/load/friction.ts'
import { type LoadCheckInput, type ResolvedLoad, resolveLoad } from '#shared/questions/load/input.ts'
import { type Carrying, type Limit, limitAt, markDepth, workingLoads } from '#shared/questions/load/limits.ts'
import {
  type BallSeat,
  ballBody,
  centreToTouch,
  grooveSeat,
  loadThatDents,
  type SeatLoad,
  seatsStiffness,
  seatUnder,
  substanceOf,
} from '#shared/questions/load/seat-load.ts'
import {
  ballMass,
  handSpeed,
  lowestFirst,
  outwardForce,
  ownPull,
  SHARED_SPEED_REASONS,
  type SpeedLimits,
  sharedSpeedLimits,
  splittingSpeed,
  type TurnRatios,
  turnRatios,
} from '#shared/questions/load/speeds.ts'
import { findLoadWarnings, type LoadWarning } from '#shared/questions/load/warning.ts'
import { ok, type Result } from '#shared/result.ts'
import { mm } from '#shared/units/length.ts'
import { trackSeat } from './track-seat.ts'

const RINGS = ['radial', 'roller', 'caged'] as const

export const RING_SPEED_REASONS = [...SHARED_SPEED_REASONS, 'joint-opens', 'ring-splits'] as const
export type RingSpeedReason = (typeof RING_SPEED_REASONS)[number]

/** The effect of a load and a speed on two rings. */
export interface RingLoadCheck extends CheckedLoad<RingName, RingSpeedReason> {
  readonly load: ResolvedLoad & { readonly newtons: number }
  readonly bearing: BearingByArrangement[(typeof RINGS)[number]]
  readonly sharing: {
    /** A ball right under the load. */
    readonly underBall: LoadByBall
    /** Two balls astride it. */
    readonly astride: LoadByBall
    readonly byIntegral: SharedLoad
  }
  readonly outerRing: SeatLoad
  readonly innerRing: SeatLoad
  readonly ratios: TurnRatios
  readonly spin: SpinLoads
  /** The outer groove at the requested speed. */
  readonly spun?: SeatLoad
  readonly warnings: readonly LoadWarning<RingSpeedReason>[]
}

/**
 * How much does it carry, and how fast may it turn? The load is shared by the balls at rest as elastic contacts share it, with the
 * play that there is; what the wood gives beyond that spreads the load further, so that the most loaded ball is not underrated.
 * An estimate for light work: averages of clear wood, one stiffness, no shocks.
 *
 * @returns the check, or every reason why there is no such bearing
 */
export function ringLoadCheck(input: LoadCheckInput): Result<RingLoadCheck, Refused<never>> {
  const made = echoedBearingFor({ name: 'load-check', serves: RINGS }, input.design)
  if (!made.ok) return { ok: false, error: refusedDesign(made.error) }
  const bearing = made.value
  const { resolved } = bearing
  const load = resolveLoad(input, resolved.input.balls.material === 'wood')
  const { outer, inner, sharing, carrying, ruin } = seated(bearing, load)
  const underBall = sharedByBalls(load.radialLoad, sharing, 0)
  const astride = sharedByBalls(load.radialLoad, sharing, 1 / 2)
  const most = Math.max(underBall.most, astride.most)
  const [outerRing, innerRing] = [seatUnder(outer, most), seatUnder(inner, most)]
  const ratios = turnRatios(rollingRadii(bearing, outer, inner), resolved.input.balls.count, load.turning)
  const spin = spinLoads(bearing, load, ratios)
  const limits = speedLimits(bearing, load, { ratios, spin, outerDent: loadThatDents(outer, ruin.depth, 1) })
  const hand = handSpeed(limits)
  const pressing = underBall.each.reduce((sum, each) => sum + each, 0)
  const { speed } = load
  const mark = markDepth(resolved.ballDiameter, load.dentFraction)
  const check: Omit<RingLoadCheck, 'warnings'> = {
    load: { ...load, newtons: load.radialLoad },
    bearing,
    most,
    sharing: { underBall, astride, byIntegral: sharedByMany(load.radialLoad, sharing) },
    seats: [
      { part: 'outerRing', seat: outerRing },
      { part: 'innerRing', seat: innerRing },
    ],
    outerRing,
    innerRing,
    ...woodFigures(load, outer),
    workingLoad: workingLoad(bearing, workingLoads(carrying, mark), { sharing, ratios, hand }),
    firstMark: limitAt(carrying, mark),
    ruin,
    ratios,
    spin,
    ...(speed === undefined ? {} : { spun: seatUnder(outer, spin.ballForce * speed * speed) }),
    friction: frictionOf(resolved, ratios, pressing, {
      hand,
      spun: spunOuterRing(bearing, load, pressing / load.radialLoad),
      spunRatios: turnRatios(rollingRadii(bearing, outer, inner), resolved.input.balls.count, 'outer-ring'),
    }),
    handTurned: hand,
    speedLimits: limits,
  }
  const { outerRing: outside, innerRing: inside } = bearing
  const grooveWidths = { outerRing: outside.grooveWidth, innerRing: inside.grooveWidth }
  const loaded = { check, design: resolved.input, path: '/radialLoad', grooveWidths }
  return ok({ ...check, warnings: findLoadWarnings<RingSpeedReason>(loaded, sharingWarnings(check)) })
}

/** The load fields that only this check takes. */
export const RING_NAMES = Object.keys(RADIAL_LOAD_FIELDS) as readonly (keyof typeof RADIAL_LOAD_FIELDS)[]

/** How the balls of a bearing sit in its rings, how they share a load, and the load that ruins it. */
interface Seated {
  readonly outer: BallSeat
  readonly inner: BallSeat
  readonly sharing: Sharing
  readonly carrying: Carrying<RingName>
  readonly ruin: Limit<RingName>
}

export function seated(bearing: RingPair, load: ResolvedLoad): Seated {
  const [outer, inner] = [ringSeat(bearing, 'outerRing', load), ringSeat(bearing, 'innerRing', load)]
  const { resolved, radialInternalClearance: clearance } = bearing
  const { exponent } = outer
  const sharing = {
    count: resolved.input.balls.count,
    exponent,
    stiffness: seatsStiffness(outer, inner),
    clearance,
  }
  const carrying: Carrying<RingName> = {
    seats: [
      { part: 'innerRing', seat: inner },
      { part: 'outerRing', seat: outer },
    ],
    loadWhen: (ballLoad) => loadWhenBallCarries(ballLoad, sharing),
  }
  return { outer, inner, sharing, carrying, ruin: limitAt(carrying, mm(load.dentFraction * resolved.ballDiameter)) }
}

/**
 * The seat of a ball in one ring's groove, or of a roller on its track. In the plane of rolling ball and ring curve together as
 * R / (Rc rw), Rc the radius at which they touch: 1/rw + 1/Rc inside, 1/rw − 1/Rc outside, where the ball sits on the bottom.
 */
function ringSeat(bearing: RingPair, ring: RingName, load: ResolvedLoad): BallSeat {
  const { ballDiameter, outerGroove, innerGroove } = bearing.resolved
  const groove = ring === 'outerRing' ? outerGroove : innerGroove
  const out = ring === 'outerRing' ? 1 : -1
  const contactRadius = mm(bearing.pitchRadius + out * centreToTouch(groove, ballDiameter))
  const rolling = bearing.pitchRadius / (contactRadius * (ballDiameter / 2))
  const substance = substanceOf(bearing, load)
  return isPlain(groove)
    ? trackSeat(bearing, ring, { contactRadius, rolling }, substance, load)
    : grooveSeat({ groove, ballDiameter, contactRadius, rolling }, substance)
}

/** The radii at which the balls roll, for `turnRatios`. */
const rollingRadii = ({ pitchRadius }: RingPair, outer: BallSeat, inner: BallSeat) => ({
  outer: outer.contactRadius,
  pitch: pitchRadius,
  inner: inner.contactRadius,
})

/** All at one turn a minute: each goes with the square of the speed. */
interface SpinLoads {
  /** One ball on the outer groove [N]. */
  readonly ballForce: number
  /** Largest pull round either ring [MPa]. */
  readonly rimStress: number
}

/**
 * The effect of spinning. A ball presses on the outer groove by m ω² R, ω of the ball set; that press, Z F / 2π, is borne by the wood
 * behind the groove, as wide as the ring. A ring that turns pulls itself apart besides.
 */
function spinLoads(bearing: RingPair, load: ResolvedLoad, { ballSet }: TurnRatios): SpinLoads {
  const { outerRing: outer, innerRing: inner, resolved, pitchRadius } = bearing
  const wood = contactWood(load.wood)
  const ballForce = outwardForce(ballMass(resolved, ballBody(bearing, load)), pitchRadius, ballSet)
  const press = (resolved.input.balls.count * ballForce) / (2 * Math.PI * outer.wall * outer.width)
  const own =
    load.turning === 'outer-ring'
      ? press + ownPull(wood, outer.landDiameter, outer.outsideDiameter)
      : ownPull(wood, inner.boreDiameter, inner.landDiameter)
  return { ballForce, rimStress: Math.max(press, own) }
}

/** The screws of a split ring, if they are the fewest and the smallest: so many, with half an inch of thread. Common practice, no source. */
const JOINT = { screws: 4, thread: 1 / 2, diameter: 0.112 } as const

/** Force with which the screws hold the halves of a split ring of this wood together [N]. */
const jointHolds = ({ specificGravity }: ContactWood): number =>
  JOINT.screws * JOINT.thread * withdrawalPerInch(specificGravity, JOINT.diameter) * NEWTONS_PER_LBF
/** Balls wedge the halves of a split ring apart with no more than this part of what they press outward. Derived here, at 45°. */
const WEDGE = 1 / 2

function speedLimits(
  bearing: RingPair,
  load: ResolvedLoad,
  { ratios, spin, outerDent }: { readonly ratios: TurnRatios; readonly spin: SpinLoads; readonly outerDent: number },
): SpeedLimits<RingSpeedReason> {
  const { resolved, radialInternalClearance: play } = bearing
  const wedged = WEDGE * resolved.input.balls.count * spin.ballForce
  return lowestFirst<RingSpeedReason>([
    ...sharedSpeedLimits(bearing, ratios, { play, ballLoad: outerDent, atOneTurn: spin.ballForce }),
    { reason: 'ring-splits', speed: splittingSpeed(contactWood(load.wood), spin.rimStress) },
    ...(resolved.split === 'none'
      ? []
      : [{ reason: 'joint-opens', speed: Math.sqrt(jointHolds(contactWood(load.wood)) / wedged) } as const]),
  ])
}

function workingLoad(
  { resolved, radialInternalClearance: clearance }: RingPair,
  loads: RingLoadCheck['workingLoad']['loads'],
  { sharing, ratios, hand }: { readonly sharing: Sharing; readonly ratios: TurnRatios; readonly hand: number },
): RingLoadCheck['workingLoad'] {
  const { load } = loads.slowHand
  const [under, astride] = [sharedByBalls(load, sharing, 0), sharedByBalls(load, sharing, 1 / 2)]
  const pressing = under.each.reduce((sum, each) => sum + each, 0)
  return {
    loads,
    gives: mm(Math.max(under.displacement, astride.displacement) - clearance / 2),
    startingTorque: startingTorque(resolved, ratios, pressing),
    rumble: {
      height: mm(Math.abs(under.displacement - astride.displacement)),
      frequency: (ratios.outerPasses * hand) / 60,
    },
  }
}

const TO_KG = 1e-9

/** The outer ring spun on the inner one, which the other hand holds. */
function spunOuterRing(
  { outerRing: { outsideDiameter, landDiameter, width } }: RingPair,
  load: ResolvedLoad,
  share: number,
): Spun {
  const across = outsideDiameter * outsideDiameter
  const hole = landDiameter * landDiameter
  const mass = (Math.PI / 4) * (across - hole) * width * contactWood(load.wood).density * TO_KG
  return { inertia: (mass * (across + hole)) / 8, pressing: (share * mass * GRAVITY) / 1000 }
}

/** Stribeck's allowance for play, 5 Fr / Z: beyond it a ball carries more than is usual. From memory. */
const USUAL_SHARE = 5

function sharingWarnings({
  sharing,
  load,
  bearing,
}: Pick<RingLoadCheck, 'sharing' | 'load' | 'bearing'>): readonly LoadWarning<never>[] {
  const { count } = bearing.resolved.input.balls
  const share = sharing.underBall.most / load.radialLoad
  if (!(share * count > USUAL_SHARE && count > USUAL_SHARE)) return []
  const facts = { code: 'one-ball-carries', share, play: bearing.radialInternalClearance } as const
  return [{ severity: 'note', path: '/design/radialInternalClearance', facts }]
}
