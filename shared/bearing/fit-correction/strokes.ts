import { itemAt } from '#shared/numbers/item-at.ts'
import { leastSquares } from '#shared/statistics/least-squares.ts'
import type { Removal } from './input.ts'

/** What a stroke of the maker's abrasive takes off, learnt from strokes that were counted. */
export interface RemovalPerStroke {
  /** Radial depth per stroke [mm]. */
  readonly perStroke: number
  /** Standard uncertainty of that, over itself. */
  readonly relativeUncertainty: number
}

/**
 * Removal per stroke: the line through the origin that fits the figure gained against the strokes, each count weighted
 * by 1/strokes (the scatter of many strokes adds up). A single count leaves no scatter to estimate: then the two
 * readings' own error stands in for it.
 *
 * @param figurePerDepth how the figure moves per radial depth
 * @param readingDeviation standard deviation of one reading of the figure
 * @returns undefined without counts, or where they do not show any removal
 */
export function removalPerStroke(
  history: readonly Removal[],
  figurePerDepth: number,
  readingDeviation: number,
): RemovalPerStroke | undefined {
  if (history.length === 0) return undefined
  const fitted = leastSquares(
    history.map(({ strokes }) => [strokes]),
    history.map(({ before, after }) => after - before),
    history.map(({ strokes }) => 1 / strokes),
  )
  const slope = itemAt(fitted.coefficients, 0)
  if (!(slope > 0)) return undefined
  const strokes = history.reduce((sum, counted) => sum + counted.strokes, 0)
  const fromReadings = (Math.SQRT2 * readingDeviation * Math.sqrt(history.length)) / strokes
  const uncertainty = Math.max(itemAt(fitted.standardErrors, 0), fromReadings)
  return { perStroke: slope / figurePerDepth, relativeUncertainty: uncertainty / slope }
}
