import { echoedBearingFor, type ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { InputOf } from '#shared/bearing/field.ts'
import { type Refused, refusedDesign, refusedQuestion } from '#shared/bearing/refusal.ts'
import { farthestHeld, type SharedBeside, sharedBeside } from '#shared/contact/eccentric-load.ts'
import { POINT_CONTACT } from '#shared/contact/load-distribution.ts'
import { GRAVITY, leavingSpeed, rigidLimits, type Turntable } from '#shared/contact/turntable.ts'
import { contactWood } from '#shared/data/contact-woods.ts'
import { type CheckedLoad, woodFigures } from '#shared/questions/load/checked-load.ts'
import { AXIAL_LOAD_FIELDS } from '#shared/questions/load/fields.ts'
import { frictionOf, startingTorque } from '#shared/questions/load/friction.ts'
import { type LoadOptions, type ResolvedLoadOptions, resolveLoadOptions } from '#shared/questions/load/input.ts'
import { type Carrying, limitAt, markDepth, workingLoads } from '#shared/questions/load/limits.ts'
import type { LoadRefusal } from '#shared/questions/load/refusal.ts'
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
  PER_RPM,
  SHARED_SPEED_REASONS,
  type SpeedLimits,
  sharedSpeedLimits,
  splittingSpeed,
  type TurnRatios,
} from '#shared/questions/load/speeds.ts'
import { findLoadWarnings, type LoadWarning } from '#shared/questions/load/warning.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { rounded } from '#shared/units/rounded.ts'
import { givesUnder, loadWhenTallestCarries, type Uneven, unevenLot, unevenUnder } from './uneven-plates.ts'

type AxialLoad = InputOf<typeof AXIAL_LOAD_FIELDS>

/** A turntable, and what it is to carry: all of the load [N], the upper plate included. */
export type PlateLoadCheckInput = LoadOptions &
  Omit<AxialLoad, 'axialLoad'> & { readonly design: Parameters<typeof echoedBearingFor>[1]; readonly axialLoad: number }

/** The load of a turntable with nothing left open but the speed. */
interface ResolvedPlateLoad extends ResolvedLoadOptions {
  readonly axialLoad: number
  readonly offset: Mm
  readonly load: { readonly turnsWithPlate: boolean; readonly height: Mm }
  readonly friction: number
}

/** Dry wood, glass or pottery on smooth wood. Common practice, no source. */
const FRICTION = 0.3

export const PLATE_SPEED_REASONS = [
  ...SHARED_SPEED_REASONS,
  'load-slides-off',
  'plate-pushed-aside',
  'plate-tips',
  'balls-climb-out',
  'plate-splits',
] as const
export type PlateSpeedReason = (typeof PLATE_SPEED_REASONS)[number]

/** The effect of a load and a speed on a turntable. */
export interface PlateLoadCheck extends CheckedLoad<'plates', PlateSpeedReason> {
  readonly load: ResolvedPlateLoad & { readonly newtons: number }
  readonly bearing: ThrustBearing
  readonly sharing: PlateSharing
  /** The most loaded ball, were all of one size. */
  readonly plates: SeatLoad
  /** Absent where the design says that its balls are all of one size. */
  readonly uneven?: Uneven
  readonly ratios: PlateTurnRatios
  /** At one turn a minute. */
  readonly spin: PlateSpinLoads
  /** At the requested speed: a ball on the outer flank of either groove. */
  readonly spun?: SeatLoad
  /** A load set down further out than this tips the plate at rest. */
  readonly tipsBeyond: Mm
  readonly turntable: Turntable
  readonly warnings: readonly LoadWarning<PlateSpeedReason>[]
}

/** How equal balls share the load. */
interface PlateSharing {
  /** The load on each ball [N], from the one nearest to the load round the circle. */
  readonly each: readonly number[]
  /** By how much the plates come together over the middle; below 0 where a load far out lifts it there. */
  readonly approach: Mm
  /** By how much more over the outside on the side of the load than on the other side. */
  readonly lean: Mm
}

