import { type Static, type TProperties, Type } from 'typebox'
import { FEWEST_TRIALS, MOST_SIGNIFICANT_DIGITS, MOST_TRIALS } from '#shared/questions/tolerance/defaults.ts'
import { type CauseName, CONTRIBUTORS_OF } from '#shared/questions/tolerance/input.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { NORMAL_REACH } from '#shared/questions/tolerance/worst-ends.ts'
import { SEEDS } from '#shared/statistics/random.ts'
import { answerUnion, arrangementTag } from '#src/api/answer.ts'
import type { Caution } from '#src/api/caution.ts'
import type { Climate, Woods } from '#src/api/climate.ts'
import { designRef } from '#src/api/design-input.ts'
import type { NonNegativeLength, ShownLength } from '#src/api/length.ts'
import type { Source } from '#src/api/source.ts'
import type { UnitsName } from '#src/api/units.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { refTo } from '#src/http/schema.ts'
import { CONTRIBUTOR_SCHEMAS, type ContributorsRequest } from './contributors.ts'

const limit = (description: string) =>
  Type.Optional(
    Type.Unsafe<NonNegativeLength>({ ...refTo<typeof NonNegativeLength>('NonNegativeLength'), description }),
  )
const shown = (description: string) =>
  Type.Unsafe<ShownLength>({ ...refTo<typeof ShownLength>('ShownLength'), description })
const chance = (description: string) => Type.Number({ minimum: 0, maximum: 1, description })

export const ToleranceLimits = Type.Object(
  {
    minBallGap: limit("Smallest gap that still runs. Default: the design's."),
    maxBallGap: limit("Largest gap that is still good. Default: the design's."),
    minRadialInternalClearance: limit("Smallest play. Default: half the design's."),
    maxRadialInternalClearance: limit("Largest play. Default: twice the design's."),
    minPlateGap: limit("Of plates alone: smallest space between them. Default: half the design's."),
    maxPlateGap: limit("Of plates alone: largest space between them. Default: one and a half times the design's."),
  },
  { $id: 'ToleranceLimits', description: 'Between what a bearing counts as fitting.', additionalProperties: false },
)

const trials = Type.Unsafe<number | 'auto'>({
  anyOf: [
    { type: 'integer', minimum: FEWEST_TRIALS, maximum: MOST_TRIALS },
    { type: 'string', enum: ['auto'] },
  ],
  description:
    'How many bearings to make, each closed exactly. `auto`: until the figures stand still to `significantDigits`, looked at after every 100000. Default: none where the figures can be told nearer without (`method`), else 100000.',
})

const request = {
  trials: Type.Optional(trials),
  significantDigits: Type.Optional(
    Type.Integer({
      minimum: 1,
      maximum: MOST_SIGNIFICANT_DIGITS,
      description: 'Digits of the standard deviations to which the figures should stand still. Default: 2.',
    }),
  ),
  seed: Type.Optional(
    Type.Integer({
      minimum: 0,
      maximum: SEEDS - 1,
      description: 'The same seed gives the same answer, on every machine. Default: 1.',
    }),
  ),
  overshootRisk: Type.Optional(
    Type.Number({
      minimum: 0.0001,
      maximum: 0.5,
      description: 'Chance of a groove too deep that you accept: `aim.limitedRisk` keeps to it. Default: 0.05.',
    }),
  ),
}

export const ToleranceCheckRequest = Type.Object(
  {
    design: designRef,
    contributors: refTo<typeof ContributorsRequest>('ContributorsRequest'),
    woods: Type.Optional(
      Type.Unsafe<Woods>({
        ...refTo<typeof Woods>('Woods'),
        description: 'What the climate acts on: goes with `climate`.',
      }),
    ),
    climate: Type.Optional(
      Type.Unsafe<Climate>({
        ...refTo<typeof Climate>('Climate'),
        description:
          'The weather as one more thing that differs: each bearing meets one state of the year, all states alike. Goes with `woods`. Without it the wood stays as on the day of making.',
      }),
    ),
    limits: Type.Optional(refTo<typeof ToleranceLimits>('ToleranceLimits')),
    ...request,
  },
  {
    $id: 'ToleranceCheckRequest',
    description: 'A bearing, and what of it may differ from the design. `design.units` governs request and answer.',
    additionalProperties: false,
  },
)
export type ToleranceCheckRequest = Static<typeof ToleranceCheckRequest>

