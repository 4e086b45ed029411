import type { Static } from 'typebox'
import type { AimPoint, Outcomes } from '#shared/questions/tolerance/aim.ts'
import type { FigureName } from '#shared/questions/tolerance/check-model.ts'
import type { FigureCheck } from '#shared/questions/tolerance/figure-check.ts'
import type { CauseName } from '#shared/questions/tolerance/input.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { inUnits, mm, type Units } from '#shared/units/length.ts'
import type { answer } from '#src/api/answer.ts'
import { show } from '#src/api/length.ts'
import { type ShownNumber, showNumber } from '#src/api/number.ts'
import { termsOf } from '#src/words/terms.ts'
import { explainAim, explainEffect, explainMethod } from '#src/words/tolerance-check.ts'
import type { CheckedFigure, FitChances } from './figures-schema.ts'
import type { ToleranceCheckRequest } from './request-schema.ts'

/* The parts that the answers of several arrangements share. */

/** The head and foot of each answer, but for its arrangement. */
export type AnswerHead = Omit<Parameters<typeof answer<string, ToleranceCheckRequest, object>>[0], 'arrangement'>
export type AnswerFoot = Parameters<typeof answer>[2]

export const toRings = (checked: ToleranceCheck) => ({
  binds: showNumber(checked.binds?.value ?? Number.NaN),
  bindsStandardError: showNumber(checked.binds?.standardError ?? Number.NaN),
  method: toMethod(checked, ({ ballGap, play }) => ({ ballGap, radialInternalClearance: play })),
  ...toMade(checked),
  radialInternalClearance: toFigure(checked.figures.play, checked.check.input.design.units),
  ...toJoint(checked),
  sensitivities: toEffects(checked).map(({ contributor, ballGap, play: radialInternalClearance, message }) => ({
    contributor,
    ballGap,
    radialInternalClearance,
    message,
  })),
})

/** @param named how an arrangement calls what is left of either figure */
export function toMethod<Left>(
  checked: ToleranceCheck,
  named: (left: Readonly<Record<FigureName, ShownNumber>>) => Left,
): { kind: ToleranceCheck['method']['kind']; residualShare?: Left; message: string } {
  const { method } = checked
  return {
    kind: method.kind,
    ...(method.kind === 'trials'
      ? {}
      : { residualShare: named({ ballGap: showNumber(method.left.ballGap), play: showNumber(method.left.play) }) }),
    message: explainMethod(checked),
  }
}

export function toAim<Point>(checked: ToleranceCheck, toPoint: (point: AimPoint, units: Units) => Point) {
  const { aim, check } = checked
  const { units } = check.input.design
  const { limitedRisk } = aim
  return {
    atNominal: toPoint(aim.atNominal, units),
    bestYield: toPoint(aim.bestYield, units),
    ...(limitedRisk === undefined ? {} : { limitedRisk: toPoint(limitedRisk, units) }),
    message: explainAim(checked),
  }
}

export const toMade = ({ trials, isConverged, figures, check }: ToleranceCheck) => ({
  trials,
  converged: isConverged,
  ballGap: toFigure(figures.ballGap, check.input.design.units),
})

export const toJoint = ({ jointFits }: ToleranceCheck) => ({
  jointFits: showNumber(jointFits.value),
  jointFitsStandardError: showNumber(jointFits.standardError),
})

export function toFigure(figure: FigureCheck, units: Units): Static<typeof CheckedFigure> {
  const size = (length: number) => show(mm(length), units)
  const { worstCase, rss, trials, percentiles, histogram } = figure
  return {
    nominal: size(figure.nominal),
    worstCase: { min: size(worstCase.min), max: size(worstCase.max) },
    rss: { mean: size(rss.mean), standardDeviation: size(rss.standardDeviation) },
    monteCarlo: {
      mean: size(trials.mean),
      standardDeviation: size(trials.standardDeviation),
      percentiles: percentiles.map(({ percent, value, standardError }) => ({
        percent: showNumber(percent),
        value: size(value),
        standardError: size(standardError),
      })),
      shortest95: { min: size(trials.shortest.low), max: size(trials.shortest.high) },
      standardError: {
        mean: size(trials.standardError.mean),
        standardDeviation: size(trials.standardError.standardDeviation),
        shortest95: { min: size(trials.standardError.low), max: size(trials.standardError.high) },
      },
    },
    probability: toChances(figure.outcomes),
    histogram: { edges: histogram.edges.map(size), counts: [...histogram.counts] },
  }
}

export const toChances = ({ tooTight, fits, tooLoose }: Outcomes): Static<typeof FitChances> => ({
  tooTight: showNumber(tooTight.value),
  fits: showNumber(fits.value),
  tooLoose: showNumber(tooLoose.value),
  standardError: {
    tooTight: showNumber(tooTight.standardError),
    fits: showNumber(fits.standardError),
    tooLoose: showNumber(tooLoose.standardError),
  },
})

export function toEffects({ figures, check }: ToleranceCheck) {
  const { ballGap, play: plays } = figures
  const { units } = check.input.design
  return [...ballGap.rss.sensitivities]
    .toSorted(([, one], [, other]) => other.share - one.share)
    .flatMap(([contributor, gap]) => {
      const play = plays.rss.sensitivities.get(contributor)
      if (play === undefined) return []
      return [
        {
          contributor,
          ballGap: { slope: toSlope(contributor, gap.slope, units), shareOfVariance: showNumber(gap.share) },
          play: { slope: toSlope(contributor, play.slope, units), shareOfVariance: showNumber(play.share) },
          message: explainEffect(contributor, gap, play, { units, terms: termsOf(check.input.design) }),
        },
      ]
    })
}

/** A length per length is the same in all units; the weather's is a length per % of moisture. */
const toSlope = (cause: CauseName, slope: number, units: Units): ShownNumber =>
  showNumber(cause === 'climate' ? inUnits(mm(slope), units) : slope)
