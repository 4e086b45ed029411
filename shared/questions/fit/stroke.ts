import { itemAt } from '#shared/numbers/item-at.ts'
import { leastSquares } from '#shared/statistics/least-squares.ts'

/** Strokes of the abrasive that were counted, and the ball gap (play, for the inner ring) before and after [mm]. */
export interface CountedRemoval {
  readonly strokes: number
  readonly before: number
  readonly after: number
}

/** The depth of a stroke, estimated from counted strokes. */
export interface Stroke {
  /** Radial depth per stroke [mm]. */
  readonly radial: number
  /** Standard uncertainty of that, over itself. */
  readonly relativeUncertainty: number
}

/**
 * Removal per stroke: the line through the origin that fits the figure gained against the strokes, each count weighted by 1/strokes,
 * for the scatter of many strokes adds up. A single count leaves no scatter to estimate: then the two readings' own error stands in.
 *
 * @param figurePerDepth how the figure moves per radial depth
 * @param readingDeviation standard deviation of one reading of the figure
 * @returns undefined without counts, or where they do not show any removal
 */
export function strokeOf(
  counted: readonly CountedRemoval[],
  figurePerDepth: number,
  readingDeviation: number,
): Stroke | undefined {
  if (counted.length === 0) return undefined
  const fitted = leastSquares(
    counted.map(({ strokes }) => [strokes]),
    counted.map(({ before, after }) => after - before),
    counted.map(({ strokes }) => 1 / strokes),
  )
  const slope = itemAt(fitted.coefficients, 0)
  if (!(slope > 0)) return undefined
  const strokes = counted.reduce((sum, each) => sum + each.strokes, 0)
  const fromReadings = (Math.SQRT2 * readingDeviation * Math.sqrt(counted.length)) / strokes
  const uncertainty = Math.max(itemAt(fitted.standardErrors, 0), fromReadings)
  return { radial: slope / figurePerDepth, relativeUncertainty: uncertainty / slope }
}
