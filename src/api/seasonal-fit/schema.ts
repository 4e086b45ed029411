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
    acrossGrain: shown('Diameter across the groove bottoms across the grain.'),
    outOfRound: shown('Difference of the two.'),
  },
  { $id: 'GrooveShape', description: 'Shape of the groove bottom, a circle when it was cut.' },
)

export const SeasonalState = Type.Object(
  {
    name: Type.String({ description: 'The time of the year.' }),
    temperature: shownNumber('Temperature in `climate.temperatureScale`.'),
    relativeHumidity: Type.Optional(
      shownNumber('Relative humidity in %. Absent where no air at 20 degrees C makes wood that wet.'),
    ),
    moistureContent: shownNumber('Moisture content of wood in equilibrium with the air, in % of its dry mass.'),
    outerRing: refTo<typeof GrooveShape>('GrooveShape'),
    innerRing: refTo<typeof GrooveShape>('GrooveShape'),
    ballDiameter: Type.Object(
      {
        min: shown('Diameter of a wooden ball along its grain.'),
        mean: shown('Mean of the three directions.'),
        max: shown('Diameter of a wooden ball along its growth rings.'),
      },
      { description: 'Ball diameters. They differ for wooden balls only.' },
    ),
    ballGap: Type.Object(
      {
        min: shown('Smallest gap over all positions of the first ball.'),
        max: shown('Largest gap over all positions of the first ball.'),
        withLargestBalls: shown(
          'Smallest gap if every wooden ball lay with its largest diameter along the ring, which is very unlikely.',
        ),
      },
      { description: 'The ball gap at that time.' },
    ),
    radialInternalClearance: Type.Object(
      {
        min: shown('Play with the inner ring turned to its tightest position. Below 0 it is stiff there.'),
        max: shown('Play with the inner ring turned to its loosest position.'),
      },
      { description: 'The play at that time.' },
    ),
    worstRotation: Type.Optional(
      shownNumber(
        'Degrees from the grain of the outer ring to that of the inner one where the play is worst, twice a turn. Absent where a ring stays round.',
      ),
    ),
    leastLandGap: shown('Smallest space between the lands, with the inner ring to one side.'),
    troubles: Type.Array(trouble, { description: 'The troubles at that time. Empty where there are none.' }),
    message: Type.String({ description: 'Summary in words.' }),
  },
  { $id: 'SeasonalState', description: 'The bearing at one time of the year.' },
)

export const BandEnd = Type.Object(
  {
    relativeHumidity: shownNumber('Relative humidity in %.'),
    moistureContent: shownNumber('Moisture content of the wood in %.'),
    stoppedBy: Type.Array(trouble, {
      description: 'The troubles beyond this end. Empty where nothing stops the bearing.',
    }),
  },
  { $id: 'BandEnd', description: 'An end of the band in which it runs.' },
)

export const RunningBand = Type.Object(
  {
    temperature: shownNumber("Today's, for which the band holds, in `climate.temperatureScale`."),
    min: refTo<typeof BandEnd>('BandEnd'),
    max: refTo<typeof BandEnd>('BandEnd'),
    message: Type.String({ description: 'Summary in words.' }),
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
      { description: 'Range for `ballGap`.' },
    ),
    radialInternalClearance: Type.Optional(shown('The play to build in today, with that gap.')),
    radialInternalClearanceRange: Type.Object(
      {
        min: Type.Optional(
          shown('Smallest play today at which the rings never bind. Absent where it would cut into the bore.'),
        ),
      },
      { description: 'Range for `radialInternalClearance`.' },
    ),
    message: Type.String({ description: 'Summary in words.' }),
  },
  { $id: 'BuildIn', description: "Gap and play to build in at today's humidity, so that the bearing runs all year." },
)

export const SeasonalFitResponse = Type.Object(
  answerOf(['radial'], refTo<typeof SeasonalFitRequest>('SeasonalFitRequest'), {
    runsAllYear: Type.Boolean({
      description: 'Whether the bearing as designed runs in every requested state. Balls may knock.',
    }),
    today: refTo<typeof SeasonalState>('SeasonalState'),
    states: Type.Array(refTo<typeof SeasonalState>('SeasonalState'), {
      description: 'The driest and the dampest end of the ranges, or the months.',
    }),
    band: Type.Optional(refTo<typeof RunningBand>('RunningBand')),
    buildIn: refTo<typeof BuildIn>('BuildIn'),
    notes: Type.Array(Type.String(), { description: 'Assumptions that were made.' }),
  }),
  {
    $id: 'SeasonalFitResponse',
    description: 'The bearing over a year. `band` is absent where it does not run today.',
  },
)
export type SeasonalFitResponse = Static<typeof SeasonalFitResponse>
