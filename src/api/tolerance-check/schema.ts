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
    description: 'Limits between which a bearing fits.',
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
  description: `Number of bearings to simulate, each closed exactly. \`auto\` goes on until the figures are stable to \`significantDigits\`, checked after every 100000. Default: ${TRIALS_DEFAULT.stated}.`,
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
        description: 'The woods on which the climate acts. Goes with `climate`.',
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
    percent: shownNumber('Percentage of the bearings below `value`.'),
    value: shown('Value of the percentile.'),
    standardError: shown('Standard error of `value`.'),
  },
  { $id: 'Percentile', description: 'A percentile of a figure.' },
)

export const FitChances = Type.Object(
  {
    tooTight: chance(
      'Share of the bearings below the lower limit. For the ball gap: also of those that the last ball does not enter.',
    ),
    fits: chance('Share of the bearings within the limits, ends included. For the ball gap: with the last ball in.'),
    tooLoose: chance('Share of the bearings above the upper limit. For the ball gap: the groove is too deep.'),
    standardError: Type.Object(
      {
        tooTight: chance('Standard error of `tooTight`.'),
        fits: chance('Standard error of `fits`.'),
        tooLoose: chance('Standard error of `tooLoose`.'),
      },
      { description: 'Standard errors.' },
    ),
  },
  { $id: 'FitChances', description: 'Shares of all bearings.' },
)

const ToleranceHistogram = Type.Object(
  {
    edges: Type.Array(shown('Edge between two bins.'), { description: 'One more than `counts`.' }),
    counts: Type.Array(Type.Integer({ minimum: 0 }), {
      description: 'Bearings in each bin; of the nearly linear method as many as there would be of 100000.',
    }),
  },
  { $id: 'ToleranceHistogram', description: 'How the bearings are spread: every one is in a bin.' },
)

export const CheckedFigure = Type.Object(
  {
    nominal: shown('Value as designed.'),
    worstCase: Type.Object(
      { min: shown('All contributors at their tight ends.'), max: shown('All contributors at their loose ends.') },
      {
        description: `Exact, with all contributors at their worst at once; ${NORMAL_REACH} standard deviations off where they are normal and have no end.`,
      },
    ),
    rss: Type.Object(
      { mean: shown('Mean value.'), standardDeviation: shown('Root of the sum of squares.') },
      { description: 'Law of propagation of uncertainty, by slopes worked out on paper (JCGM 100).' },
    ),
    monteCarlo: Type.Object(
      {
        mean: shown('Mean value.'),
        standardDeviation: shown('Standard deviation.'),
        percentiles: Type.Array(refTo<typeof Percentile>('Percentile')),
        shortest95: Type.Object(
          { min: shown('Lower end of the interval.'), max: shown('Upper end of the interval.') },
          { description: 'The shortest interval that holds 95 %.' },
        ),
        standardError: Type.Object(
          {
            mean: shown('Standard error of the mean.'),
            standardDeviation: shown('Standard error of the standard deviation.'),
            shortest95: Type.Object(
              { min: shown('Standard error of the lower end.'), max: shown('Standard error of the upper end.') },
              { description: 'Standard errors of the ends of `shortest95`.' },
            ),
          },
          { description: 'Standard errors.' },
        ),
      },
      { description: 'Bearings made by chance, each closed exactly (JCGM 101), or what `method` says instead.' },
    ),
    probability: refTo<typeof FitChances>('FitChances'),
    histogram: refTo<typeof ToleranceHistogram>('ToleranceHistogram'),
  },
  { $id: 'CheckedFigure', description: 'Distribution of a figure when nothing is perfect.' },
)

const effect = (of: string) =>
  Type.Object(
    {
      slope: shownNumber(`Change of the ${of} per unit of the contributor; for \`climate\` per % of moisture content.`),
      shareOfVariance: chance(`Share of the variance of the ${of}.`),
    },
    { description: `Effect on the ${of}.` },
  )

const ContributorEffect = Type.Object(
  {
    contributor: Type.Unsafe<CauseName>(
      Type.Enum([...CONTRIBUTORS_OF.rings, 'climate'], { type: 'string', description: 'The contributor.' }),
    ),
    ballGap: effect('ball gap'),
    radialInternalClearance: effect('play'),
    message: Type.String({ description: 'Summary in words.' }),
  },
  {
    $id: 'ContributorEffect',
    description: 'Effect of a contributor. `ballDiameter`: per unit of one ball. `outOfRound`: per unit of one groove.',
  },
)

export const AimPoint = Type.Object(
  {
    grooveDepth: shown('Depth of the outer groove.'),
    grooveBottomDiameter: shown('Diameter across the bottoms of the outer groove.'),
    deeper: shown('How much deeper than designed. Below 0 it is shallower.'),
    ballGap: shown('Mean ball gap at this aim.'),
    outcomes: refTo<typeof FitChances>('FitChances'),
  },
  { $id: 'AimPoint', description: 'A depth to stop at, and what becomes of the ball gap then.' },
)

