import { type Static, type TSchema, Type } from 'typebox'
import { SPEED_REASONS, type SpeedReason } from '#shared/questions/load/checked-load.ts'
import { PLATE_SPEED_REASONS, type PlateSpeedReason } from '#shared/questions/load/checked-plate-load.ts'
import { LOAD_FIELDS } from '#shared/questions/load/fields.ts'
import { FORCE_UNITS, type ForceUnits } from '#shared/units/force.ts'
import { answerOf, answerUnion } from '#src/api/answer.ts'
import { type DesignRequest, designRef } from '#src/api/design-input.ts'
import { propertiesOf, type RequestOf } from '#src/api/fields.ts'
import { FORCE_UNITS_FIELD } from '#src/api/force.ts'
import { shownLength as shown } from '#src/api/length.ts'
import { shownNumber } from '#src/api/number.ts'
import { refTo } from '#src/http/schema.ts'

const force = (description: string) => shownNumber(`${description} In \`forceUnits\`.`)
const pressure = (description: string) => shownNumber(`${description} In \`pressureUnits\`.`)
const ring = (description: string) => Type.Enum(['outerRing', 'innerRing'], { type: 'string', description })

/** Besides the design: one row each. */
export const LOAD_CHECK_FIELDS = { ...LOAD_FIELDS, forceUnits: FORCE_UNITS_FIELD }
export type LoadCheckRequest = { design: DesignRequest } & RequestOf<typeof LOAD_CHECK_FIELDS>

export const LoadCheckRequest = Type.Unsafe<LoadCheckRequest>(
  Type.Object(
    {
      design: Type.Unsafe<DesignRequest>({
        ...designRef,
        description: 'The bearing, and the `units` of request and answer.',
      }),
      ...propertiesOf(LOAD_CHECK_FIELDS),
    },
    {
      $id: 'LoadCheckRequest',
      description: 'A bearing and a load. What comes back is an estimate for light work and no safe working load.',
      additionalProperties: false,
    },
  ),
)

const LoadSharing = Type.Object(
  {
    mostLoadedBall: force('Load of the most loaded ball, where it stands worst.'),
    timesEvenShare: shownNumber(
      '`mostLoadedBall` divided by the even share, load over number of balls. It is 4.37 without play among many balls; 5 is a usual value.',
    ),
    byIntegral: force(
      "Load of the most loaded ball as if there were very many balls: Sjovall's integral, solved with the play.",
    ),
    loadZone: shownNumber('The loaded part of the diameter: 0.5 without play, less with it.'),
    ballsUnderLoad: Type.Integer({ description: 'How many balls carry, one of them right under the load.' }),
    ballLoads: Type.Array(force('Load of one ball.'), {
      description: 'Load of each ball with the first right under the load, on round the ring.',
    }),
    displacement: shown('How far the inner ring goes down from the middle of its play.'),
  },
  { $id: 'LoadSharing', description: 'How the balls share the load at rest, with the play that there is.' },
)

const SeatLoad = Type.Object(
  {
    seat: Type.Enum(['bottom', 'edges'], { type: 'string', description: 'The place where the ball touches.' }),
    ballLoad: force('Load of the most loaded ball.'),
    width: shown('Width of the contact across the groove; on edges the width of each flat.'),
    length: Type.Optional(shown('Length of the contact along the groove. Absent on edges.')),
    maxPressure: pressure('Elastic pressure in the middle of the contact; on edges the hardness of the wood.'),
    reachesEdges: Type.Boolean({ description: 'Whether the touch is as wide as the groove.' }),
    dent: Type.Optional(
      shown('Dent that remains when the load is gone. Absent where the ball sinks in past its middle.'),
    ),
  },
  { $id: 'SeatLoad', description: 'A ball on the groove of one ring, or of a plate.' },
)

const LoadLimit = Type.Object(
  {
    radialLoad: force('Load of the bearing.'),
    ballLoad: force('Load of its most loaded ball then.'),
    ring: ring('The ring that reaches it first.'),
    message: Type.String({ description: 'Summary in words.' }),
  },
  { $id: 'LoadLimit', description: 'A load at which something begins. No safe working load.' },
)

const SpeedLimit = Type.Object(
  {
    reason: Type.Unsafe<SpeedReason>(Type.Enum(SPEED_REASONS, { type: 'string', description: 'A name for programs.' })),
    speed: shownNumber('Speed in turns per minute.'),
    message: Type.String({ description: 'The reason in words.' }),
  },
  { $id: 'SpeedLimit', description: 'A speed that should not be passed, and why.' },
)

const TurnRatios = Type.Object(
  {
    ballSet: shownNumber('Turns of the ball set.'),
    ballSpin: shownNumber('Turns of a ball about itself, seen from the ball set.'),
    outerPasses: shownNumber('Balls that pass a point of the outer groove.'),
    innerPasses: shownNumber('Balls that pass a point of the inner groove.'),
  },
  { $id: 'TurnRatios', description: 'Turns for each turn of the turning ring, while the other is at rest.' },
)

