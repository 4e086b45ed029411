import { echoedBearingFor, type ThrustBearing } from '#shared/bearing/arrangements.ts'
import { type Refused, refusedDesign, refusedQuestion } from '#shared/bearing/refusal.ts'
import { farthestHeld, mostOnOne, type SharedBeside, sharedBeside } from '#shared/contact/eccentric-load.ts'
import { POINT_CONTACT } from '#shared/contact/load-distribution.ts'
import { contactWood } from '#shared/data/contact-woods.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { normalQuantile } from '#shared/statistics/normal.ts'
import { mm } from '#shared/units/length.ts'
import type { CheckedPlateLoad, PlateSharing, PlateSpeedReason, Uneven } from './checked-plate-load.ts'
import { PLATE_LOAD_CHECK, type PlateLoadCheckInput, type ResolvedPlateLoad, resolvePlateLoad } from './input.ts'
import type { Limit } from './limits.ts'
import type { LoadRefusal } from './refusal.ts'
import {
  type BallSeat,
  ballBody,
  centreToTouch,
  plateSeat,
  type SeatLimits,
  seatLimits,
  seatsStiffness,
  seatUnder,
} from './seat-load.ts'
import { lowestFirst, type SpeedLimit, splittingSpeed } from './speed-limits.ts'
import { plateSpinLoads, plateTurnRatios } from './speeds.ts'
import { findLoadWarnings, type Loaded, type LoadWarning } from './warning.ts'

/** A load as it was checked, and what is worth a warning in it. */
export interface PlateLoadCheck extends CheckedPlateLoad {
  readonly warnings: readonly LoadWarning[]
}

/**
 * How much does a turntable carry, and how fast may it turn? What `loadCheck` says of rings, of a load along the axis, all
 * of it, the upper plate included.
 *
 * @returns the check, or every reason why there is no such bearing or no such load
 */
export function plateLoadCheck(input: PlateLoadCheckInput): Result<PlateLoadCheck, Refused<LoadRefusal>> {
  const made = echoedBearingFor(PLATE_LOAD_CHECK, input.design)
  if (!made.ok) return fail(refusedDesign(made.error))
  const bearing = made.value
  const { count, material } = bearing.resolved.input.balls
  const load = resolvePlateLoad(input, material === 'wood')
  const held = mm(farthestHeld(count) * bearing.pitchRadius)
  if (!(load.offset < held)) {
    return fail(refusedQuestion([{ code: 'load-tips-plate', path: '/offset', given: load.offset, below: held }]))
  }
  return ok(checked(bearing, load))
}

function checked(bearing: ThrustBearing, load: ResolvedPlateLoad): PlateLoadCheck {
  const seat = plateSeat(bearing, load)
  const stiffness = seatsStiffness(bearing.resolved.traits, seat, seat)
  const under = sharesAt(bearing, load, 0)
  const share = Math.max(...under.shares, ...sharesAt(bearing, load, 0.5).shares)
  const most = share * load.axialLoad
  const depth = mm(load.dentFraction * bearing.resolved.ballDiameter)
  const ball = seatLimits(seat, depth)
  const limit = (ballLoad: number): Limit<'plates'> => ({ part: 'plates', ballLoad, load: ballLoad / share })
  const check: CheckedPlateLoad = {
    load,
    bearing,
    sharing: { most, ...sharing(bearing, load, under, stiffness) },
    ...(bearing.resolved.ballScatter > 0 ? { uneven: uneven(bearing, load, { seat, ball, stiffness }) } : {}),
    plates: seatUnder(seat, most),
    softer: seat.softer,
    hardness: seat.hardness,
    compressionLimit: contactWood(load.wood).compressionLimit,
    firstMark: limit(ball.firstMark),
    dent: { ...limit(ball.dent), depth },
    ...atSpeed(bearing, load, seat, ball.dent),
  }
  return { ...check, warnings: findLoadWarnings(loadedOf(check)) }
}

function loadedOf(check: CheckedPlateLoad): Loaded {
  const { load, bearing } = check
  return {
    ...check,
    design: bearing.resolved.input,
    asked: { ...load, path: '/axialLoad', load: load.axialLoad },
    seats: [{ part: 'plates', seat: check.plates, grooveWidth: bearing.plate.grooveWidth }],
    ofSharing: [...sharingWarnings(check), ...spinWarnings(load)],
  }
}

function sharingWarnings({ uneven, load, dent }: CheckedPlateLoad): readonly LoadWarning[] {
  if (uneven === undefined || !(load.axialLoad < uneven.allCarryFrom)) return []
  const { tallest, allCarryFrom } = uneven
  const shallow = tallest.dent !== undefined && tallest.dent <= dent.depth
  const facts = { code: 'three-carry', ballLoad: tallest.ballLoad, dent: tallest.dent, allCarryFrom } as const
  return [{ severity: shallow ? 'note' : 'risk', path: '/axialLoad', facts }]
}

