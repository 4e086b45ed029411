import { type Band, lowsOf } from '#shared/statistics/monte-carlo.ts'
import {
  accumulated,
  BINS,
  emptyHistogram,
  type Histogram,
  shareBelow,
} from '#shared/statistics/streaming-histogram.ts'
import { binnedSum, type Noise, type Part, type Pieces, spreadOf } from '#shared/statistics/sum-of-parts.ts'
import { type BentLine, bentLine } from './bent-line.ts'
import type { Check } from './checked.ts'
import { jointShare } from './joint-share.ts'
import { linearLaw } from './linear-law.ts'
import { linearSample } from './linear-sample.ts'
import { type Line, linesOf } from './lines.ts'

/*
 * The short cut. Gap and play are nearly straight lines in what differs. The distribution of the lines is known without a
 * trial, by the characteristic functions of what differs; how the exact figures leave the lines is seen from a few exact
 * trials. Together they give every share and percentile nearer than a hundred thousand trials do. It holds as long as little
 * is left that neither line nor curve tells.
 */

/** Chunks of exact trials: two thousand. */
const CHUNKS = 8

/** Largest part of a figure's variance that line and curve may leave. */
export const MOST_LEFT = 1e-4

/** A share may be off by this much where a series rounds the corners of a distribution. */
const MOST_ROUNDED = 1e-5

/** Less than this no share is told apart from another: between bins all is taken as evenly spread. */
const LEAST_ERROR = 1e-6

/** Bins reach so many standard deviations either side. */
const REACH = 8

/** The curve is followed from knot to knot, a thirty-second of a standard deviation apart, by straight pieces. */
const KNOTS = 512

/** Counts of a histogram that stand for shares: so many are all of it. */
const ALL = 2 ** 30

/** Why an answer rests on trials alone. */
export type WhyTrials =
  /** The input requests them. */
  | 'trials-requested'
  /** Rings that are no circles, of the lathe or of the weather, where little else moves the play. */
  | 'out-of-round'
  /** Balls drawn without replacement are not a sum of independent parts. */
  | 'measured-balls'
  /** The law of the play is that of normal balls, and of 7 or more. */
  | 'uneven-balls'
  /** A figure does not move, or not in straight lines. */
  | 'not-linear'
  /** Hardly anything differs but one thing that has ends: the corners of its distribution take too long a series. */
  | 'corners'

/** The spread of one figure, as shares of all bearings there could be. */
export interface NearlyLinearFigure {
  readonly histogram: Histogram
  /** How many counts of the histogram lie below each edge. */
  readonly below: Float64Array
  /** How far off the curve may be that brought the line there: a standard error. */
  readonly errorAt: (value: number) => number
  /** By how much any share may be off for the rounding of corners and bins. */
  readonly rounding: number
  /** The same of the distribution's slope against its own. */
  readonly slopeErrorAt: (value: number) => number
  /** The part of the variance that line and curve leave. */
  readonly left: number
}

interface Share {
  readonly value: number
  readonly standardError: number
}

export interface NearlyLinear {
  readonly figures: { readonly ballGap: NearlyLinearFigure; readonly play: NearlyLinearFigure }
  readonly jointFits: Share
  /** So many were made to see how far the figures leave the lines. */
  readonly trials: number
}

/** @returns why not, where it does not hold */
export function nearlyLinear(check: Check): NearlyLinear | WhyTrials {
  const why = whyNot(check)
  if (why !== undefined) return why
  const lines = linesOf(check)
  if (typeof lines === 'string') return lines
  const { parts } = lines
  const laws = [linearLaw(check, 'ballGap'), lines.play] as const
  if (!laws.every(({ standardDeviation }) => standardDeviation > 0)) return 'not-linear'
  const { linear, exact } = linearSample(check, check.input.seed, CHUNKS)
  const bents = [bentLine(linear[0], exact[0], laws[0]), bentLine(linear[1], exact[1], laws[1])] as const
  const noise = noiseOf(bents)
  const spread = spreadOf(parts, noise)
  const gap = bentSpread(parts, noise, 0, laws[0], bents[0], () => 0)
  const play = bentSpread(parts, noise, 1, laws[1], bents[1], lines.errorAt)
  if (typeof gap === 'string') return gap
  if (typeof play === 'string') return play
  const joint = jointShare(parts, noise, spread, [
    linesBetween(gap, check.gapLimits, laws[0]),
    linesBetween(play, check.playLimits, laws[1]),
  ])
  if (joint === undefined) return 'corners'
  return {
    figures: { ballGap: gap, play },
    jointFits: jointFitsOf(joint, [gap, play], [check.gapLimits, check.playLimits]),
    trials: linear[0].length,
  }
}

const whyNot = ({ differences }: Check): WhyTrials | undefined =>
  differences.get('ballDiameter')?.kind === 'discrete' ? 'measured-balls' : undefined

/** The rest that the curves leave, taken as normally distributed and independent of the lines. */
function noiseOf([gap, play]: readonly [BentLine, BentLine]): Noise {
  const covariance =
    gap.rest.reduce((sum, rest, trial) => sum + rest * (play.rest[trial] ?? Number.NaN), 0) / gap.rest.length
  return { variances: [gap.restVariance, play.restVariance], covariance }
}

/** A figure's spread, with the way back from it to its line. */
interface BentSpread extends NearlyLinearFigure {
  readonly lineAt: (value: number) => number
  /** The line's own distribution, and how far its bins go. */
  readonly shares: Float64Array
  readonly reach: number
}

