import { type Static, type TProperties, Type } from 'typebox'
import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import { ROOM_ROWS } from '#shared/movement/arrangements/parts.ts'
import type { Trouble } from '#shared/movement/fit.ts'
import type { AdviceKind } from '#shared/questions/season/advice.ts'
import { answerOf, answerUnion } from '#src/api/answer.ts'
import type { RingWood, Today } from '#src/api/climate.ts'
import { designRef } from '#src/api/design-input.ts'
import { type ShownLength, shownLength as shown } from '#src/api/length.ts'
import { shownShare as chance, shownNumber } from '#src/api/number.ts'
import { choiceOf, flag, integer, named, namedRequest, object, text } from '#src/api/schema.ts'
import { OWN_STATES } from '#src/api/seasonal-fit/arrangements/all.ts'
import { refTo } from '#src/http/schema.ts'
import { RacewayShape } from './state.ts'

const TROUBLES = [
  'balls-bind',
  'rings-bind',
  'balls-knock',
  ...ROOM_ROWS.map(([, { trouble }]) => trouble),
] as const satisfies readonly Trouble[]
const trouble = choiceOf<Trouble>(
  '`balls-bind`: the gap is below `minBallGap`. `rings-bind`: the inner ring is stiff where it is turned across. `balls-knock`: the gap is above `maxBallGap`; it still runs. `balls-climb`: `flankRoom` is below 0; it still runs. The others: the room of that name is below 0.',
  TROUBLES,
)

export const SeasonalFitRequest = namedRequest(
  'SeasonalFitRequest',
  'A bearing that states in `design.making` its woods, the day on which it is made and the year that it must run in.',
  { design: designRef },
)
export type SeasonalFitRequest = Static<typeof SeasonalFitRequest>

const SeasonalChances = named(
  'SeasonalChances',
  'Chances over what is not known when the bearing is made: how much each board moves, how damp the wood is in that air, the sizes of the balls, and the gap at which the last ball goes in. Good to about 0.01.',
  {
    goesTogether: chance('Chance that the last ball goes in on the day of making. 1 where a cage holds the balls.'),
    runsAllYear: chance('Chance that it goes together and runs today and in every state.'),
    knocks: chance('Chance that the gap is above `maxBallGap` at some time. The bearing still runs.'),
  },
)

/** The state of an arrangement: the shared fields round its own. */
const stateOf = <Own extends TProperties>(name: string, own: Own) =>
  named(`${name}SeasonalState`, 'The bearing at one time of the year.', {
    name: text('The time of the year.'),
    temperature: shownNumber('Temperature in `climate.temperatureScale`.'),
    relativeHumidity: Type.Optional(
      shownNumber('Relative humidity in %. Absent where no air at 20 degrees C makes wood that wet.'),
    ),
    moistureContent: shownNumber('Moisture content of wood in equilibrium with the air, in % of its dry mass.'),
    ballDiameter: object('Ball diameters. They differ for wooden balls only.', {
      min: shown('Smallest diameter of a wooden ball: along its grain.'),
      mean: shown('Mean over the directions.'),
      max: shown('Largest diameter of a wooden ball: along its growth rings.'),
    }),
    ...own,
    runs: chance('Chance that the bearing goes together and runs at that time.'),
    troubles: Type.Array(trouble, {
      description: 'The troubles at that time, with balls of the mean size. Empty where there are none.',
    }),
    message: text('Summary in words.'),
  })

export const BandEnd = named('BandEnd', 'An end of the band in which it runs.', {
  relativeHumidity: shownNumber('Relative humidity in %.'),
  moistureContent: shownNumber('Moisture content of the wood in %.'),
  stoppedBy: Type.Array(trouble, {
    description: 'The troubles beyond this end. Empty where nothing stops the bearing.',
  }),
})

