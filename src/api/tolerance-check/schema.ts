import { type Static, type TProperties, Type } from 'typebox'
import { FEWEST_TRIALS, MOST_TRIALS } from '#shared/questions/tolerance/defaults.ts'
import { LIMIT_FIELDS, METHOD_FIELDS, TRIALS_DEFAULT } from '#shared/questions/tolerance/fields.ts'
import { type CauseName, CONTRIBUTORS_OF } from '#shared/questions/tolerance/input.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { NORMAL_REACH } from '#shared/questions/tolerance/worst-ends.ts'
import { answerOf, answerUnion } from '#src/api/answer.ts'
import type { Climate, Woods } from '#src/api/climate.ts'
import { designRef } from '#src/api/design-input.ts'
import { optionalField, propertiesOf, type RequestOf } from '#src/api/fields.ts'
import { shownLength as shown } from '#src/api/length.ts'
import { shownNumber, shownShare } from '#src/api/number.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { refTo } from '#src/http/schema.ts'
import { CONTRIBUTOR_SCHEMAS, type ContributorsRequest } from './contributors.ts'

const chance = shownShare

type Limits = RequestOf<typeof LIMIT_FIELDS>
export const ToleranceLimits = Type.Unsafe<Limits>(
  Type.Object(propertiesOf(LIMIT_FIELDS), {
    $id: 'ToleranceLimits',
    description: 'Between what a bearing counts as fitting.',
    additionalProperties: false,
  }),
)

/** No trials where the figures can be found more exactly without. */
export const WHEN_NEEDED = 'when-needed'

const trials = Type.Unsafe<number | 'auto' | typeof WHEN_NEEDED>({
  anyOf: [
    { type: 'integer', minimum: FEWEST_TRIALS, maximum: MOST_TRIALS },
    { type: 'string', enum: ['auto', WHEN_NEEDED] },
  ],
  description: `How many bearings to make, each closed exactly. \`auto\`: until the figures stand still to \`significantDigits\`, looked at after every 100000. Default: ${TRIALS_DEFAULT.stated}.`,
})

const request = {
  trials: Type.Optional(trials),
  significantDigits: optionalField(METHOD_FIELDS.significantDigits),
  seed: optionalField(METHOD_FIELDS.seed),
  overshootRisk: optionalField(METHOD_FIELDS.overshootRisk),
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
    percent: shownNumber('So many percent of the bearings lie below.'),
    value: shown('There.'),
    standardError: shown('How far off it may be: a standard error.'),
  },
  { $id: 'Percentile' },
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
          { min: shown('Lower end.'), max: shown('Upper end.') },
          { description: 'The shortest interval that holds 95 %.' },
        ),
        standardError: Type.Object(
          {
            mean: shown('Of the mean.'),
            standardDeviation: shown('Of the standard deviation.'),
            shortest95: Type.Object({ min: shown('Of its lower end.'), max: shown('Of its upper end.') }),
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
      slope: shownNumber(`How much the ${of} moves per unit of it; of \`climate\` per % of moisture content.`),
      shareOfVariance: chance(`Its part in the scatter of the ${of}.`),
    },
    { description: `On the ${of}.` },
  )

const ContributorEffect = Type.Object(
  {
    contributor: Type.Unsafe<CauseName>(Type.Enum([...CONTRIBUTORS_OF.rings, 'climate'], { type: 'string' })),
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

export const RollerAimPoint = Type.Object(
  {
    trackDiameter: shown("Of the outer ring's track."),
    wider: shown('By how much its radius is larger than designed; below 0 smaller.'),
    ballGap: shown('Where the middle of the spread comes to lie: its mean.'),
    outcomes: refTo<typeof FitChances>('FitChances'),
  },
  { $id: 'RollerAimPoint', description: 'A track to stop at, and what becomes of the ball gap then.' },
)

const rollerAimPoint = (description: string) =>
  Type.Unsafe<Static<typeof RollerAimPoint>>({ ...refTo<typeof RollerAimPoint>('RollerAimPoint'), description })

const METHODS = ['nearly-linear', 'trials'] as const satisfies readonly ToleranceCheck['method']['kind'][]

const share = (of: string) => shownShare(`Of the variance of the ${of}.`)

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

const inputRef = refTo<typeof ToleranceCheckRequest>('ToleranceCheckRequest')
const MADE = {
  trials: Type.Integer({ description: 'Bearings made and closed exactly.' }),
  converged: Type.Boolean({
    description: 'Whether means, deviations and the ends of the middle 95 % stand still to `significantDigits`.',
  }),
  ballGap: refTo<typeof CheckedFigure>('CheckedFigure'),
}
const notes = Type.Array(Type.String(), { description: 'What was not looked at.' })
const jointly = (what: string) => ({
  jointFits: chance(`That ball gap and ${what} both fit: no product of the two, for they share their causes.`),
  jointFitsStandardError: chance('Of `jointFits`.'),
})

const RINGS = {
  method: methodOf({ ballGap: share('ball gap'), radialInternalClearance: share('play') }),
  ...MADE,
  radialInternalClearance: refTo<typeof CheckedFigure>('CheckedFigure'),
  ...jointly('play'),
  sensitivities: Type.Array(refTo<typeof ContributorEffect>('ContributorEffect'), {
    description: 'The largest part in the scatter of the ball gap first.',
  }),
}

const RadialToleranceCheckResponse = Type.Object(
  answerOf(['radial'], inputRef, {
    ...RINGS,
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
    notes,
  }),
  { $id: 'RadialToleranceCheckResponse', description: 'Will it run, how often, and where to aim.' },
)

const RollerToleranceCheckResponse = Type.Object(
  answerOf(['roller'], inputRef, {
    ...RINGS,
    aim: Type.Object(
      {
        atNominal: rollerAimPoint('As designed.'),
        bestYield: rollerAimPoint('Where most rings fit.'),
        limitedRisk: Type.Optional(
          rollerAimPoint('Where most fit of those tracks at which too wide a one has the chance accepted at the most.'),
        ),
        message: Type.String({ description: 'Which to take, in words.' }),
      },
      {
        description:
          "Where to stop turning the outer ring's track: what is too narrow can be cut on, what is too wide cannot be put back. The inner ring is fitted afterwards.",
      },
    ),
    notes,
  }),
  { $id: 'RollerToleranceCheckResponse', description: 'The same of rollers between plain rings.' },
)

export const PlateContributorEffect = Type.Object(
  {
    contributor: Type.Unsafe<CauseName>(Type.Enum(CONTRIBUTORS_OF.plates, { type: 'string' })),
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
  answerOf(['thrust'], inputRef, {
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
    notes,
  }),
  { $id: 'ThrustToleranceCheckResponse', description: 'The same of a turntable.' },
)
export type ThrustToleranceCheckResponse = Static<typeof ThrustToleranceCheckResponse>

export const ToleranceCheckResponse = answerUnion(
  'ToleranceCheckResponse',
  'How often the bearing will fit, what matters most, and where to stop.',
  RadialToleranceCheckResponse,
  RollerToleranceCheckResponse,
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
  RollerAimPoint,
  RadialToleranceCheckResponse,
  RollerToleranceCheckResponse,
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
