import type { Default } from '#shared/bearing/field.ts'
import { integer, nonNegativeLength, number } from '#shared/bearing/field.ts'
import { plain, trade } from '#shared/bearing/fields.ts'
import { SEEDS } from '#shared/statistics/random.ts'
import { MOST_SIGNIFICANT_DIGITS } from './defaults.ts'
import type { ContributorName } from './input.ts'

const OF_DESIGN = plain("the design's", 'the limits of the design hold here too')

/** Between what a bearing counts as fitting: one row each. */
export const LIMIT_FIELDS = {
  minBallGap: nonNegativeLength('Smallest gap that still runs, once the last ball is in.', OF_DESIGN),
  maxBallGap: nonNegativeLength('Largest gap that is still good.', OF_DESIGN),
  minRadialInternalClearance: nonNegativeLength(
    'Smallest play with which it still runs.',
    trade('0', 'the inner ring runs as long as it does not bind'),
  ),
  maxRadialInternalClearance: nonNegativeLength(
    'Largest play.',
    trade("twice the design's", 'twice the play still runs well'),
  ),
  minPlateGap: nonNegativeLength(
    'Turntables only: smallest space between the faces.',
    trade("half the design's", 'half of the space still turns free'),
  ),
  maxPlateGap: nonNegativeLength(
    'Turntables only: largest space between the faces.',
    trade("one and a half times the design's", 'half as much again still turns free'),
  ),
}

/** How the check is made: one row each. `trials` is a number or a word, and has its row beside its schema. */
export const METHOD_FIELDS = {
  significantDigits: integer(
    'Significant digits of the standard deviations to which the figures must be stable.',
    { min: 1, max: MOST_SIGNIFICANT_DIGITS },
    plain('2', 'two digits of an uncertainty are what anyone reports (JCGM 100)'),
  ),
  seed: integer(
    'Seed of the random numbers. The same seed gives the same answer on every machine.',
    { min: 0, max: SEEDS - 1 },
    plain('1', 'any seed does'),
  ),
  overshootRisk: number(
    'Chance of a groove too deep that you accept: `aim.limitedRisk` keeps to it.',
    { min: 0.0001, max: 0.5 },
    trade('0.05', 'one workpiece in twenty may be lost'),
  ),
}

/** The default of `trials`. */
export const TRIALS_DEFAULT = plain(
  'when-needed: none where the figures can be told nearer without (`method`), else 100000',
  'trials only where the figures cannot be found more exactly without them',
)

const AS_DESIGNED = plain('0', 'on average as designed')
/** The balls, where they are not named. */
export const BALL_DEFAULTS = {
  kind: plain('normal', 'as most lots of balls'),
  standardDeviation: plain('`design.balls.standardDeviation`', 'single balls differ as the design says'),
} as const
/** The default of the mean of each contributor that has one. */
export const MEAN_DEFAULTS = {
  ballDiameter: AS_DESIGNED,
  ballLotMean: AS_DESIGNED,
  outerGrooveBottomRadius: AS_DESIGNED,
  innerGrooveBottomRadius: AS_DESIGNED,
  outOfRound: plain('0', 'on average round'),
  finishFilm: plain('`finishAllowance`', 'on average as thick as the design says'),
  grooveCircleRadius: AS_DESIGNED,
  grooveDepth: AS_DESIGNED,
} as const satisfies Readonly<Record<ContributorName, Default>>