const Percentile = Type.Object(
  {
    percent: Type.Number({ description: 'So many percent of the bearings lie below.' }),
    value: shown('There.'),
    standardError: shown('How far off it may be: a standard error.'),
  },
  { $id: 'Percentile', description: 'A percentile of a figure.' },
)

export const FitChances = Type.Object(
  {
    tooTight: chance('Below the smallest that is good.'),
    fits: chance('Within the limits, both ends among them.'),
    tooLoose: chance('Above the largest that is good. For the ball gap: too deep a groove.'),
    standardError: Type.Object(
      { tooTight: chance('Of `tooTight`.'), fits: chance('Of `fits`.'), tooLoose: chance('Of `tooLoose`.') },
      { description: 'How far off each may be.' },
    ),
  },
  { $id: 'FitChances', description: 'Shares of all bearings.' },
)

const ToleranceHistogram = Type.Object(
  {
    edges: Type.Array(shown('Where one bin ends and the next begins.'), { description: 'One more than `counts`.' }),
    counts: Type.Array(Type.Integer({ minimum: 0 }), {
      description: 'Bearings in each bin; of the nearly linear method as many as there would be of 100000.',
    }),
  },
  { $id: 'ToleranceHistogram', description: 'How the bearings are spread: every one is in a bin.' },
)

export const CheckedFigure = Type.Object(
  {
    nominal: shown('As designed.'),
    worstCase: Type.Object(
      { min: shown('Everything at its tight end.'), max: shown('Everything at its loose end.') },
      {
        description: `Exact, with all contributors at their worst at once; ${NORMAL_REACH} standard deviations off where they are normal and have no end.`,
      },
    ),
    rss: Type.Object(
      { mean: shown('Mean.'), standardDeviation: shown('Root of the sum of squares.') },
      { description: 'Law of propagation of uncertainty, by slopes worked out on paper (JCGM 100).' },
    ),
    monteCarlo: Type.Object(
      {
        mean: shown('Mean.'),
        standardDeviation: shown('Standard deviation.'),
        percentiles: Type.Array(refTo<typeof Percentile>('Percentile')),
        shortest95: Type.Object(
          { low: shown('Lower end.'), high: shown('Upper end.') },
          { description: 'The shortest interval that holds 95 %.' },
        ),
        standardError: Type.Object(
          {
            mean: shown('Of the mean.'),
            standardDeviation: shown('Of the standard deviation.'),
            low: shown('Of the lower end of `shortest95`.'),
            high: shown('Of its upper end.'),
          },
          { description: 'How far off each may be.' },
        ),
      },
      { description: 'Bearings made by chance, each closed exactly (JCGM 101), or what `method` says instead.' },
    ),
    probability: refTo<typeof FitChances>('FitChances'),
    histogram: refTo<typeof ToleranceHistogram>('ToleranceHistogram'),
  },
  { $id: 'CheckedFigure', description: 'What becomes of a figure when nothing is perfect.' },
)

const effect = (of: string) =>
  Type.Object(
    {
      slope: Type.Number({
        description: `How much the ${of} moves per unit of it; of \`climate\` per % of moisture content.`,
      }),
      shareOfVariance: chance(`Its part in the scatter of the ${of}.`),
    },
    { description: `On the ${of}.` },
  )

export const ContributorEffect = Type.Object(
  {
    contributor: Type.Unsafe<CauseName>(
      Type.Enum([...CONTRIBUTORS_OF.rings, 'climate'], { type: 'string', description: 'The contributor.' }),
    ),
    ballGap: effect('ball gap'),
    radialInternalClearance: effect('play'),
    message: Type.String({ description: 'The same in words.' }),
  },
  {
    $id: 'ContributorEffect',
    description: 'What a contributor does. `ballDiameter`: per unit of one ball; `outOfRound`: per unit of one groove.',
  },
)