export const RunningBand = named(
  'RunningBand',
  'The humidities, round that of today, in which the bearing runs with balls of the mean size.',
  {
    temperature: shownNumber("Today's, for which the band holds, in `climate.temperatureScale`."),
    min: refTo<typeof BandEnd>('BandEnd'),
    max: refTo<typeof BandEnd>('BandEnd'),
    message: text('Summary in words.'),
  },
)

const ACTIONS = [
  'leave',
  'change-sizes',
  'rest-wood',
  'change-construction',
  'no-remedy',
] as const satisfies readonly AdviceKind[]

const BuildIn = named('BuildIn', 'What to do so that the bearing runs all year, and the chances if you do.', {
  action: choiceOf<AdviceKind>(
    '`leave`: it is good as designed. `change-sizes`: other sizes. `rest-wood`: wood of another moisture when you make it, and sizes. `change-construction`: another construction, and sizes. `no-remedy`: nothing that was tried does clearly better.',
    ACTIONS,
  ),
  changes: Type.Array(
    Type.Object({
      path: text('A JSON pointer into `input`.'),
      value: Type.Unsafe<ShownLength | Static<typeof RingWood> | Static<typeof Today>>({
        type: ['number', 'object'],
        description: 'The value to put there: a length in `units`, the wood of a part, or the day of making.',
      }),
    }),
    {
      description:
        'What to change. Put the values into `input` and send it again: the answer has the chances that are given here.',
    },
  ),
  probability: refTo<typeof SeasonalChances>('SeasonalChances'),
  message: text('The advice in one sentence.'),
})

const YearSegments = named('YearSegments', 'Parts that are glued up of segments.', {
  leastCount: Type.Optional(
    integer(
      'Fewest pieces in a layer with which the bearing, with balls of the mean size, runs all year on joints that hold. Absent where no usual count does.',
    ),
  ),
  acrossGrainStrength: shownNumber('Pull across the grain that the wood bears, in MPa: the weakest of the parts.'),
  message: text('Summary in words.'),
})

const answerFor = ([arrangement, own]: [ArrangementName, TProperties]) => {
  const name = arrangement.replace(/^./, (first) => first.toUpperCase())
  const state = stateOf(name, own)
  const at = refTo<typeof state>(`${name}SeasonalState`)
  const answer = named(
    `${name}SeasonalFitResponse`,
    'The bearing over a year. `band` is absent where it does not run today.',
    answerOf([arrangement], refTo<typeof SeasonalFitRequest>('SeasonalFitRequest'), {
      runsAllYear: flag('Whether at least 90 of 100 such bearings go together and run all year. Balls may knock.'),
      probability: refTo<typeof SeasonalChances>('SeasonalChances'),
      today: at,
      states: Type.Array(at, {
        description: 'The driest and the dampest end of the ranges, or the months.',
      }),
      band: Type.Optional(refTo<typeof RunningBand>('RunningBand')),
      buildIn: refTo<typeof BuildIn>('BuildIn'),
      segments: Type.Optional(refTo<typeof YearSegments>('YearSegments')),
      notes: Type.Array(Type.String(), { description: 'What the calculation assumes or leaves out.' }),
    }),
  )
  return { state, answer }
}
const ANSWERS = (Object.entries(OWN_STATES) as [ArrangementName, TProperties][]).map(answerFor)

export const SeasonalFitResponse = answerUnion(
  'SeasonalFitResponse',
  'The bearing over a year.',
  ...ANSWERS.map(({ answer }) => answer),
)
export type SeasonalFitResponse = Static<typeof SeasonalFitResponse>

/** Added once by `app.ts`, inner ones first. */
export const SEASONAL_FIT_SCHEMAS = [
  SeasonalFitRequest,
  RacewayShape,
  SeasonalChances,
  ...ANSWERS.map(({ state }) => state),
  BandEnd,
  RunningBand,
  BuildIn,
  YearSegments,
  ...ANSWERS.map(({ answer }) => answer),
  SeasonalFitResponse,
]
