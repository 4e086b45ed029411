import { type Static, Type } from 'typebox'
import type { Trouble } from '#shared/questions/season/fit.ts'
import { arrangementTag } from '#src/api/answer.ts'
import type { Caution } from '#src/api/caution.ts'
import type { Climate, Woods } from '#src/api/climate.ts'
import { designRef } from '#src/api/design-input.ts'
import type { ShownLength } from '#src/api/length.ts'
import type { Source } from '#src/api/source.ts'
import type { UnitsName } from '#src/api/units.ts'
import type { Warning } from '#src/api/warning.ts'
import { refTo } from '#src/http/schema.ts'

const shown = (description: string) =>
  Type.Unsafe<ShownLength>({ ...refTo<typeof ShownLength>('ShownLength'), description })

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
    name: Type.String({ description: 'The time of the year.' }),
    temperature: Type.Number({ description: 'In `climate.temperatureScale`.' }),
    relativeHumidity: Type.Optional(
      Type.Number({ description: 'In %. Absent where no air at 20 degrees C would make the wood so wet.' }),
    ),
    moistureContent: Type.Number({ description: 'Of the wood at rest with the air, in % of its dry mass.' }),
    outerRing: refTo<typeof GrooveShape>('GrooveShape'),
    innerRing: refTo<typeof GrooveShape>('GrooveShape'),
    ballDiameter: Type.Object(
      {
        least: shown('Of a wooden ball, along its grain.'),
        mean: shown('Mean of three ways.'),
        most: shown('Along its rings.'),
      },
      { description: 'All alike unless the balls are of wood.' },
    ),
    ballGap: Type.Object(
      {
        least: shown('Over all places of the first ball.'),
        most: shown('Over all places of the first ball.'),
        withLargestBalls: shown(
          'The least if every wooden ball lay with its largest diameter along the ring: all but impossible.',
        ),
      },
      { description: 'The gap between the balls then.' },
    ),
    radialInternalClearance: Type.Object(
      {
        worst: shown('Inner ring turned to where it is tightest: below 0 it is stiff there.'),
        best: shown('Inner ring turned to where it is loosest.'),
      },
      { description: 'The play then.' },
    ),
    worstRotation: Type.Optional(
      Type.Number({
        description:
          'Degrees from the grain of the outer ring to that of the inner one where the play is worst, twice a turn. Absent where a ring stays round.',
      }),
    ),
    leastLandGap: shown('Between the lands, inner ring aside.'),
    troubles: Type.Array(trouble, { description: 'What goes wrong then; empty where nothing does.' }),
    message: Type.String({ description: 'The same in words.' }),
  },
  { $id: 'SeasonalState', description: 'The bearing at one time of the year.' },
)

export const BandEnd = Type.Object(
  {
    relativeHumidity: Type.Number({ description: 'In %.' }),
    moistureContent: Type.Number({ description: 'In %.' }),
    stoppedBy: Type.Array(trouble, { description: 'What stops it beyond. Nothing does where this is empty.' }),
  },
  { $id: 'BandEnd', description: 'An end of the band in which it runs.' },
)

export const RunningBand = Type.Object(
  {
    temperature: Type.Number({ description: "Today's, for which the band holds, in `climate.temperatureScale`." }),
    low: refTo<typeof BandEnd>('BandEnd'),
    high: refTo<typeof BandEnd>('BandEnd'),
    message: Type.String({ description: 'The same in words.' }),
  },
  { $id: 'RunningBand', description: 'The humidities, round that of today, in which the bearing runs.' },
)

export const BuildIn = Type.Object(
  {
    ballGap: Type.Optional(shown('The gap to build in today: that of the design where it will do.')),
    leastBallGap: Type.Optional(
      shown('Smallest gap today that closes all year. Absent where none below a whole ball does.'),
    ),
    mostBallGap: Type.Optional(
      shown(
        'Largest gap today that never knocks. Below the least, even below 0, where the year is too wide for the band.',
      ),
    ),
    radialInternalClearance: Type.Optional(shown('The play to build in today, with that gap.')),
    leastRadialInternalClearance: Type.Optional(
      shown('Smallest play today at which the rings never bind. Absent where it would cut into the bore.'),
    ),
    message: Type.String({ description: 'The same in words.' }),
  },
  { $id: 'BuildIn', description: "What to build in at today's humidity, for the bearing to run all year." },
)

export const SeasonalFitResponse = Type.Object(
  {
    arrangement: arrangementTag('radial'),
    units: refTo<typeof UnitsName>('Units'),
    input: refTo<typeof SeasonalFitRequest>('SeasonalFitRequest'),
    runsAllYear: Type.Boolean({ description: 'As designed, in every state asked for. Balls may knock.' }),
    today: refTo<typeof SeasonalState>('SeasonalState'),
    states: Type.Array(refTo<typeof SeasonalState>('SeasonalState'), {
      description: 'The driest and the dampest end of the ranges, or the months.',
    }),
    band: Type.Optional(refTo<typeof RunningBand>('RunningBand')),
    buildIn: refTo<typeof BuildIn>('BuildIn'),
    warnings: Type.Array(refTo<typeof Warning>('Warning')),
    notes: Type.Array(Type.String(), { description: 'What was taken for granted.' }),
    cautions: Type.Array(refTo<typeof Caution>('Caution')),
    sources: Type.Array(refTo<typeof Source>('Source')),
  },
  {
    $id: 'SeasonalFitResponse',
    description: 'What the year does to the bearing. `band` is absent where it does not run today.',
  },
)
export type SeasonalFitResponse = Static<typeof SeasonalFitResponse>