function spinWarnings(load: ResolvedPlateLoad): readonly LoadWarning[] {
  if (load.speed === undefined || !isBesideAxis(load)) return []
  return [{ severity: 'risk', path: '/speed', facts: { code: 'spun-beside-axis', offset: load.offset } }]
}

const sharesAt = ({ pitchRadius, resolved }: ThrustBearing, load: ResolvedPlateLoad, phase: 0 | 0.5): SharedBeside =>
  sharedBeside(resolved.input.balls.count, POINT_CONTACT, load.offset / pitchRadius, phase)

function sharing(
  { pitchRadius, plate }: ThrustBearing,
  { axialLoad }: ResolvedPlateLoad,
  { shares, lean, sum }: SharedBeside,
  stiffness: number,
): Omit<PlateSharing, 'most'> {
  const root = Math.cbrt(axialLoad / (stiffness * sum))
  const nearest = root * root
  return {
    each: shares.map((share) => share * axialLoad),
    approach: mm(nearest * (1 - lean)),
    lean: mm(nearest * lean * (plate.outsideDiameter / pitchRadius)),
  }
}

/**
 * Which three of the tallest hold the plate up is chance, and how they stand decides what they carry: taken is the most that one
 * of them can. The sizes are taken as a normal distribution has them, in as many equal parts as there are balls; on edges a ball
 * stands higher by more than it is larger.
 */
function uneven(
  { pitchRadius, resolved }: ThrustBearing,
  { axialLoad, offset }: ResolvedPlateLoad,
  { seat, ball, stiffness }: { readonly seat: BallSeat; readonly ball: SeatLimits; readonly stiffness: number },
): Uneven {
  const { ballScatter, ballDiameter, groove, input } = resolved
  const { count } = input.balls
  const perDiameter = 1 - 2 * seatIn(groove, ballDiameter).perBallDiameter
  const smallest = normalQuantile(1 / (2 * count))
  let allCarryFrom = 0
  for (let each = 0; each < count; each++) {
    const higher = perDiameter * ballScatter * (normalQuantile((each + 1 / 2) / count) - smallest)
    allCarryFrom += stiffness * higher * Math.sqrt(higher)
  }
  const share = mostOnOne(count, offset / pitchRadius)
  return {
    tallest: seatUnder(seat, share * axialLoad),
    firstMark: ball.firstMark / share,
    dent: ball.dent / share,
    allCarryFrom,
  }
}

/** A load that goes round beside the axis pulls the plate aside and leaves some balls loose: how fast it may, is not known. */
const isBesideAxis = ({ offset }: ResolvedPlateLoad): boolean => offset > 0

function atSpeed(
  bearing: ThrustBearing,
  load: ResolvedPlateLoad,
  seat: BallSeat,
  dent: number,
): Pick<CheckedPlateLoad, 'ratios' | 'spin' | 'spun' | 'speedLimits'> {
  const { resolved, pitchRadius } = bearing
  const wood = contactWood(load.wood)
  const { count } = resolved.input.balls
  const ratios = plateTurnRatios(pitchRadius, centreToTouch(resolved.groove, resolved.ballDiameter), count)
  const spin = plateSpinLoads(bearing, ballBody(bearing, load), wood, ratios)
  const flank = spin.ballForce / 2
  const { speed } = load
  const climbs = climbingSpeed(bearing, load, flank)
  return {
    ratios,
    spin,
    ...(speed === undefined ? {} : { spun: seatUnder(seat, flank * speed * speed) }),
    speedLimits: isBesideAxis(load)
      ? []
      : lowestFirst<PlateSpeedReason>([
          { reason: 'balls-dent-groove', speed: Math.sqrt(dent / flank) },
          ...climbs,
          { reason: 'plate-splits', speed: splittingSpeed(wood.tensionStrength, spin.rimStress) },
        ]),
  }
}

/**
 * A ball that is pushed outward rolls up the outer flank until that leans as the push does against the load, F/Z of it on
 * each ball: tan β = push / (F/Z). At the groove's edge tan β = w / (r − h); on edges it is the ball that leans over the outer one. A
 * groove that is a half circle lets none out.
 *
 * @param flank of one ball on one flank, at one turn a minute [N]
 */
function climbingSpeed(
  { resolved, plate }: ThrustBearing,
  { axialLoad }: ResolvedPlateLoad,
  flank: number,
): readonly SpeedLimit<PlateSpeedReason>[] {
  const { groove, ballDiameter, input } = resolved
  const upright =
    plate.seat === 'edges' ? centreToTouch(groove, ballDiameter) : Math.max(0, groove.radius - groove.depth)
  const steepest = plate.grooveWidth / 2 / upright
  if (!(steepest < STEEPEST)) return []
  const speed = Math.sqrt(((axialLoad / input.balls.count) * steepest) / flank)
  return [{ reason: 'balls-climb-out', speed }]
}

/** A flank that stands up like that is a wall. */
const STEEPEST = 1e6
