import { type TProperties, type TSchema, Type } from 'typebox'
import type { AimPlace } from '#shared/questions/tolerance/check-model.ts'
import { type CauseName, CONTRIBUTORS_OF } from '#shared/questions/tolerance/input.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { NORMAL_REACH } from '#shared/questions/tolerance/worst-ends.ts'
import { shownLength as shown } from '#src/api/length.ts'
import { shownNumber, shownShare } from '#src/api/number.ts'
import { choiceOf, flag, integer, named, object, ref, text } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'
import type { ToleranceCheckRequest } from './request-schema.ts'

/* Schemas that the answers of several arrangements share. */

/** How an arrangement answers. */
export interface ToleranceAnswer {
  readonly Response: TSchema
  readonly Point: TSchema
  /** The name of what is left beside the ball gap. */
  readonly play: string
  /** The names of a point of aim that are not the core's. */
  pointOf(place: AimPlace): object
}

const chance = shownShare

export const Percentile = named('Percentile', 'A percentile of a figure.', {
  percent: shownNumber('Percentage of the bearings below `value`.'),
  value: shown('Value of the percentile.'),
  standardError: shown('Standard error of `value`.'),
})

export const FitChances = named('FitChances', 'Shares of all bearings.', {
  tooTight: chance(
    'Share of the bearings below the lower limit. For the ball gap: also of those that the last ball does not enter.',
  ),
  fits: chance('Share of the bearings within the limits, ends included. For the ball gap: with the last ball in.'),
  tooLoose: chance('Share of the bearings above the upper limit. For the ball gap: the groove is too deep.'),
  standardError: object('Standard errors.', {
    tooTight: chance('Standard error of `tooTight`.'),
    fits: chance('Standard error of `fits`.'),
    tooLoose: chance('Standard error of `tooLoose`.'),
  }),
})

export const ToleranceHistogram = named('ToleranceHistogram', 'How the bearings are spread: every one is in a bin.', {
  edges: Type.Array(shown('Edge between two bins.'), { description: 'One more than `counts`.' }),
  counts: Type.Array(Type.Integer({ minimum: 0 }), {
    description: 'Bearings in each bin; of the nearly linear method as many as there would be of 100000.',
  }),
})

export const CheckedFigure = named('CheckedFigure', 'Distribution of a figure when nothing is perfect.', {
  nominal: shown('Value as designed.'),
  worstCase: object(
    `Exact, with all contributors at their worst at once; ${NORMAL_REACH} standard deviations off where they are normal and have no end.`,
    { min: shown('All contributors at their tight ends.'), max: shown('All contributors at their loose ends.') },
  ),
  rss: object('Law of propagation of uncertainty, by slopes worked out on paper (JCGM 100).', {
    mean: shown('Mean value.'),
    standardDeviation: shown('Root of the sum of squares.'),
  }),
  monteCarlo: object('Bearings made by chance, each closed exactly (JCGM 101), or what `method` says instead.', {
    mean: shown('Mean value.'),
    standardDeviation: shown('Standard deviation.'),
    percentiles: Type.Array(ref(Percentile)),
    shortest95: object('The shortest interval that holds 95 %.', {
      min: shown('Lower end of the interval.'),
      max: shown('Upper end of the interval.'),
    }),
    standardError: object('Standard errors.', {
      mean: shown('Standard error of the mean.'),
      standardDeviation: shown('Standard error of the standard deviation.'),
      shortest95: object('Standard errors of the ends of `shortest95`.', {
        min: shown('Standard error of the lower end.'),
        max: shown('Standard error of the upper end.'),
      }),
    }),
  }),
  probability: ref(FitChances),
  histogram: ref(ToleranceHistogram),
})

/** The effects of all contributors, each by its schema. */
export const effectsOf = <Effect extends TSchema>(effect: Effect) =>
  Type.Array(ref(effect), { description: 'The largest part in the scatter of the ball gap first.' })

export const effect = (of: string) =>
  object(`Effect on the ${of}.`, {
    slope: shownNumber(`Change of the ${of} per unit of the contributor; for \`climate\` per % of moisture content.`),
    shareOfVariance: chance(`Share of the variance of the ${of}.`),
  })

export const ContributorEffect = named(
  'ContributorEffect',
  'Effect of a contributor. `ballDiameter`: per unit of one ball. `outOfRound`: per unit of one groove.',
  {
    contributor: choiceOf<CauseName>('The contributor.', [...CONTRIBUTORS_OF.rings, 'climate']),
    ballGap: effect('ball gap'),
    radialInternalClearance: effect('play'),
    message: text('Summary in words.'),
  },
)

const METHODS = ['nearly-linear', 'trials'] as const satisfies readonly ToleranceCheck['method']['kind'][]

export const share = (of: string) => shownShare(`Share of the variance of the ${of}.`)

export const methodOf = <Residual extends TProperties>(residual: Residual) =>
  object('The method by which the figures were found.', {
    kind: Type.Unsafe<(typeof METHODS)[number]>(
      choiceOf(
        '`trials`: bearings made by chance, each closed exactly. `nearly-linear`: the distribution of straight lines, exactly, bent as some exact bearings show; all its figures are nearer than those of 100000 trials.',
        METHODS,
      ),
    ),
    residualShare: Type.Optional(
      object(
        'Nearly linear method only: the share of the variance that neither the line nor the curve explains.',
        residual,
      ),
    ),
    message: text('The reason for this method, in words.'),
  })

export const inputRef = refTo<typeof ToleranceCheckRequest>('ToleranceCheckRequest')
export const MADE = {
  trials: integer('Bearings made and closed exactly.'),
  converged: flag(
    'Whether means, standard deviations and the ends of the middle 95 % are stable to `significantDigits`.',
  ),
  ballGap: ref(CheckedFigure),
}
export const notes = Type.Array(Type.String(), { description: 'Effects that were not considered.' })
/**
 * The aim, for an arrangement with such points of aim.
 *
 * @param bestYield the aim at which most fit, in words; `limitedRisk` likewise for the aim within the accepted risk
 */
export const aimOf = <Point extends TSchema>(
  point: Point,
  description: string,
  { bestYield, limitedRisk }: { readonly bestYield: string; readonly limitedRisk: string },
) =>
  object(description, {
    atNominal: ref(point, 'Value as designed.'),
    bestYield: ref(point, bestYield),
    limitedRisk: Type.Optional(ref(point, limitedRisk)),
    message: text('Advice on which aim to choose.'),
  })

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
  radialInternalClearance: ref(CheckedFigure),
  ...jointly('play'),
  sensitivities: effectsOf(ContributorEffect),
}