const AtSpeed = Type.Object(
  {
    speed: shownNumber('Requested speed in turns per minute.'),
    ballSetSpeed: shownNumber('Speed in turns per minute.'),
    ballSpinSpeed: shownNumber('Speed in turns per minute.'),
    outerPassFrequency: shownNumber('Frequency of a dent in the outer groove, in hertz.'),
    innerPassFrequency: shownNumber('Frequency of a dent in the inner groove, in hertz.'),
    ballSpinFrequency: shownNumber(
      'Frequency at which a ball spins, in hertz. A flat on a ball meets a groove twice a turn.',
    ),
    ballForce: force('Force with which each ball presses on the outer groove through its travel round the ring alone.'),
    outerRing: Type.Unsafe<Static<typeof SeatLoad>>({
      ...refTo<typeof SeatLoad>('SeatLoad'),
      description: 'A ball on the outer groove under that force alone.',
    }),
    rimStress: pressure('Largest pull round either ring, its own spin and the balls together.'),
  },
  { $id: 'AtSpeed', description: 'Effects of the speed, without the load.' },
)

const SPOKEN = {
  forceUnits: Type.Unsafe<ForceUnits>(
    Type.Enum(FORCE_UNITS, { type: 'string', description: 'Unit of all forces in this answer.' }),
  ),
  pressureUnits: Type.Enum(['MPa', 'lbf/in2'], {
    type: 'string',
    description: 'Unit of all pressures in this answer.',
  }),
}
/** What begins at some load; `id` names the schema of such a load. */
const limitsOf = <Limit extends TSchema>(id: string) => ({
  firstMark: Type.Unsafe<Static<Limit>>({
    ...refTo<Limit>(id),
    description:
      'Load at which the wood under the most loaded ball first deforms permanently. 0 where the ball sits on edges.',
  }),
  dent: Type.Unsafe<Static<Limit>>({
    ...refTo<Limit>(id),
    description: 'Load at which the dent reaches `dentFraction` of a ball.',
  }),
})

export const RingLoadCheckResponse = Type.Object(
  answerOf(['radial', 'roller', 'caged'], refTo<typeof LoadCheckRequest>('LoadCheckRequest'), {
    ...SPOKEN,
    sharing: refTo<typeof LoadSharing>('LoadSharing'),
    outerRing: refTo<typeof SeatLoad>('SeatLoad'),
    innerRing: refTo<typeof SeatLoad>('SeatLoad'),
    woodHardness: pressure('Side hardness of the softer of rings and balls, as a pressure.'),
    compressionLimit: pressure('Stress of the ring wood across the grain at its proportional limit.'),
    ...limitsOf<typeof LoadLimit>('LoadLimit'),
    perTurn: refTo<typeof TurnRatios>('TurnRatios'),
    atSpeed: Type.Optional(refTo<typeof AtSpeed>('AtSpeed')),
    speedLimit: refTo<typeof SpeedLimit>('SpeedLimit'),
    speedLimits: Type.Array(refTo<typeof SpeedLimit>('SpeedLimit'), { description: 'All limits, the lowest first.' }),
  }),
  { $id: 'RingLoadCheckResponse', description: 'An estimate for light work: no safe working load.' },
)
export type RingLoadCheckResponse = Static<typeof RingLoadCheckResponse>

const PlateLoadSharing = Type.Object(
  {
    evenShare: force('The load over the count of balls.'),
    mostLoadedBall: force(
      'Load of the most loaded of equal balls, where it stands worst: the even share of a load over the middle.',
    ),
    timesEvenShare: shownNumber('`mostLoadedBall` divided by the even share.'),
    ballsUnderLoad: Type.Integer({ description: 'How many balls carry, one of them nearest to the load.' }),
    ballLoads: Type.Array(force('Load of one ball.'), {
      description: 'Load of each ball with the first nearest to the load, on round the circle.',
    }),
    approach: shown(
      'How much the plates approach each other at the middle. Below 0 where a load far out lifts the plate there.',
    ),
    lean: shown('How much more they approach at the outside on the side of the load than on the other side.'),
    uneven: Type.Optional(
      Type.Object(
        {
          tallest: Type.Unsafe<Static<typeof SeatLoad>>({
            ...refTo<typeof SeatLoad>('SeatLoad'),
            description: 'The most loaded of the three balls that carry at first, in their worst position.',
          }),
          firstMarkFrom: force('Load of the turntable that can mark the wood under one of the three.'),
          dentFrom: force('Load that dents it there to `dentFraction` of a ball, if no others came to carry.'),
          allCarryFrom: force(
            'Load from which the smallest ball would carry too, about, if the wood only sprang back.',
          ),
          message: Type.String({ description: 'Summary in words.' }),
        },
        { description: 'Effect of the scatter of the balls in the design. Absent where there is none.' },
      ),
    ),
  },
  { $id: 'PlateLoadSharing', description: 'How the balls of a turntable share the load at rest.' },
)