export const AimPoint = Type.Object(
  {
    grooveDepth: shown('Of the outer groove, land to bottom.'),
    grooveBottomDiameter: shown('Across its bottoms.'),
    deeper: shown('By how much deeper than designed; below 0 shallower.'),
    ballGap: shown('Where the middle of the spread comes to lie: its mean.'),
    outcomes: refTo<typeof FitChances>('FitChances'),
  },
  { $id: 'AimPoint', description: 'A depth to stop at, and what becomes of the ball gap then.' },
)

const aimPoint = (description: string) =>
  Type.Unsafe<Static<typeof AimPoint>>({ ...refTo<typeof AimPoint>('AimPoint'), description })

const METHODS = ['nearly-linear', 'trials'] as const satisfies readonly ToleranceCheck['method']['kind'][]

const share = (of: string) => Type.Number({ minimum: 0, maximum: 1, description: `Of the variance of the ${of}.` })

const methodOf = <Residual extends TProperties>(residual: Residual) =>
  Type.Object(
    {
      kind: Type.Unsafe<(typeof METHODS)[number]>(
        Type.Enum(METHODS, {
          type: 'string',
          description:
            '`trials`: bearings made by chance, each closed exactly. `nearly-linear`: the distribution of straight lines, exactly, bent as some exact bearings show; all its figures are nearer than those of 100000 trials.',
        }),
      ),
      residualShare: Type.Optional(
        Type.Object(residual, { description: 'Of the nearly linear method: what neither line nor curve tells.' }),
      ),
      message: Type.String({ description: 'Why this one, in words.' }),
    },
    { description: 'How the figures were found.' },
  )

/** What an answer says of itself before its figures, and after them. */
const HEAD = {
  units: refTo<typeof UnitsName>('Units'),
  input: refTo<typeof ToleranceCheckRequest>('ToleranceCheckRequest'),
  advice: Type.String({ description: 'What it comes to, and what to do, in words.' }),
}
const MADE = {
  trials: Type.Integer({ description: 'Bearings made and closed exactly.' }),
  converged: Type.Boolean({
    description: 'Whether means, deviations and the ends of the middle 95 % stand still to `significantDigits`.',
  }),
  ballGap: refTo<typeof CheckedFigure>('CheckedFigure'),
}
const FOOT = {
  notes: Type.Array(Type.String(), { description: 'What was not looked at.' }),
  cautions: Type.Array(refTo<typeof Caution>('Caution')),
  sources: Type.Array(refTo<typeof Source>('Source')),
}
const jointly = (what: string) => ({
  jointFits: chance(`That ball gap and ${what} both fit: no product of the two, for they share their causes.`),
  jointFitsStandardError: chance('Of `jointFits`.'),
})

export const RingToleranceCheckResponse = Type.Object(
  {
    arrangement: arrangementTag('radial', 'roller'),
    ...HEAD,
    method: methodOf({ ballGap: share('ball gap'), radialInternalClearance: share('play') }),
    ...MADE,
    radialInternalClearance: refTo<typeof CheckedFigure>('CheckedFigure'),
    ...jointly('play'),
    sensitivities: Type.Array(refTo<typeof ContributorEffect>('ContributorEffect'), {
      description: 'The largest part in the scatter of the ball gap first.',
    }),
    aim: Type.Object(
      {
        atNominal: aimPoint('As designed.'),
        bestYield: aimPoint('Where most rings fit.'),
        limitedRisk: Type.Optional(
          aimPoint('Where most fit of those depths at which too deep a groove has the chance accepted at the most.'),
        ),
        message: Type.String({ description: 'Which to take, in words.' }),
      },
      {
        description:
          'Where to stop cutting the outer groove: what is too shallow can be cut on, what is too deep cannot be put back. The inner ring is fitted afterwards.',
      },
    ),
    ...FOOT,
  },
  { $id: 'RingToleranceCheckResponse', description: 'Will it run, how often, and where to aim.' },
)
export type RingToleranceCheckResponse = Static<typeof RingToleranceCheckResponse>