function bentSpread(
  parts: readonly (Part | Pieces)[],
  noise: Noise,
  which: 0 | 1,
  { mean, standardDeviation }: Line,
  bent: BentLine,
  tableError: (place: number) => number,
): BentSpread | WhyTrials {
  const variance = standardDeviation * standardDeviation + bent.restVariance
  const left = bent.restVariance / variance
  const reach = REACH * Math.sqrt(variance)
  const { shares, roundedBy } = binnedSum(parts, noise, which, reach)
  const places = Float64Array.from({ length: KNOTS + 1 }, (_, knot) =>
    bent.at(mean - reach + (knot / KNOTS) * 2 * reach),
  )
  const rises = places.every((place, knot) => knot === 0 || place > (places[knot - 1] ?? Number.NaN))
  if (!(left <= MOST_LEFT && rises)) return 'not-linear'
  if (!(roundedBy <= MOST_ROUNDED)) return 'corners'
  const histogram = bentHistogram(shares, places)
  const lineAt = (value: number): number => mean - reach + (knotAt(places, value) / KNOTS) * 2 * reach
  return {
    histogram,
    below: accumulated(histogram),
    errorAt: (value) => {
      const line = lineAt(value)
      return bent.errorAt(line) + tableError((line - mean) / standardDeviation)
    },
    rounding: Math.max(LEAST_ERROR, roundedBy),
    slopeErrorAt: (value) => bent.slopeErrorAt(lineAt(value)),
    left,
    lineAt,
    shares,
    reach,
  }
}

/** The knot at a value, with its fraction, limited to the ends. */
function knotAt(places: Float64Array, value: number): number {
  let [low, high] = [0, places.length - 1]
  if (!(value > (places[low] ?? Number.NaN))) return low
  if (!(value < (places[high] ?? Number.NaN))) return high
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if ((places[middle] ?? Number.NaN) <= value) low = middle
    else high = middle
  }
  const [from, to] = [places[low] ?? Number.NaN, places[high] ?? Number.NaN]
  return low + (value - from) / (to - from)
}

/** The line's shares where the curve has brought them: a histogram from the first knot to the last. */
function bentHistogram(shares: Float64Array, places: Float64Array): Histogram {
  const [from, to] = [places[0] ?? Number.NaN, places[KNOTS] ?? Number.NaN]
  const histogram = emptyHistogram((from + to) / 2, (to - from) / 2)
  let [knot, bin, sum, counted] = [0, 0, 0, 0]
  for (let edge = 1; edge <= BINS; edge++) {
    const value = from + edge * histogram.binWidth
    while (knot < KNOTS - 1 && (places[knot + 1] ?? Number.NaN) <= value) knot++
    const start = places[knot] ?? Number.NaN
    const line = (BINS / KNOTS) * (knot + (value - start) / ((places[knot + 1] ?? Number.NaN) - start))
    for (; bin < BINS - 1 && bin + 1 <= line; bin++) sum += Math.max(0, shares[bin] ?? Number.NaN)
    const reached = Math.round(ALL * Math.min(1, sum + (line - bin) * Math.max(0, shares[bin] ?? Number.NaN)))
    histogram.counts[edge - 1] = Math.max(0, reached - counted)
    counted = Math.max(counted, reached)
  }
  const first = histogram.counts.findIndex((count) => count > 0)
  const last = histogram.counts.findLastIndex((count) => count > 0)
  histogram.least = histogram.low + first * histogram.binWidth
  histogram.most = histogram.low + (last + 1) * histogram.binWidth
  return histogram
}

/** Between which points of the line a figure is good, as distances from the line's mean. */
const linesBetween = ({ lineAt, shares, reach }: BentSpread, band: Band, { mean }: Line) => ({
  lows: lowsOf(band).map((low) => lineAt(low) - mean),
  high: lineAt(band.max) - mean,
  shares,
  reach,
})

/** Half the width over which a density is taken, in bins. */
const DENSITY_BINS = 8

function shareUnder({ histogram, below }: NearlyLinearFigure, value: number): number {
  return shareBelow(histogram, below, value)
}

/** Standard error of the share below a value: how far off the value may be, by how many lie there. */
export function errorOfShareUnder(figure: NearlyLinearFigure, value: number): number {
  return figure.rounding + densityAt(figure, value) * figure.errorAt(value)
}

export function densityAt(figure: NearlyLinearFigure, value: number): number {
  const half = DENSITY_BINS * figure.histogram.binWidth
  return (shareUnder(figure, value + half) - shareUnder(figure, value - half)) / (2 * half)
}

const meanUnder = (figure: NearlyLinearFigure, ends: readonly number[], of: typeof shareUnder): number =>
  ends.reduce((sum, end) => sum + of(figure, end), 0) / ends.length

/** A chance between two ends, each one of several that are equally likely, or none. The errors at both may be of one sign. */
export const chanceBetween = (
  figure: NearlyLinearFigure,
  lows: readonly number[],
  highs: readonly number[],
): Share => ({
  value:
    (highs.length === 0 ? 1 : meanUnder(figure, highs, shareUnder)) -
    (lows.length === 0 ? 0 : meanUnder(figure, lows, shareUnder)),
  standardError: [lows, highs]
    .filter(({ length }) => length > 0)
    .reduce((sum, ends) => sum + meanUnder(figure, ends, errorOfShareUnder), 0),
})

/** The joint share, no larger than either alone. Its error is no more than those at all four ends together. */
function jointFitsOf(joint: Share, figures: readonly [BentSpread, BentSpread], bands: readonly [Band, Band]): Share {
  const alone = figures.map((figure, which) => {
    const band = bands[which as 0 | 1]
    return chanceBetween(figure, lowsOf(band), [band.max])
  })
  return {
    value: Math.max(0, Math.min(joint.value, ...alone.map(({ value }) => value))),
    standardError: alone.reduce((sum, { standardError }) => sum + standardError, joint.standardError),
  }
}
