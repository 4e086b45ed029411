import { itemAt, lastOf } from '#shared/numbers/item-at.ts'
import type { Band, Plan, Tally, TrialSummary } from '#shared/statistics/monte-carlo.ts'
import { ABOVE, BELOW, countAt, lowsOf, shareOf, summaryOf, trialsIn, WITHIN } from '#shared/statistics/monte-carlo.ts'
import {
  accumulated,
  type CoarseHistogram,
  coarse,
  type Estimated,
  type Histogram,
  quantile,
  shortestInterval,
} from '#shared/statistics/streaming-histogram.ts'
import type { Chance, Outcomes } from './aim.ts'
import type { FigureName, WorstCase } from './check-model.ts'
import type { LinearLaw } from './linear-law.ts'
import { chanceBetween, densityAt, errorOfShareUnder, type NearlyLinearFigure } from './nearly-linear.ts'

/** Percentiles that are told. */
const PERCENTS = [0.1, 2.5, 5, 25, 50, 75, 95, 97.5, 99.9] as const

export interface FigureCheck {
  readonly nominal: number
  readonly worstCase: WorstCase[FigureName]
  readonly rss: LinearLaw
  readonly trials: TrialSummary
  readonly percentiles: readonly (Estimated & { readonly percent: number })[]
  readonly outcomes: Outcomes
  readonly histogram: CoarseHistogram
  /** The farthest that any trial came. */
  readonly seen: { readonly least: number; readonly most: number }
}

/** The part that does not depend on how the spread was found. */
export type KnownOfFigure = Pick<FigureCheck, 'nominal' | 'worstCase' | 'rss'>

export function figureOfTrials(known: KnownOfFigure, plan: Plan, tally: Tally, output: number): FigureCheck {
  const histogram = histogramOf(tally, output)
  const below = accumulated(histogram)
  const share = (place: number): Chance => shareOf(countAt(tally, output, place), trialsIn(tally))
  return {
    ...known,
    trials: summaryOf(tally, plan, output),
    percentiles: PERCENTS.map((percent) => ({ percent, ...quantile(histogram, percent / 100, below) })),
    outcomes: { tooTight: share(BELOW), fits: share(WITHIN), tooLoose: share(ABOVE) },
    histogram: coarse(histogram),
    seen: { least: histogram.least, most: histogram.most },
  }
}

export function histogramOf({ histograms }: Tally, output: number): Histogram {
  const histogram = histograms[output]
  if (histogram === undefined) throw new RangeError(`output must be one of the tally's, got ${output}`)
  return histogram
}

/** @param shown as so many bearings the histogram is told */
export function figureOfShares(
  known: KnownOfFigure,
  figure: NearlyLinearFigure,
  band: Band,
  shown: number,
): FigureCheck {
  const { histogram, below } = figure
  const scaled = scaledTo(histogram, below, shown)
  return {
    ...known,
    trials: summaryOfShares(figure),
    percentiles: PERCENTS.map((percent) => {
      const { value } = quantile(histogram, percent / 100, below)
      return { percent, value, standardError: errorOfPlace(figure, value) }
    }),
    outcomes: {
      tooTight: chanceBetween(figure, [], lowsOf(band)),
      fits: chanceBetween(figure, lowsOf(band), [band.max]),
      tooLoose: chanceBetween(figure, [band.max], []),
    },
    histogram: coarse(scaled),
    seen: { least: scaled.least, most: scaled.most },
  }
}

/** Standard error of a quantile: that of the share, over the density there. */
const errorOfPlace = (figure: NearlyLinearFigure, value: number): number =>
  errorOfShareUnder(figure, value) / densityAt(figure, value)

/** As in JCGM 101 (`jcgm-101`, a source). */
const COVERAGE = 0.95

function summaryOfShares(figure: NearlyLinearFigure): TrialSummary {
  const { histogram, below, errorAt } = figure
  const { mean, standardDeviation } = momentsOf(histogram)
  const shortest = shortestInterval(histogram, COVERAGE, below)
  const wander = wanderOf(figure, shortest)
  return {
    mean,
    standardDeviation,
    shortest,
    standardError: {
      mean: errorAt(mean),
      standardDeviation: (errorAt(mean - standardDeviation) + errorAt(mean + standardDeviation)) / 2,
      low: errorOfPlace(figure, shortest.low) + wander,
      high: errorOfPlace(figure, shortest.high) + wander,
    },
  }
}

function momentsOf({ counts, low, binWidth }: Histogram): {
  readonly mean: number
  readonly standardDeviation: number
} {
  let [count, first, second] = [0, 0, 0]
  counts.forEach((own, bin) => {
    count += own
    first += own * (bin + 0.5)
    second += own * (bin + 0.5) * (bin + 0.5)
  })
  const mean = first / count
  return {
    mean: low + mean * binWidth,
    standardDeviation: binWidth * Math.sqrt(Math.max(0, second / count - mean * mean)),
  }
}

/**
 * A shortest interval has the same density at both ends. Where that is off by an error of the curve's slope, it wanders until
 * it is so again: the farther the flatter the density falls at the ends.
 */
function wanderOf(figure: NearlyLinearFigure, { low, high }: { readonly low: number; readonly high: number }): number {
  const step = (high - low) / 100
  const fall = (value: number): number => {
    const [before, after] = [densityAt(figure, value - step), densityAt(figure, value + step)]
    return before > 0 && after > 0 ? Math.log(after / before) / (2 * step) : Number.POSITIVE_INFINITY
  }
  const steepness = Math.abs(fall(low) - fall(high))
  const error = Math.hypot(figure.slopeErrorAt(low), figure.slopeErrorAt(high))
  return Number.isFinite(steepness) ? Math.min(error / steepness, (high - low) / 2) : 0
}

/** The same spread with other counts in all. */
function scaledTo(histogram: Histogram, below: Float64Array, count: number): Histogram {
  const all = lastOf(below)
  const at = (edge: number): number => Math.round((itemAt(below, edge) / all) * count)
  const counts = histogram.counts.map((_, bin) => at(bin + 1) - at(bin))
  const [first, last] = [counts.findIndex((own) => own > 0), counts.findLastIndex((own) => own > 0)]
  const { low, binWidth } = histogram
  return { ...histogram, counts, least: low + first * binWidth, most: low + (last + 1) * binWidth }
}
