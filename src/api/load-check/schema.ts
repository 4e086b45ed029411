import { type Static, type TSchema, Type } from 'typebox'
import { CONTACT_WOODS, type ContactWoodId } from '#shared/data/contact-woods.ts'
import { SPEED_REASONS, type SpeedReason } from '#shared/questions/load/checked-load.ts'
import { PLATE_SPEED_REASONS, type PlateSpeedReason } from '#shared/questions/load/checked-plate-load.ts'
import { TURNING_RINGS, type TurningRing } from '#shared/questions/load/input.ts'
import { FORCE_UNITS, type ForceUnits } from '#shared/units/force.ts'
import { answerUnion, arrangementTag } from '#src/api/answer.ts'
import type { Caution } from '#src/api/caution.ts'
import { type DesignRequest, designRef } from '#src/api/design-input.ts'
import { nonNegativeLength, type ShownLength } from '#src/api/length.ts'
import type { Source } from '#src/api/source.ts'
import type { UnitsName } from '#src/api/units.ts'
import type { Warning } from '#src/api/warning.ts'
import { refTo } from '#src/http/schema.ts'

const shown = (description: string) =>
  Type.Unsafe<ShownLength>({ ...refTo<typeof ShownLength>('ShownLength'), description })
const force = (description: string) => Type.Number({ description: `${description} In \`forceUnits\`.` })
const pressure = (description: string) => Type.Number({ description: `${description} In \`pressureUnits\`.` })
const wood = (description: string) =>
  Type.Unsafe<ContactWoodId>(Type.Enum([...CONTACT_WOODS], { type: 'string', description }))
const forceUnits = (description: string) =>
  Type.Unsafe<ForceUnits>(Type.Enum(FORCE_UNITS, { type: 'string', description }))
const turning = (description: string) =>
  Type.Unsafe<TurningRing>(Type.Enum(TURNING_RINGS, { type: 'string', description }))
const ring = (description: string) => Type.Enum(['outerRing', 'innerRing'], { type: 'string', description })

/** Beyond any wooden bearing either way: what is larger is a slip of the hand. */
const LOAD = { minimum: 0.001, maximum: 100_000 }
const SPEED = { minimum: 0.001, maximum: 100_000 }
const DENT = { minimum: 0.0001, maximum: 0.05 }

export const LoadCheckRequest = Type.Object(
  {
    design: Type.Unsafe<DesignRequest>({
      ...designRef,
      description: 'The bearing, and the `units` of request and answer.',
    }),
    radialLoad: Type.Optional(
      Type.Number({
        ...LOAD,
        description:
          'What it carries, square to its axis, at rest; rings need it, and plates have none. In `forceUnits`.',
      }),
    ),
    axialLoad: Type.Optional(
      Type.Number({
        ...LOAD,
        description:
          'What plates carry along their axis, at rest, the upper plate included; they need it, and rings have none. In `forceUnits`.',
      }),
    ),
    offset: Type.Optional(
      nonNegativeLength(
        'Of the axial load from the axis, within the line between any two neighbouring balls. Default: 0.',
      ),
    ),
    forceUnits: Type.Optional(forceUnits('Default: N with millimetres, lbf with inches.')),
    wood: Type.Optional(wood('Of both rings, or both plates. Default: maple-sugar.')),
    ballWood: Type.Optional(wood('Of wooden balls. Default: as what they lie in.')),
    dentFraction: Type.Optional(
      Type.Number({ ...DENT, description: 'Lasting dent that is still borne, in ball diameters. Default: 0.005.' }),
    ),
    turning: Type.Optional(turning('Which ring turns; of plates either. Default: inner-ring.')),
    speed: Type.Optional(Type.Number({ ...SPEED, description: 'Turns a minute of that ring, or of a plate.' })),
  },
  {
    $id: 'LoadCheckRequest',
    description: 'A bearing and a load. What comes back is an estimate for light work and no safe working load.',
    additionalProperties: false,
  },
)
export type LoadCheckRequest = Static<typeof LoadCheckRequest>

