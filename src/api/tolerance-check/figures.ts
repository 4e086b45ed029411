import { itemAt } from '#shared/numbers/item-at.ts'
import type { AimPoint, Outcomes } from '#shared/questions/tolerance/aim.ts'
import type { FigureCheck } from '#shared/questions/tolerance/figure-check.ts'
import type { CauseName } from '#shared/questions/tolerance/input.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { inUnits, mm, type Units } from '#shared/units/length.ts'
import type { Raw } from '#src/api/schema.ts'
import { percentParts } from '#src/words/figure.ts'
import { termsOf } from '#src/words/terms.ts'
import { explainAim, explainEffect, explainMethod, notes } from '#src/words/tolerance-check.ts'
import type { FitChances, ToleranceAnswer } from './figures-schema.ts'

/** The figures of a check by the names of an answer, in the core's units. */
export function figuresOf(
  checked: ToleranceCheck,
  { play: nameOfPlay, pointOf }: Pick<ToleranceAnswer, 'play' | 'pointOf'>,
) {
  const { method, figures, binds, jointFits, aim } = checked
  const both = <T>(ballGap: T, play: T) => ({ ballGap, [nameOfPlay]: play })
  const point = (at: AimPoint) => ({ ...pointOf(at), ballGap: at.ballGap, outcomes: chancesOf(at.outcomes) })
  return {
    binds: binds?.value,
    bindsStandardError: binds?.standardError,
    method: {
      kind: method.kind,
      residualShare: method.kind === 'trials' ? undefined : both(method.left.ballGap, method.left.play),
      message: explainMethod(checked),
    },
    trials: checked.trials,
    converged: checked.isConverged,
    ...both(figureOf(figures.ballGap), figureOf(figures.play)),
    jointFits: jointFits.value,
    jointFitsStandardError: jointFits.standardError,
    sensitivities: effectsOf(checked).map(({ gap, play, ...effect }) => ({ ...effect, ...both(gap, play) })),
    aim: {
      atNominal: point(aim.atNominal),
      bestYield: point(aim.bestYield),
      limitedRisk: aim.limitedRisk && point(aim.limitedRisk),
      message: explainAim(checked),
    },
    notes: notes(checked),
  }
}

const figureOf = ({ trials, outcomes, ...figure }: FigureCheck) => ({
  ...figure,
  monteCarlo: {
    ...trials,
    percentiles: figure.percentiles,
    shortest95: { min: trials.shortest.low, max: trials.shortest.high },
    standardError: {
      ...trials.standardError,
      shortest95: { min: trials.standardError.low, max: trials.standardError.high },
    },
  },
  probability: chancesOf(outcomes),
})

const chancesOf = ({ tooTight, fits, tooLoose }: Outcomes): Raw<typeof FitChances> => ({
  tooTight: tooTight.value,
  fits: fits.value,
  tooLoose: tooLoose.value,
  standardError: {
    tooTight: tooTight.standardError,
    fits: fits.standardError,
    tooLoose: tooLoose.standardError,
  },
})

function effectsOf({ figures, check }: ToleranceCheck) {
  const { ballGap, play: plays } = figures
  const { design } = check.input
  const { units } = design
  const effects = [...ballGap.rss.sensitivities]
    .toSorted(([, one], [, other]) => other.share - one.share)
    .flatMap(([contributor, gap]) => {
      const play = plays.rss.sensitivities.get(contributor)
      return play === undefined ? [] : [{ contributor, gap, play }]
    })
  const gapShares = percentParts(effects.map(({ gap }) => gap.share))
  const playShares = percentParts(effects.map(({ play }) => play.share))
  return effects.map(({ contributor, gap, play }, index) => ({
    contributor,
    gap: { slope: slopeOf(contributor, gap.slope, units), shareOfVariance: gap.share },
    play: { slope: slopeOf(contributor, play.slope, units), shareOfVariance: play.share },
    message: explainEffect(contributor, gap, play, {
      units,
      terms: termsOf(design),
      shares: { gap: itemAt(gapShares, index), play: itemAt(playShares, index) },
    }),
  }))
}

/** A length per length is the same in all units; the weather's is a length per % of moisture. */
const slopeOf = (cause: CauseName, slope: number, units: Units): number =>
  cause === 'climate' ? inUnits(mm(slope), units) : slope
