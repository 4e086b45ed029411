import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { inUnits, type Mm, mm } from '#shared/units/length.ts'
import { distributionSheet } from '#src/drawings/sheets/distribution.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { wordedFor } from '#src/words/arrangement-words.ts'
import { figure, percent } from '#src/words/figure.ts'
import { advice, explainAim, placeOf } from '#src/words/tolerance-check.ts'

/** Where a picture has its words. */
const TEXTS: ReadonlySet<string> = new Set(['title', 'description', 'text', 'regions', 'axis', 'foot'])

/** The spread of the ball gap as a picture: limits, aim, too tight, too loose. */
export function toGapSheet(checked: ToleranceCheck): string {
  const { check, figures, aim, trials, method } = checked
  const { design } = check.input
  const { units, balls } = design
  const { histogram, outcomes } = figures.ballGap
  const along = (length: number): number => inUnits(mm(length), units)
  const size = (length: number): string => figure(mm(length), units)
  const { min, max } = check.gapLimits
  return toSvg(
    distributionSheet(
      wordedFor(
        design,
        {
          title: `Ball gap of ${balls.count} balls of ${figure(balls.diameter as Mm, units)}: ${method.kind === 'trials' ? `${trials} bearings made by chance` : 'how all that could be made are spread'}`,
          description: `${advice(checked)} ${explainAim(checked)}`,
          edges: histogram.edges.map(along),
          counts: histogram.counts,
          min: along(min),
          max: along(max),
          marks: [
            { at: along(min), role: 'hidden', text: `smallest good gap: ${size(min)}` },
            { at: along(max), role: 'hidden', text: `largest good gap: ${size(max)}` },
            {
              at: along(aim.bestYield.ballGap),
              role: 'centre',
              text: `aim so that most fit: middle of the spread at ${size(aim.bestYield.ballGap)}, groove ${placeOf(aim.bestYield, check)}`,
            },
            ...(aim.limitedRisk === undefined
              ? []
              : [
                  {
                    at: along(aim.limitedRisk.ballGap),
                    role: 'centre' as const,
                    text: `aim so that ${percent(check.input.overshootRisk)} at the most are too deep: middle at ${size(aim.limitedRisk.ballGap)}, groove ${placeOf(aim.limitedRisk, check)}`,
                  },
                ]),
          ],
          regions: [
            `too tight: ${percent(outcomes.tooTight.value)}`,
            `fits: ${percent(outcomes.fits.value)}`,
            `too loose: ${percent(outcomes.tooLoose.value)}`,
          ],
          axis: `ball gap (${units}) of grooves cut as designed; below 0 the ring does not close`,
          countAxis: '% of bearings per bar',
          foot: [
            `Mean ${size(figures.ballGap.trials.mean)}, standard deviation ${size(figures.ballGap.trials.standardDeviation)}; 95 % from ${size(figures.ballGap.trials.shortest.low)} to ${size(figures.ballGap.trials.shortest.high)}.${method.kind === 'trials' ? ` Seed ${check.input.seed}.` : ''}`,
          ],
        },
        TEXTS,
      ),
    ),
  )
}