const aimPoint = (description: string) =>
  Type.Unsafe<Static<typeof AimPoint>>({ ...refTo<typeof AimPoint>('AimPoint'), description })

export const RollerAimPoint = Type.Object(
  {
    trackDiameter: shown("Diameter of the outer ring's track."),
    wider: shown('How much larger its radius is than designed. Below 0 it is smaller.'),
    ballGap: shown('Mean ball gap at this aim.'),
    outcomes: refTo<typeof FitChances>('FitChances'),
  },
  { $id: 'RollerAimPoint', description: 'A track to stop at, and what becomes of the ball gap then.' },
)

const rollerAimPoint = (description: string) =>
  Type.Unsafe<Static<typeof RollerAimPoint>>({ ...refTo<typeof RollerAimPoint>('RollerAimPoint'), description })

const METHODS = ['nearly-linear', 'trials'] as const satisfies readonly ToleranceCheck['method']['kind'][]

const share = (of: string) => shownShare(`Share of the variance of the ${of}.`)

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
        Type.Object(residual, {
          description:
            'Nearly linear method only: the share of the variance that neither the line nor the curve explains.',
        }),
      ),
      message: Type.String({ description: 'The reason for this method, in words.' }),
    },
    { description: 'The method by which the figures were found.' },
  )

const inputRef = refTo<typeof ToleranceCheckRequest>('ToleranceCheckRequest')
const MADE = {
  trials: Type.Integer({ description: 'Bearings made and closed exactly.' }),
  converged: Type.Boolean({
    description:
      'Whether means, standard deviations and the ends of the middle 95 % are stable to `significantDigits`.',
  }),
  ballGap: refTo<typeof CheckedFigure>('CheckedFigure'),
}
const notes = Type.Array(Type.String(), { description: 'Effects that were not considered.' })
const jointly = (what: string) => ({
  jointFits: chance(
    `Chance that both the ball gap and ${what} fit. It is not the product of the two chances, because they share causes.`,
  ),
  jointFitsStandardError: chance('Standard error of `jointFits`.'),
})

const RINGS = {
  binds: chance('Chance that the inner ring does not go in among the balls, whatever the limits of the play.'),
  bindsStandardError: chance('Standard error of `binds`.'),
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
        atNominal: aimPoint('Value as designed.'),
        bestYield: aimPoint('The aim at which most rings fit.'),
        limitedRisk: Type.Optional(
          aimPoint(
            'The depth at which most rings fit while the chance of a groove too deep stays within the accepted risk.',
          ),
        ),
        message: Type.String({ description: 'Advice on which aim to choose.' }),
      },
      {
        description:
          'The depth to aim for in the outer groove. You can deepen a groove that is too shallow, but you cannot put wood back. Fit the inner ring afterwards.',
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
        atNominal: rollerAimPoint('Value as designed.'),
        bestYield: rollerAimPoint('The aim at which most rings fit.'),
        limitedRisk: Type.Optional(
          rollerAimPoint(
            'The diameter at which most rings fit while the chance of a track too wide stays within the accepted risk.',
          ),
        ),
        message: Type.String({ description: 'Advice on which aim to choose.' }),
      },
      {
        description:
          "The diameter to aim for in the outer ring's track. You can widen a track that is too narrow, but you cannot put wood back. Fit the inner ring afterwards.",
      },
    ),
    notes,
  }),
  {
    $id: 'RollerToleranceCheckResponse',
    description: 'How often a roller bearing fits, which contributors matter most, and the aim.',
  },
)

export const PlateContributorEffect = Type.Object(
  {
    contributor: Type.Unsafe<CauseName>(
      Type.Enum(CONTRIBUTORS_OF.plates, { type: 'string', description: 'The contributor.' }),
    ),
    ballGap: effect('ball gap'),
    plateGap: effect('space between the plates'),
    message: Type.String({ description: 'Summary in words.' }),
  },
  {
    $id: 'PlateContributorEffect',
    description:
      'Effect of a contributor. `ballDiameter`: per unit of one ball. Contributors of grooves: per unit of one plate.',
  },
)

export const PlateAimPoint = Type.Object(
  {
    grooveCircleDiameter: shown('Diameter of the groove circle.'),
    furtherOut: shown('How much larger its radius is than designed. Below 0 it is smaller.'),
    ballGap: shown('Mean ball gap at this aim.'),
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
        atNominal: plateAimPoint('Value as designed.'),
        bestYield: plateAimPoint('The aim at which most turntables fit.'),
        limitedRisk: Type.Optional(
          plateAimPoint(
            'The circle at which most turntables fit while the chance of a groove too far out stays within the accepted risk.',
          ),
        ),
        message: Type.String({ description: 'Advice on which aim to choose.' }),
      },
      {
        description:
          'The groove circle to aim for. You can move a groove out by cutting its outer flank, but you cannot put wood back.',
      },
    ),
    notes,
  }),
  {
    $id: 'ThrustToleranceCheckResponse',
    description: 'How often a turntable fits, which contributors matter most, and the aim.',
  },
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
