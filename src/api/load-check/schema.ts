import { type Static, type TSchema, Type } from 'typebox'
import { LOAD_FIELDS } from '#shared/questions/load/fields.ts'
import { FORCE_UNITS, type ForceUnits } from '#shared/units/force.ts'
import { type DesignRequest, designRef } from '#src/api/design-input.ts'
import { groupSchemas, propertiesOf, type RequestOf } from '#src/api/fields.ts'
import { FORCE_UNITS_FIELD, TORQUE_UNITS } from '#src/api/force.ts'
import { shownLength as shown } from '#src/api/length.ts'
import { shownNumber } from '#src/api/number.ts'
import { choiceOf, flag, listOf, named, namedRequest, object, text } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'

export const force = (description: string) => shownNumber(`${description} In \`forceUnits\`.`)
const pressure = (description: string) => shownNumber(`${description} In \`pressureUnits\`.`)
/** A schema by its name, with a description of its own. */
export const described = <T extends TSchema>(id: string, description: string) =>
  Type.Unsafe<Static<T>>({ ...refTo<T>(id), description })

/** Besides the design: one row each. */
export const LOAD_CHECK_FIELDS = { ...LOAD_FIELDS, forceUnits: FORCE_UNITS_FIELD }
export type LoadCheckRequest = { design: DesignRequest } & RequestOf<typeof LOAD_CHECK_FIELDS>

export const LoadCheckRequest = Type.Unsafe<LoadCheckRequest>(
  namedRequest(
    'LoadCheckRequest',
    'A bearing and a load. The answer is an estimate for light work, not a safety rating.',
    {
      design: Type.Unsafe<DesignRequest>({
        ...designRef,
        description: 'The bearing, and the `units` of request and answer.',
      }),
      ...propertiesOf(LOAD_CHECK_FIELDS),
    },
  ),
)

export const SeatLoad = named('SeatLoad', 'A ball on its groove.', {
  seat: choiceOf('The place where the ball touches.', ['bottom', 'edges']),
  ballLoad: force('Load of the most loaded ball.'),
  width: shown('Width of the contact across the groove; on edges the width of each flat.'),
  length: Type.Optional(shown('Length of the contact along the groove. Absent on edges.')),
  maxPressure: pressure('Elastic pressure in the middle of the contact; on edges the hardness of the wood.'),
  reachesEdges: flag('Whether the touch is as wide as the groove.'),
  dent: Type.Optional(
    shown(
      'Depth of the dent that remains in average wood when the load is gone. Absent where the ball sinks in past its middle.',
    ),
  ),
})

const range = (name: string, description: string) =>
  Type.Object(
    { min: shownNumber(`${name} of a smooth, clean bearing.`), max: shownNumber(`${name} of a rough or dusty one.`) },
    { description },
  )
/** The same of what is less in a rough bearing. */
const falling = (name: string, description: string) =>
  Type.Object(
    { min: shownNumber(`${name} of a rough or dusty bearing.`), max: shownNumber(`${name} of a smooth, clean one.`) },
    { description },
  )
const torque = (description: string) => range('Torque', `${description} In \`torqueUnits\`.`)

export const WorkingLoad = named(
  'WorkingLoad',
  'Loads of the bearing below which no ball leaves a mark, in nineteen boards of twenty, and what they cost in play, friction and noise. Not a safety rating.',
  {
    still: force('Working load of a bearing that rests under it for years.'),
    slowHand: force('Working load of a bearing that is turned slowly by hand now and then.'),
    steadyCrank: force('Working load of a bearing that is turned by a crank for hours.'),
    ballLoad: force('Load of the most loaded ball under `slowHand`.'),
    markDepth: shown('Smallest depth of a dent that counts as a mark.'),
    gives: shown('Travel of the bearing under `slowHand`, beyond its play.'),
    startingTorque: torque('Torque that turns the bearing under `slowHand`.'),
    rumble: object('The noise of rolling.', {
      height: shown('Distance by which the bearing rises and falls as the balls pass.'),
      frequency: shownNumber('Frequency at the speed of `handTurned`, in hertz.'),
    }),
    message: text('Summary in words.'),
  },
)

export const HandTurned = named('HandTurned', 'The ordinary case: the bearing is turned by a finger or a crank.', {
  speed: shownNumber('Speed in turns per minute.'),
  message: text('Summary in words.'),
})