const PlateLoadLimit = Type.Object(
  {
    axialLoad: force('Load of the turntable, at the offset asked about, equal balls.'),
    ballLoad: force('Load of its most loaded ball then.'),
    message: Type.String({ description: 'Summary in words.' }),
  },
  { $id: 'PlateLoadLimit', description: 'A load at which something begins. No safe working load.' },
)

const PlateSpeedLimit = Type.Object(
  {
    reason: Type.Unsafe<PlateSpeedReason>(
      Type.Enum([...PLATE_SPEED_REASONS], { type: 'string', description: 'A name for programs.' }),
    ),
    speed: shownNumber('Speed in turns per minute.'),
    message: Type.String({ description: 'The reason in words.' }),
  },
  {
    $id: 'PlateSpeedLimit',
    description: 'A speed of one plate that should not be passed with its load over the middle, and why.',
  },
)

const PlateTurnRatios = Type.Object(
  {
    ballSet: shownNumber("Turns of the ball set: half of the plate's."),
    ballSpin: shownNumber('Turns of a ball about itself, seen from the ball set.'),
    passes: shownNumber('Balls that pass a point of either groove.'),
  },
  { $id: 'PlateTurnRatios', description: 'Turns for each turn of one plate, while the other is at rest.' },
)

const PlatesAtSpeed = Type.Object(
  {
    speed: shownNumber('Requested speed in turns per minute.'),
    ballSetSpeed: shownNumber('Speed in turns per minute.'),
    ballSpinSpeed: shownNumber('Speed in turns per minute.'),
    passFrequency: shownNumber('Frequency of a dent in either groove, in hertz.'),
    ballSpinFrequency: shownNumber(
      'Frequency at which a ball spins, in hertz. A flat on a ball meets a groove twice a turn.',
    ),
    ballForce: force('Force that pushes each ball outward through its travel round the axis alone.'),
    flank: Type.Unsafe<Static<typeof SeatLoad>>({
      ...refTo<typeof SeatLoad>('SeatLoad'),
      description: 'A ball on the outer flank of either groove, each taking half of that force alone.',
    }),
    rimStress: pressure('Largest pull round the plate that turns, its own spin and the balls together.'),
  },
  { $id: 'PlatesAtSpeed', description: 'Effects of the speed, without the load.' },
)

export const ThrustLoadCheckResponse = Type.Object(
  answerOf(['thrust'], refTo<typeof LoadCheckRequest>('LoadCheckRequest'), {
    ...SPOKEN,
    sharing: refTo<typeof PlateLoadSharing>('PlateLoadSharing'),
    plates: refTo<typeof SeatLoad>('SeatLoad'),
    woodHardness: pressure('Side hardness of the softer of plates and balls, as a pressure.'),
    compressionLimit: pressure("Stress of the plates' wood across the grain at its proportional limit."),
    ...limitsOf<typeof PlateLoadLimit>('PlateLoadLimit'),
    perTurn: refTo<typeof PlateTurnRatios>('PlateTurnRatios'),
    atSpeed: Type.Optional(refTo<typeof PlatesAtSpeed>('PlatesAtSpeed')),
    speedLimit: Type.Optional(
      Type.Unsafe<Static<typeof PlateSpeedLimit>>({
        ...refTo<typeof PlateSpeedLimit>('PlateSpeedLimit'),
        description: 'The lowest. Absent where the load is beside the axis: such a turntable must not be spun.',
      }),
    ),
    speedLimits: Type.Array(refTo<typeof PlateSpeedLimit>('PlateSpeedLimit'), {
      description: 'All limits, the lowest first.',
    }),
  }),
  {
    $id: 'ThrustLoadCheckResponse',
    description: 'Effects of a load and a speed on a turntable: an estimate, and no safe working load.',
  },
)
export type ThrustLoadCheckResponse = Static<typeof ThrustLoadCheckResponse>

export const LoadCheckResponse = answerUnion(
  'LoadCheckResponse',
  'Effects of the load and the speed, and their limits.',
  RingLoadCheckResponse,
  ThrustLoadCheckResponse,
)
export type LoadCheckResponse = Static<typeof LoadCheckResponse>

export const LOAD_CHECK_SCHEMAS = [
  LoadCheckRequest,
  LoadSharing,
  SeatLoad,
  LoadLimit,
  SpeedLimit,
  TurnRatios,
  AtSpeed,
  RingLoadCheckResponse,
  PlateLoadSharing,
  PlateLoadLimit,
  PlateSpeedLimit,
  PlateTurnRatios,
  PlatesAtSpeed,
  ThrustLoadCheckResponse,
  LoadCheckResponse,
]
