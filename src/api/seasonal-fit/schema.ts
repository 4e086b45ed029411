import { type Static, Type } from 'typebox'
import type { Trouble } from '#shared/questions/season/fit.ts'
import { answerOf } from '#src/api/answer.ts'
import type { Climate, Woods } from '#src/api/climate.ts'
import { designRef } from '#src/api/design-input.ts'
import { shownLength as shown } from '#src/api/length.ts'
import { shownNumber } from '#src/api/number.ts'
import { refTo } from '#src/http/schema.ts'

const TROUBLES = ['balls-bind', 'rings-bind', 'lands-rub', 'balls-knock'] as const satisfies readonly Trouble[]
const trouble = Type.Unsafe<Trouble>(
  Type.Enum(TROUBLES, {
    type: 'string',
    description:
      '`balls-bind`: the gap is below `minBallGap`. `rings-bind`: the inner ring is stiff where it is turned across. `lands-rub`: the lands touch. `balls-knock`: the gap is above `maxBallGap`; it still runs.',
  }),
)

export const SeasonalFitRequest = Type.Object(
  {
    design: designRef,
    woods: refTo<typeof Woods>('Woods'),
    climate: refTo<typeof Climate>('Climate'),
  },
  {
    $id: 'SeasonalFitRequest',
    description: 'A bearing, its woods, the day on which it is made and the year that it must run in.',
    additionalProperties: false,
  },
)
export type SeasonalFitRequest = Static<typeof SeasonalFitRequest>

export const GrooveShape = Type.Object(
  {
    alongGrain: shown('Diameter across the groove bottoms along the grain.'),
    acrossGrain: shown('The same across the grain.'),
    outOfRound: shown('How far these two differ.'),
  },
  { $id: 'GrooveShape', description: 'What the circle of the groove bottom has become.' },
)

export const SeasonalState = Type.Object(
  {
    name: Type.String(),
    temperature: shownNumber('In `climate.temperatureScale`.'),
    relativeHumidity: Type.Optional(
      shownNumber('In %. Absent where no air at 20 degrees C would make the wood so wet.'),
    ),
    moistureContent: shownNumber('Of the wood at rest with the air, in % of its dry mass.'),
    outerRing: refTo<typeof GrooveShape>('GrooveShape'),
    innerRing: refTo<typeof GrooveShape>('GrooveShape'),
    ballDiameter: Type.Object(
      {
        min: shown('Of a wooden ball, along its grain.'),
        mean: shown('Mean of three ways.'),
        max: shown('Along its rings.'),
      },
      { description: 'All alike unless the balls are of wood.' },
    ),
    ballGap: Type.Object({
      min: shown('Over all places of the first ball.'),
      max: shown('Over all places of the first ball.'),
      withLargestBalls: shown(
        'The least if every wooden ball lay with its largest diameter along the ring: all but impossible.',
      ),
    }),
    radialInternalClearance: Type.Object({
      min: shown('Inner ring turned to where it is tightest: below 0 it is stiff there.'),
      max: shown('Inner ring turned to where it is loosest.'),
    }),
    worstRotation: Type.Optional(
      shownNumber(
        'Degrees from the grain of the outer ring to that of the inner one where the play is worst, twice a turn. Absent where a ring stays round.',
      ),
    ),
    leastLandGap: shown('Between the lands, inner ring aside.'),
    troubles: Type.Array(trouble),
    message: Type.String({ description: 'The same in words.' }),
  },
  { $id: 'SeasonalState', description: 'The bearing at one time of the year.' },
)

export const BandEnd = Type.Object(
  {
    relativeHumidity: shownNumber('In %.'),
    moistureContent: shownNumber('In %.'),
    stoppedBy: Type.Array(trouble, { description: 'What stops it beyond. Nothing does where this is empty.' }),
  },
  { $id: 'BandEnd', description: 'An end of the band in which it runs.' },
)

export const RunningBand = Type.Object(
  {
    temperature: shownNumber("Today's, for which the band holds, in `climate.temperatureScale`."),
    min: refTo<typeof BandEnd>('BandEnd'),
    max: refTo<typeof BandEnd>('BandEnd'),
    message: Type.String({ description: 'The same in words.' }),
  },
  { $id: 'RunningBand', description: 'The humidities, round that of today, in which the bearing runs.' },
)

export const BuildIn = Type.Object(
  {
    ballGap: Type.Optional(shown('The gap to build in today: that of the design where it will do.')),
    ballGapRange: Type.Object(
      {
        min: Type.Optional(
          shown('Smallest gap today that closes all year. Absent where none below a whole ball does.'),
        ),
        max: Type.Optional(
          shown(
            'Largest gap today that never knocks. Below the smallest, even below 0, where the year is too wide for the band.',
          ),
        ),
      },
      { description: 'What `ballGap` may be.' },
    ),
    radialInternalClearance: Type.Optional(shown('The play to build in today, with that gap.')),
    radialInternalClearanceRange: Type.Object(
      {
        min: Type.Optional(
          shown('Smallest play today at which the rings never bind. Absent where it would cut into the bore.'),
        ),
      },
      { description: 'What `radialInternalClearance` may be.' },
    ),
    message: Type.String({ description: 'The same in words.' }),
  },
  { $id: 'BuildIn', description: "What to build in at today's humidity, for the bearing to run all year." },
)

export const SeasonalFitResponse = Type.Object(
  answerOf(['radial'], refTo<typeof SeasonalFitRequest>('SeasonalFitRequest'), {
    runsAllYear: Type.Boolean({ description: 'As designed, in every state asked for. Balls may knock.' }),
    today: refTo<typeof SeasonalState>('SeasonalState'),
    states: Type.Array(refTo<typeof SeasonalState>('SeasonalState'), {
      description: 'The driest and the dampest end of the ranges, or the months.',
    }),
    band: Type.Optional(refTo<typeof RunningBand>('RunningBand')),
    buildIn: refTo<typeof BuildIn>('BuildIn'),
    notes: Type.Array(Type.String(), { description: 'What was taken for granted.' }),
  }),
  {
    $id: 'SeasonalFitResponse',
    description: 'What the year does to the bearing. `band` is absent where it does not run today.',
  },
)
export type SeasonalFitResponse = Static<typeof SeasonalFitResponse>