/** The load fields that only this check takes. */
export const PLATE_NAMES = Object.keys(AXIAL_LOAD_FIELDS) as readonly (keyof typeof AXIAL_LOAD_FIELDS)[]

/**
 * How much does a turntable carry, and how fast may it turn? The answer of `ringLoadCheck` for a load along the axis, the upper
 * plate included.
 *
 * @returns the check, or every reason why there is no such bearing or no such load
 */
export function plateLoadCheck(input: PlateLoadCheckInput): Result<PlateLoadCheck, Refused<LoadRefusal>> {
  const made = echoedBearingFor({ name: 'load-check', serves: ['thrust'] }, input.design)
  if (!made.ok) return fail(refusedDesign(made.error))
  const bearing = made.value
  const load = resolvePlateLoad(input, bearing)
  const { count } = bearing.resolved.input.balls
  const below = mm(farthestHeld(count) * bearing.pitchRadius)
  if (!(load.offset < below)) {
    return fail(refusedQuestion([{ code: 'load-tips-plate', path: '/offset', given: load.offset, below }]))
  }
  return ok(checked(bearing, load))
}

function resolvePlateLoad(input: PlateLoadCheckInput, { resolved, plate, plateGap }: ThrustBearing): ResolvedPlateLoad {
  const { units, balls } = resolved.input
  return {
    ...resolveLoadOptions(input, balls.material === 'wood'),
    axialLoad: input.axialLoad,
    offset: input.offset ?? mm(0),
    load: {
      turnsWithPlate: input.load?.turnsWithPlate ?? true,
      height: input.load?.height ?? rounded(mm(plateGap / 2 + plate.thickness), units),
    },
    friction: input.friction ?? FRICTION,
  }
}

function checked(bearing: ThrustBearing, load: ResolvedPlateLoad): PlateLoadCheck {
  const { resolved, pitchRadius, plate } = bearing
  const { groove, ballDiameter, input } = resolved
  const { count } = input.balls
  const seat = plateSeat(bearing, load)
  const stiffness = seatsStiffness(seat, seat)
  const under = sharesAt(bearing, load, 0)
  const share = Math.max(...under.shares, ...sharesAt(bearing, load, 0.5).shares)
  const most = share * load.axialLoad
  const lot = resolved.ballScatter > 0 ? unevenLot(bearing, load.offset, { seat, stiffness, share }) : undefined
  const uneven = lot === undefined ? undefined : unevenUnder(lot, load.axialLoad)
  const mark = markDepth(ballDiameter, load.dentFraction)
  const ratios = plateTurnRatios(pitchRadius, centreToTouch(groove, ballDiameter), count)
  const spin = plateSpinLoads(bearing, load, ratios)
  const turntable = turntableOf(bearing, load, stiffness)
  const carrying: Carrying<'plates'> = {
    seats: [{ part: 'plates', seat }],
    loadWhen: (ballLoad) => (lot === undefined ? ballLoad / share : loadWhenTallestCarries(lot, ballLoad)),
  }
  const ruin = limitAt(carrying, mm(load.dentFraction * ballDiameter))
  const limits = speedLimits(bearing, load, { ratios, spin, turntable, ballLoad: loadThatDents(seat, ruin.depth, 1) })
  const hand = handSpeed(limits)
  const { speed } = load
  const plates = seatUnder(seat, most)
  const loads = workingLoads(carrying, mark)
  const check: Omit<PlateLoadCheck, 'warnings'> = {
    load: { ...load, newtons: load.axialLoad },
    bearing,
    most,
    seats: [{ part: 'plates', seat: uneven?.tallest ?? plates }],
    plates,
    sharing: sharing(bearing, load.axialLoad, under, stiffness),
    ...(uneven === undefined ? {} : { uneven }),
    ...woodFigures(load, seat),
    workingLoad: {
      loads,
      gives: mm(
        lot === undefined
          ? Math.max(0, sharing(bearing, loads.slowHand.load, under, stiffness).approach)
          : givesUnder(lot, loads.slowHand.ballLoad),
      ),
      startingTorque: startingTorque(resolved, ratios, loads.slowHand.load),
      rumble: { height: mm(2 * resolved.ballScatter), frequency: (ratios.passes * hand) / 60 },
    },
    firstMark: limitAt(carrying, mark),
    ruin,
    ratios,
    spin,
    ...(speed === undefined ? {} : { spun: seatUnder(seat, (spin.ballForce / 2) * speed * speed) }),
    friction: frictionOf(resolved, ratios, load.axialLoad, {
      hand,
      spunRatios: ratios,
      // the load taken as a disc as large as the plate, over the middle
      spun: {
        inertia: ((load.axialLoad / GRAVITY) * 1000 * plate.outsideDiameter * plate.outsideDiameter) / 8,
        pressing: load.axialLoad,
      },
    }),
    tipsBeyond: mm(pitchRadius * Math.cos(Math.PI / count)),
    turntable,
    handTurned: hand,
    speedLimits: limits,
  }
  const loaded = { check, design: input, path: '/axialLoad', grooveWidths: { plates: plate.grooveWidth } }
  return { ...check, warnings: findLoadWarnings<PlateSpeedReason>(loaded, sharingWarnings(check)) }
}

