import { type TProperties, Type } from 'typebox'
import { type CauseName, CONTRIBUTORS_OF } from '#shared/questions/tolerance/input.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { NORMAL_REACH } from '#shared/questions/tolerance/worst-ends.ts'
import { shownLength as shown } from '#src/api/length.ts'
import { shownNumber, shownShare } from '#src/api/number.ts'
import { refTo } from '#src/http/schema.ts'
import type { ToleranceCheckRequest } from './request-schema.ts'

/* What the answers of several arrangements are made of. */

const chance = shownShare

export const Percentile = Type.Object(
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

export const ToleranceHistogram = Type.Object(
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

export const effect = (of: string) =>
  Type.Object(
    {
      slope: shownNumber(`Change of the ${of} per unit of the contributor; for \`climate\` per % of moisture content.`),
      shareOfVariance: chance(`Share of the variance of the ${of}.`),
    },
    { description: `Effect on the ${of}.` },
  )

export const ContributorEffect = Type.Object(
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

const METHODS = ['nearly-linear', 'trials'] as const satisfies readonly ToleranceCheck['method']['kind'][]

export const share = (of: string) => shownShare(`Share of the variance of the ${of}.`)

export const methodOf = <Residual extends TProperties>(residual: Residual) =>
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

export const inputRef = refTo<typeof ToleranceCheckRequest>('ToleranceCheckRequest')
export const MADE = {
  trials: Type.Integer({ description: 'Bearings made and closed exactly.' }),
  converged: Type.Boolean({
    description:
      'Whether means, standard deviations and the ends of the middle 95 % are stable to `significantDigits`.',
  }),
  ballGap: refTo<typeof CheckedFigure>('CheckedFigure'),
}
export const notes = Type.Array(Type.String(), { description: 'Effects that were not considered.' })
export const jointly = (what: string) => ({
  jointFits: chance(
    `Chance that both the ball gap and ${what} fit. It is not the product of the two chances, because they share causes.`,
  ),
  jointFitsStandardError: chance('Standard error of `jointFits`.'),
})

export const RINGS = {
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