const LoadSharing = Type.Object(
  {
    mostLoadedBall: force('Load of the most loaded ball, where it stands worst.'),
    timesEvenShare: Type.Number({
      description: 'That, over the load divided by the count of balls. 4.37 without play among many balls, 5 is usual.',
    }),
    byIntegral: force("The same as among very many balls: Sjovall's integral, solved with the play."),
    loadZone: Type.Number({ description: 'The loaded part of the diameter: 0.5 without play, less with it.' }),
    ballsUnderLoad: Type.Integer({ description: 'How many balls carry, one of them right under the load.' }),
    ballLoads: Type.Array(Type.Number(), {
      description: 'Load of each ball with the first right under the load, on round the ring. In `forceUnits`.',
    }),
    displacement: shown('How far the inner ring goes down from the middle of its play.'),
  },
  { $id: 'LoadSharing', description: 'How the balls share the load at rest, with the play that there is.' },
)

const SeatLoad = Type.Object(
  {
    seat: Type.Enum(['bottom', 'edges'], { type: 'string', description: 'Where the ball touches.' }),
    ballLoad: force('Of the most loaded ball.'),
    width: shown('Of the touch, across the groove; on edges that of each flat.'),
    length: Type.Optional(shown('Of the touch, along the groove. Absent on edges.')),
    maxPressure: pressure('In the middle of the touch, elastic; on edges the hardness of the wood.'),
    reachesEdges: Type.Boolean({ description: 'Whether the touch is as wide as the groove.' }),
    dent: Type.Optional(shown('What stays when the load is gone. Absent where the ball sinks in past its middle.')),
  },
  { $id: 'SeatLoad', description: 'A ball on the groove of one ring, or of a plate.' },
)

const LoadLimit = Type.Object(
  {
    radialLoad: force('Load of the bearing.'),
    ballLoad: force('Of its most loaded ball then.'),
    ring: ring('Which ring reaches it first.'),
    message: Type.String({ description: 'The same in words.' }),
  },
  { $id: 'LoadLimit', description: 'A load at which something begins. No safe working load.' },
)

const SpeedLimit = Type.Object(
  {
    reason: Type.Unsafe<SpeedReason>(Type.Enum(SPEED_REASONS, { type: 'string', description: 'A name for programs.' })),
    speed: Type.Number({ description: 'Turns a minute.' }),
    message: Type.String({ description: 'The reason in words.' }),
  },
  { $id: 'SpeedLimit', description: 'A speed that should not be passed, and why.' },
)

const TurnRatios = Type.Object(
  {
    ballSet: Type.Number({ description: 'Turns of the ball set.' }),
    ballSpin: Type.Number({ description: 'Turns of a ball about itself, seen from the ball set.' }),
    outerPasses: Type.Number({ description: 'Balls that pass a point of the outer groove.' }),
    innerPasses: Type.Number({ description: 'Balls that pass a point of the inner groove.' }),
  },
  { $id: 'TurnRatios', description: 'For each turn of the ring that turns, the other standing still.' },
)

const AtSpeed = Type.Object(
  {
    speed: Type.Number({ description: 'Turns a minute, as asked.' }),
    ballSetSpeed: Type.Number({ description: 'Turns a minute.' }),
    ballSpinSpeed: Type.Number({ description: 'Turns a minute.' }),
    outerPassFrequency: Type.Number({ description: 'In hertz: what a dent in the outer groove sounds like.' }),
    innerPassFrequency: Type.Number({ description: 'In hertz: what a dent in the inner groove sounds like.' }),
    ballSpinFrequency: Type.Number({ description: 'In hertz. A flat on a ball meets a groove twice a turn.' }),
    ballForce: force('With which each ball presses on the outer groove, for its spin round the ring alone.'),
    outerRing: Type.Unsafe<Static<typeof SeatLoad>>({
      ...refTo<typeof SeatLoad>('SeatLoad'),
      description: 'A ball on the outer groove under that force alone.',
    }),
    rimStress: pressure('Largest pull round either ring, its own spin and the balls together.'),
  },
  { $id: 'AtSpeed', description: 'What the speed does, without the load.' },
)