export const PlateContributorEffect = Type.Object(
  {
    contributor: Type.Unsafe<CauseName>(
      Type.Enum(CONTRIBUTORS_OF.plates, { type: 'string', description: 'The contributor.' }),
    ),
    ballGap: effect('ball gap'),
    plateGap: effect('space between the plates'),
    message: Type.String({ description: 'The same in words.' }),
  },
  {
    $id: 'PlateContributorEffect',
    description:
      'What a contributor does. `ballDiameter`: per unit of one ball; those of grooves: per unit of one plate.',
  },
)

export const PlateAimPoint = Type.Object(
  {
    grooveCircleDiameter: shown("Across the groove's circle."),
    furtherOut: shown('By how much its radius is larger than designed; below 0 smaller.'),
    ballGap: shown('Where the middle of the spread comes to lie: its mean.'),
    outcomes: refTo<typeof FitChances>('FitChances'),
  },
  { $id: 'PlateAimPoint', description: 'A circle to stop at, in both plates, and what becomes of the ball gap then.' },
)

const plateAimPoint = (description: string) =>
  Type.Unsafe<Static<typeof PlateAimPoint>>({ ...refTo<typeof PlateAimPoint>('PlateAimPoint'), description })

export const ThrustToleranceCheckResponse = Type.Object(
  {
    ...HEAD,
    arrangement: arrangementTag('thrust'),
    method: methodOf({ ballGap: share('ball gap'), plateGap: share('space between the plates') }),
    ...MADE,
    plateGap: refTo<typeof CheckedFigure>('CheckedFigure'),
    ...jointly('the space between the plates'),
    sensitivities: Type.Array(refTo<typeof PlateContributorEffect>('PlateContributorEffect'), {
      description: 'The largest part in the scatter of the ball gap first.',
    }),
    aim: Type.Object(
      {
        atNominal: plateAimPoint('As designed.'),
        bestYield: plateAimPoint('Where most fit.'),
        limitedRisk: Type.Optional(
          plateAimPoint('Where most fit of those circles at which too far out has the chance accepted at the most.'),
        ),
        message: Type.String({ description: 'Which to take, in words.' }),
      },
      {
        description:
          'Where to stop moving the groove out: what is too far in can be cut on at the outer flank, what is too far out cannot be put back.',
      },
    ),
    ...FOOT,
  },
  { $id: 'ThrustToleranceCheckResponse', description: 'The same of a turntable.' },
)
export type ThrustToleranceCheckResponse = Static<typeof ThrustToleranceCheckResponse>

export const ToleranceCheckResponse = answerUnion(
  'ToleranceCheckResponse',
  'How often the bearing will fit, what matters most, and where to stop.',
  RingToleranceCheckResponse,
  ThrustToleranceCheckResponse,
)
export type ToleranceCheckResponse = Static<typeof ToleranceCheckResponse>

/** What an answer is made of, inner ones first. */
const ANSWER_SCHEMAS = [
  Percentile,
  FitChances,
  ToleranceHistogram,
  CheckedFigure,
  ContributorEffect,
  AimPoint,
  RingToleranceCheckResponse,
  PlateContributorEffect,
  PlateAimPoint,
  ThrustToleranceCheckResponse,
  ToleranceCheckResponse,
]

export const TOLERANCE_CHECK_SCHEMAS = [
  ...CONTRIBUTOR_SCHEMAS,
  ToleranceLimits,
  ToleranceCheckRequest,
  ...ANSWER_SCHEMAS,
]

export const SVG_TYPE = 'image/svg+xml'

export const ANSWERS = {
  [JSON_TYPE]: { schema: refTo<typeof ToleranceCheckResponse>('ToleranceCheckResponse') },
  [SVG_TYPE]: { schema: Type.String({ description: 'How the ball gap is spread, with limits and aim.' }) },
}