/**
 * The seat of a ball in the groove of a plate. Along its bottom the groove is a circle that lies flat: its curvature is square to the
 * load, and ball and plate roll on one another as on a plane, 1/rw.
 */
function plateSeat(bearing: ThrustBearing, load: ResolvedLoadOptions): BallSeat {
  const { groove, ballDiameter } = bearing.resolved
  const touch = { groove, ballDiameter, contactRadius: bearing.pitchRadius, rolling: 2 / ballDiameter }
  return grooveSeat(touch, substanceOf(bearing, load))
}

function sharingWarnings({ uneven, load, ruin }: Omit<PlateLoadCheck, 'warnings'>): readonly LoadWarning<never>[] {
  if (uneven === undefined || !(load.axialLoad < uneven.allCarryFrom)) return []
  const { tallest, allCarryFrom } = uneven
  const shallow = tallest.dent !== undefined && tallest.dent <= ruin.depth
  const facts = { code: 'three-carry', ballLoad: tallest.ballLoad, dent: tallest.dent, allCarryFrom } as const
  return [{ severity: shallow ? 'note' : 'risk', path: '/axialLoad', facts }]
}

const sharesAt = ({ pitchRadius, resolved }: ThrustBearing, load: ResolvedPlateLoad, phase: 0 | 0.5): SharedBeside =>
  sharedBeside(resolved.input.balls.count, POINT_CONTACT, load.offset / pitchRadius, phase)

function sharing(
  { pitchRadius, plate }: ThrustBearing,
  load: number,
  { shares, lean, sum }: SharedBeside,
  stiffness: number,
): PlateSharing {
  const root = Math.cbrt(load / (stiffness * sum))
  const nearest = root * root
  return {
    each: shares.map((share) => share * load),
    approach: mm(nearest * (1 - lean)),
    lean: mm(nearest * lean * (plate.outsideDiameter / pitchRadius)),
  }
}

/** The turns of rings, one plate at rest like the other: as many balls pass a point of either. */
export interface PlateTurnRatios extends Pick<TurnRatios, 'ballSet' | 'ballSpin'> {
  readonly passes: number
}

/**
 * Rolling between flat plates, one of which turns: a contact angle of 90° in the usual (1 − γ cos α)/2, (1 − γ² cos² α)/2γ and
 * Z (1 ∓ γ cos α)/2, γ = Dw/Dpw (Harris, chapter 8). The ball set turns half as fast as the plate, and a ball
 * rolls on what lies ρ above its lowest point: R / 2ρ turns. Across the groove it slides a little, which is left out.
 *
 * @param rollingRadius ρ: of the ball, or less where it sits on edges [mm]
 */