const SPOKEN = {
  units: refTo<typeof UnitsName>('Units'),
  forceUnits: forceUnits('Of every force here.'),
  pressureUnits: Type.Enum(['MPa', 'lbf/in2'], { type: 'string', description: 'Of every pressure here.' }),
}
const WARNED = {
  warnings: Type.Array(refTo<typeof Warning>('Warning')),
  cautions: Type.Array(refTo<typeof Caution>('Caution')),
  sources: Type.Array(refTo<typeof Source>('Source')),
}
const WOODS = {
  ballWood: Type.Optional(wood('Of wooden balls.')),
  dentFraction: Type.Number({ description: 'In ball diameters.' }),
}
const verdict = Type.String({ description: 'The whole in a few sentences.' })
/** What begins at some load; `id` names the schema of such a load. */
const limitsOf = <Limit extends TSchema>(id: string) => ({
  firstMark: Type.Unsafe<Static<Limit>>({
    ...refTo<Limit>(id),
    description: 'Where the wood under the most loaded ball first gives for good. 0 where the ball sits on edges.',
  }),
  dent: Type.Unsafe<Static<Limit>>({
    ...refTo<Limit>(id),
    description: 'Where the dent reaches `dentFraction` of a ball.',
  }),
})

export const RingLoadCheckResponse = Type.Object(
  {
    arrangement: arrangementTag('radial', 'roller', 'caged'),
    ...SPOKEN,
    radialLoad: force('As asked.'),
    wood: wood('Of both rings.'),
    ...WOODS,
    turning: turning('Which ring turns.'),
    verdict,
    sharing: refTo<typeof LoadSharing>('LoadSharing'),
    outerRing: refTo<typeof SeatLoad>('SeatLoad'),
    innerRing: refTo<typeof SeatLoad>('SeatLoad'),
    woodHardness: pressure('Side hardness of the softer of rings and balls, as a pressure.'),
    compressionLimit: pressure('Of the ring wood across the grain, at its proportional limit.'),
    ...limitsOf<typeof LoadLimit>('LoadLimit'),
    perTurn: refTo<typeof TurnRatios>('TurnRatios'),
    atSpeed: Type.Optional(refTo<typeof AtSpeed>('AtSpeed')),
    speedLimit: refTo<typeof SpeedLimit>('SpeedLimit'),
    speedLimits: Type.Array(refTo<typeof SpeedLimit>('SpeedLimit'), { description: 'All of them, the lowest first.' }),
    ...WARNED,
  },
  { $id: 'RingLoadCheckResponse', description: 'An estimate for light work: no safe working load.' },
)
export type RingLoadCheckResponse = Static<typeof RingLoadCheckResponse>

const PlateLoadSharing = Type.Object(
  {
    evenShare: force('The load over the count of balls.'),
    mostLoadedBall: force(
      'Load of the most loaded of equal balls, where it stands worst: the even share of a load over the middle.',
    ),
    timesEvenShare: Type.Number({ description: 'That, over the even share.' }),
    ballsUnderLoad: Type.Integer({ description: 'How many balls carry, one of them nearest to the load.' }),
    ballLoads: Type.Array(Type.Number(), {
      description: 'Load of each ball with the first nearest to the load, on round the circle. In `forceUnits`.',
    }),
    approach: shown(
      'By how much the plates come together over the middle; below 0 where a load far out lifts it there.',
    ),
    lean: shown('By how much more over the outside on the side of the load than on the other side.'),
    uneven: Type.Optional(
      Type.Object(
        {
          tallest: Type.Unsafe<Static<typeof SeatLoad>>({
            ...refTo<typeof SeatLoad>('SeatLoad'),
            description:
              'Of the three balls that carry at first, the one that carries most, where they stand so that it is the most that it can be.',
          }),
          firstMarkFrom: force('Load of the turntable that can mark the wood under one of the three.'),
          dentFrom: force('Load that dents it there to `dentFraction` of a ball, if no others came to carry.'),
          allCarryFrom: force(
            'Load from which the smallest ball would carry too, about, if the wood only sprang back.',
          ),
          message: Type.String({ description: 'The same in words.' }),
        },
        { description: 'What it changes that the balls scatter as the design says. Absent where they do not.' },
      ),
    ),
  },
  { $id: 'PlateLoadSharing', description: 'How the balls of a turntable share the load at rest.' },
)