export const Friction = named(
  'LoadFriction',
  'Friction of the bearing: an estimate whose ends differ more than tenfold.',
  {
    startingTorque: torque('Torque that turns the bearing under its load.'),
    coasting: object(
      'How a bearing spun by hand runs on: the outer ring alone, or the load of a turntable as a disc as large as its plate.',
      {
        from: shownNumber('Speed at which the hand lets go, in turns per minute.'),
        turns: falling('Turns', 'Turns until it stops.'),
        seconds: falling('Time', 'Seconds until it stops.'),
      },
    ),
    rubbingSpeed: shown(
      'How fast surfaces rub at the speed of `handTurned`, per second: ball on ball at twice the speed of a ball, or ball on what keeps the balls apart.',
    ),
    message: text('Summary in words, with what makes it noisy and what helps.'),
  },
)

export const Substitute = named('Substitute', 'A figure of one wood that stands for another.', {
  figure: choiceOf('The figure that is not printed.', ['tension-across-grain', 'elastic-ratios']),
  from: text('The wood, or the group of woods, whose figure was taken.'),
  standsFor: text('The wood for which it stands.'),
  source: text('The `id` of the source of the figure.'),
  message: text('The substitution in words.'),
})

export const ratio = {
  ballSet: 'Turns of the ball set.',
  ballSpin: 'Turns of a ball about itself, seen from the ball set.',
} as const

/** Effects of a speed on any bearing. */
export const AT_SPEED = {
  speed: shownNumber('Requested speed in turns per minute.'),
  ballSetSpeed: shownNumber('Speed in turns per minute.'),
  ballSpinSpeed: shownNumber('Speed in turns per minute.'),
  ballSpinFrequency: shownNumber(
    'Frequency at which a ball spins, in hertz. A flat on a ball meets a groove twice a turn.',
  ),
  rimStress: pressure('Largest pull round a part that turns, its own spin and the balls together.'),
}

/** A load that leaves a dent of some depth. */
export const limit = {
  ballLoad: force('Load of its most loaded ball then.'),
  depth: shown('Depth of the dent in average wood.'),
  message: text('Summary in words.'),
}

/** A speed that should not be passed. */
export const speedLimitOf = <const Reason extends string>($id: string, reasons: readonly Reason[]) =>
  named($id, 'A speed at which something goes wrong, and what.', {
    reason: choiceOf<Reason>('A name for programs.', reasons),
    speed: shownNumber('Speed in turns per minute.'),
    message: text('The reason in words.'),
  })

/** The body of every load check, by the schemas of a load and of a speed limit of the arrangement. */
export const bodyOf = <Limit extends TSchema, Speed extends TSchema>(limitId: string, speedId: string) => ({
  forceUnits: choiceOf<ForceUnits>('Unit of all forces in this answer.', FORCE_UNITS),
  pressureUnits: choiceOf('Unit of all pressures in this answer.', ['MPa', 'lbf/in2']),
  torqueUnits: choiceOf('Unit of all torques in this answer.', TORQUE_UNITS),
  workingLoad: refTo<typeof WorkingLoad>('WorkingLoad'),
  firstMark: described<Limit>(limitId, 'Load at which the most loaded ball first leaves a mark in average wood.'),
  ruinLoad: described<Limit>(limitId, 'Load at which the dent in average wood reaches `dentFraction` of a ball.'),
  handTurned: refTo<typeof HandTurned>('HandTurned'),
  speedLimit: described<Speed>(speedId, 'The lowest: what truly happens first.'),
  speedLimits: Type.Array(refTo<Speed>(speedId), {
    description: 'The lowest first, then what would come next, up to five times as fast: not for use.',
  }),
  friction: refTo<typeof Friction>('LoadFriction'),
  woodHardness: pressure('Side hardness of the softer of bearing and balls, as a pressure, average.'),
  compressionLimit: pressure("Stress of the bearing's wood across the grain at its proportional limit, average."),
  substitutes: listOf<typeof Substitute>(
    'Substitute',
    'Figures of other woods that stand for those that are not printed.',
  ),
})

/** Requests are held to the fields of all arrangements: what one does not have is refused with its reason. */
export const SHARED_LOAD_SCHEMAS = [
  ...groupSchemas({ kind: 'group', id: '', means: '', fields: LOAD_FIELDS, oneOfEach: [] }, () => ({})),
  LoadCheckRequest,
  SeatLoad,
  WorkingLoad,
  HandTurned,
  Friction,
  Substitute,
]