export const plateTurnRatios = (pitchRadius: number, rollingRadius: number, ballCount: number): PlateTurnRatios => ({
  ballSet: 1 / 2,
  ballSpin: pitchRadius / (2 * rollingRadius),
  passes: ballCount / 2,
})

/** All at one turn a minute: each goes with the square of the speed. */
interface PlateSpinLoads {
  /** One ball outward [N]: each plate's groove takes half of it, on its outer flank. */
  readonly ballForce: number
  /** Largest pull round the plate that turns: its own, and that of the balls on the wood outside its groove [MPa]. */
  readonly rimStress: number
}

function plateSpinLoads(
  bearing: ThrustBearing,
  load: ResolvedLoadOptions,
  { ballSet }: PlateTurnRatios,
): PlateSpinLoads {
  const { plate, resolved, pitchRadius } = bearing
  const ballForce = outwardForce(ballMass(resolved, ballBody(bearing, load)), pitchRadius, ballSet)
  const press = (resolved.input.balls.count * (ballForce / 2)) / (2 * Math.PI * plate.wall * plate.thickness)
  return { ballForce, rimStress: press + ownPull(contactWood(load.wood), plate.boreDiameter, plate.outsideDiameter) }
}

/** A ball on edges rolls no further across the groove than this part of its radius. */
const LEAST_FREEDOM = 0.001
/** A flank that is steeper is a wall, and holds like one of this angle [radians]. */
const STEEPEST = (85 * Math.PI) / 180

/** Its groove's edge leans by sin β* = w / r; a ball on edges leans over the outer one at w / Rb. */
function turntableOf(bearing: ThrustBearing, load: ResolvedPlateLoad, stiffness: number): Turntable {
  const { resolved, plate, pitchRadius } = bearing
  const { groove, ballDiameter, input } = resolved
  const ballRadius = ballDiameter / 2
  const sine = plate.grooveWidth / 2 / (plate.seat === 'edges' ? ballRadius : groove.radius)
  return {
    count: input.balls.count,
    pitchRadius,
    freedom: Math.max(LEAST_FREEDOM * ballRadius, groove.radius - ballRadius),
    stiffness,
    edgeAngle: Math.min(STEEPEST, Math.asin(Math.min(1, sine))),
    ballMass: ballMass(resolved, ballBody(bearing, load)),
    load: load.axialLoad,
    offset: load.offset,
    height: load.load.height,
    turnsWithPlate: load.load.turnsWithPlate,
  }
}

function speedLimits(
  bearing: ThrustBearing,
  load: ResolvedPlateLoad,
  at: {
    readonly ratios: PlateTurnRatios
    readonly spin: PlateSpinLoads
    readonly turntable: Turntable
    readonly ballLoad: number
  },
): SpeedLimits<PlateSpeedReason> {
  const { ratios, spin, turntable, ballLoad } = at
  return lowestFirst<PlateSpeedReason>([
    ...sharedSpeedLimits(bearing, ratios, { play: 0, ballLoad, atOneTurn: spin.ballForce / 2 }),
    { reason: 'load-slides-off', speed: slidingSpeed(load) },
    { reason: leavingReason(turntable), speed: leavingSpeed(turntable) },
    { reason: 'plate-splits', speed: splittingSpeed(contactWood(load.wood), spin.rimStress) },
  ])
}

/** ω ≤ √(μ g / e). */
const slidingSpeed = ({ offset, friction, load }: Pick<ResolvedPlateLoad, 'offset' | 'friction' | 'load'>): number =>
  load.turnsWithPlate ? Math.sqrt((friction * GRAVITY) / offset) / PER_RPM : Number.POSITIVE_INFINITY

/** The first thing to leave its place, for rigid plates. */
function leavingReason(turntable: Turntable): PlateSpeedReason {
  const { pushedAside, tips, climbsOut } = rigidLimits(turntable)
  if (climbsOut <= Math.min(pushedAside, tips)) return 'balls-climb-out'
  return tips < pushedAside ? 'plate-tips' : 'plate-pushed-aside'
}