const PlateLoadLimit = Type.Object(
  {
    axialLoad: force('Load of the turntable, at the offset asked about, equal balls.'),
    ballLoad: force('Of its most loaded ball then.'),
    message: Type.String({ description: 'The same in words.' }),
  },
  { $id: 'PlateLoadLimit', description: 'A load at which something begins. No safe working load.' },
)

const PlateSpeedLimit = Type.Object(
  {
    reason: Type.Unsafe<PlateSpeedReason>(
      Type.Enum([...PLATE_SPEED_REASONS], { type: 'string', description: 'A name for programs.' }),
    ),
    speed: Type.Number({ description: 'Turns a minute.' }),
    message: Type.String({ description: 'The reason in words.' }),
  },
  {
    $id: 'PlateSpeedLimit',
    description: 'A speed of one plate that should not be passed with its load over the middle, and why.',
  },
)

const PlateTurnRatios = Type.Object(
  {
    ballSet: Type.Number({ description: "Turns of the ball set: half of the plate's." }),
    ballSpin: Type.Number({ description: 'Turns of a ball about itself, seen from the ball set.' }),
    passes: Type.Number({ description: 'Balls that pass a point of either groove.' }),
  },
  { $id: 'PlateTurnRatios', description: 'For each turn of one plate, the other standing still.' },
)

const PlatesAtSpeed = Type.Object(
  {
    speed: Type.Number({ description: 'Turns a minute, as asked.' }),
    ballSetSpeed: Type.Number({ description: 'Turns a minute.' }),
    ballSpinSpeed: Type.Number({ description: 'Turns a minute.' }),
    passFrequency: Type.Number({ description: 'In hertz: what a dent in either groove sounds like.' }),
    ballSpinFrequency: Type.Number({ description: 'In hertz. A flat on a ball meets a groove twice a turn.' }),
    ballForce: force('With which each ball is pushed outward, for its spin round the axis alone.'),
    flank: Type.Unsafe<Static<typeof SeatLoad>>({
      ...refTo<typeof SeatLoad>('SeatLoad'),
      description: 'A ball on the outer flank of either groove, each taking half of that force alone.',
    }),
    rimStress: pressure('Largest pull round the plate that turns, its own spin and the balls together.'),
  },
  { $id: 'PlatesAtSpeed', description: 'What the speed does, without the load.' },
)

export const ThrustLoadCheckResponse = Type.Object(
  {
    ...SPOKEN,
    arrangement: arrangementTag('thrust'),
    axialLoad: force('As asked.'),
    offset: shown('Of the load from the axis.'),
    wood: wood('Of both plates.'),
    ...WOODS,
    verdict,
    sharing: refTo<typeof PlateLoadSharing>('PlateLoadSharing'),
    plates: refTo<typeof SeatLoad>('SeatLoad'),
    woodHardness: pressure('Side hardness of the softer of plates and balls, as a pressure.'),
    compressionLimit: pressure("Of the plates' wood across the grain, at its proportional limit."),
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
      description: 'All of them, the lowest first.',
    }),
    ...WARNED,
  },
  { $id: 'ThrustLoadCheckResponse', description: 'The same of a turntable: an estimate, and no safe working load.' },
)
export type ThrustLoadCheckResponse = Static<typeof ThrustLoadCheckResponse>

export const LoadCheckResponse = answerUnion(
  'LoadCheckResponse',
  'What the load and the speed do, and from which limits.',
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
