import type { Threshold } from '#shared/bearing/entry-threshold.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { readingDeviation } from '#shared/statistics/likelihood.ts'
import { normalCdf, normalDensity } from '#shared/statistics/normal.ts'
import type { Evidence } from './evidence.ts'
import {
  emptyPlace,
  OF_HAND,
  OF_LEFT_OUT,
  OF_MEAN,
  OF_REDUCTION,
  OF_START,
  type Place,
  type Unknowns,
} from './unknowns.ts'

/*
 * The posterior as one normal distribution of all ξ, by expectation propagation (T. Minka 2001, from memory): each reading is
 * taken out in turn, the exact moments of what it leaves are matched, and it is put back, until nothing moves. It is where the
 * importance points are drawn from, never the answer itself.
 */

export interface Proposal {
  readonly mean: Float64Array
  /** Lower triangle, row by row: ξ = mean + factor · η. */
  readonly factor: Float64Array
  /** Logarithm of about how likely the readings are. */
  readonly logEvidence: number
  readonly predictions: readonly Prediction[]
}

/** The prediction of a piece of evidence by the others alone and by all: mean and variance. */
export interface Prediction {
  readonly without: readonly [mean: number, variance: number]
  readonly withAll: readonly [mean: number, variance: number]
  /** Variance of the error that comes on top, where it is a figure. */
  readonly errorVariance: number
}

const PASSES = 12
const STEP = 1e-3
/** A mean that moves less than this in standard deviations of what was known beforehand has come to rest. */
const AT_REST = 2e-3

/** Yes-or-no readings leave a skewed posterior with a tail: points are drawn with so much less of their precision. */
const SKEWED = 0.6

interface Site {
  slopes: Float64Array
  offset: number
  precision: number
  shift: number
}

/** A normal distribution that each piece of evidence updates. */
interface Normal {
  readonly columns: number
  readonly mean: Float64Array
  readonly covariance: Float64Array
}

/** The threshold stands in a last column of its own; the points do without it. */
export function proposalFor(
  unknowns: Unknowns,
  evidence: readonly Evidence[],
  threshold: Threshold,
  times: number,
): Proposal {
  const columns = unknowns.columns + 1
  const normal = standardNormal(columns)
  const sites = evidence.map((): Site => ({ slopes: new Float64Array(columns), offset: 0, precision: 0, shift: 0 }))
  const slopesOfCut = Array.from({ length: unknowns.states }, (_, state) => unknowns.cutSlopes(state))
  const predictions: Prediction[] = []
  let logEvidence = 0
  const frame = { unknowns, threshold, times, slopesOfCut }
  let around = whereTheGrooveIs(frame, evidence, columns)
  for (let pass = 0; pass < PASSES; pass++) {
    const before = normal.mean.slice()
    evidence.forEach((each, index) => {
      const site = itemAt(sites, index)
      if (pass > 0) around = normal.mean.slice()
      if (site.precision !== 0) absorb(normal, site.slopes, -site.precision, site.offset * site.precision - site.shift)
      linearise(site, each, frame, around)
      const [mean, variance] = along(normal, site)
      const { chance, tiltedMean, tiltedVariance, errorVariance } = tilted(each, mean, variance, times, unknowns)
      site.precision = Math.max(1 / tiltedVariance - 1 / variance, 0)
      site.shift = site.precision === 0 ? 0 : tiltedMean / tiltedVariance - mean / variance
      if (site.precision > 0) absorb(normal, site.slopes, site.precision, site.shift - site.offset * site.precision)
      if (pass === 0) logEvidence += Math.log(Math.max(chance, 1e-300))
      predictions[index] = { without: [mean, variance], withAll: along(normal, site), errorVariance }
    })
    if (normal.mean.every((value, column) => Math.abs(value - (before[column] ?? Number.NaN)) < AT_REST)) break
  }
  evidence.forEach((each, index) => {
    const site = itemAt(sites, index)
    if (each.says === 'figure' || !(site.precision > 0)) return
    const taken = -SKEWED * site.precision
    absorb(normal, site.slopes, taken, taken * (along(normal, site)[0] - site.offset))
  })
  return {
    mean: normal.mean.slice(0, unknowns.columns),
    factor: lowerFactor(normal.covariance, columns, unknowns.columns),
    logEvidence,
    predictions,
  }
}

/** The start is looked for so far out, in so many steps; readings are blurred to the steps, in ball diameters. */
const FARTHEST = 4
const SCANS = [
  { steps: 32, blurred: 0.15 },
  { steps: 16, blurred: 0.02 },
] as const

/**
 * A place from which the readings can be taken for straight lines: the start of the groove that fits them best, all else as expected.
 * A ring of few balls is anything but straight from one end of what might be to the other.
 */
function whereTheGrooveIs(frame: Frame, evidence: readonly Evidence[], columns: number): Float64Array {
  const { unknowns, times } = frame
  const { subject, states } = unknowns
  const place = emptyPlace()
  const cuts = new Float64Array(states)
  const xi = new Float64Array(columns)
  const misfit = (start: number, blurred: number): number => {
    xi[OF_START] = start
    unknowns.unfold(xi, 0, times, place, cuts)
    let sum = start * start
    for (const each of evidence) {
      setCut(place, cuts[each.state] ?? Number.NaN, subject.cuts === 'outer')
      const blur = blurred * subject.balls.diameter
      if (each.says === 'figure') {
        const off = each.value - (each.unbent ?? each.truth)(place)
        sum += (off * off) / (readingDeviation(each.error) ** 2 + blur * blur)
      } else {
        const truth = each.says === 'above' ? each.truth(place) : (each.isIn ? 1 : -1) * each.truth(place)
        const off = Math.min(0, truth)
        sum += (off * off) / (blur * blur)
      }
    }
    return sum
  }
  let [middle, reach] = [0, FARTHEST]
  for (const { steps, blurred } of SCANS) {
    let [best, least] = [middle, Number.POSITIVE_INFINITY]
    for (let step = -steps; step <= steps; step++) {
      const start = middle + (reach * step) / steps
      const there = misfit(start, blurred)
      if (there < least) [best, least] = [start, there]
    }
    ;[middle, reach] = [best, (2 * reach) / steps]
  }
  xi[OF_START] = middle
  return xi
}

function standardNormal(columns: number): Normal {
  const covariance = new Float64Array(columns * columns)
  for (let column = 0; column < columns; column++) covariance[column * columns + column] = 1
  return { columns, mean: new Float64Array(columns), covariance }
}

/** Multiplies in a normal of precision τ and shift h along one direction; below 0 it is taken out again. */
function absorb({ columns, mean, covariance }: Normal, slopes: Float64Array, precision: number, shift: number): void {
  const gain = new Float64Array(columns)
  let [variance, at] = [0, 0]
  for (let row = 0; row < columns; row++) {
    let sum = 0
    for (let column = 0; column < columns; column++)
      sum += (covariance[row * columns + column] ?? Number.NaN) * (slopes[column] ?? Number.NaN)
    gain[row] = sum
    variance += sum * (slopes[row] ?? Number.NaN)
    at += (slopes[row] ?? Number.NaN) * (mean[row] ?? Number.NaN)
  }
  const scale = 1 / Math.max(1 + precision * variance, 1e-12)
  const step = (shift - precision * at) * scale
  for (let row = 0; row < columns; row++) {
    mean[row] = (mean[row] ?? Number.NaN) + (gain[row] ?? Number.NaN) * step
    const share = precision * scale * (gain[row] ?? Number.NaN)
    for (let column = 0; column < columns; column++)
      covariance[row * columns + column] =
        (covariance[row * columns + column] ?? Number.NaN) - share * (gain[column] ?? Number.NaN)
  }
}

/** Mean and variance of what a site looks at. */
function along({ columns, mean, covariance }: Normal, { slopes, offset }: Site): [number, number] {
  let [at, variance] = [offset, 0]
  for (let row = 0; row < columns; row++) {
    const slope = slopes[row] ?? Number.NaN
    if (slope === 0) continue
    at += slope * (mean[row] ?? Number.NaN)
    for (let column = 0; column < columns; column++)
      variance += slope * (covariance[row * columns + column] ?? Number.NaN) * (slopes[column] ?? Number.NaN)
  }
  return [at, Math.max(variance, 1e-18)]
}

interface Frame {
  readonly unknowns: Unknowns
  readonly threshold: Threshold
  readonly times: number
  readonly slopesOfCut: readonly Float64Array[]
}

/** The columns that act otherwise than through the cut. */
const DIRECT = [OF_MEAN, OF_HAND, OF_LEFT_OUT, OF_REDUCTION, OF_REDUCTION + 1] as const

function linearise(site: Site, evidence: Evidence, frame: Frame, mean: Float64Array): void {
  const { unknowns, threshold, times, slopesOfCut } = frame
  const place = emptyPlace()
  const cuts = new Float64Array(unknowns.states)
  const isOuter = unknowns.subject.cuts === 'outer'
  const truth = evidence.says === 'figure' ? (evidence.unbent ?? evidence.truth) : evidence.truth
  const valueAt = (xi: Float64Array, further = 0): number => {
    unknowns.unfold(xi, 0, times, place, cuts)
    setCut(place, (cuts[evidence.state] ?? Number.NaN) + further, isOuter)
    return truth(place)
  }
  const here = valueAt(mean)
  const slopes = site.slopes.fill(0)
  const moved = mean.slice()
  for (const column of isOuter ? DIRECT.slice(0, -1) : DIRECT) {
    moved[column] = (mean[column] ?? Number.NaN) + STEP
    slopes[column] = (valueAt(moved) - here) / STEP
    moved[column] = mean[column] ?? Number.NaN
  }
  const perCut = (valueAt(mean, STEP) - here) / STEP
  slopesOfCut[evidence.state]?.forEach((slope, column) => {
    slopes[column] = (slopes[column] ?? Number.NaN) + perCut * slope
  })
  let value = here
  if (evidence.says === 'word') {
    const sign = evidence.isIn ? 1 : -1
    const last = slopes.length - 1
    slopes.forEach((slope, column) => {
      slopes[column] = sign * slope
    })
    slopes[last] = -sign * threshold.deviation
    value = sign * (here - threshold.mean - threshold.deviation * (mean[last] ?? Number.NaN))
  }
  let offset = value
  slopes.forEach((slope, column) => {
    offset -= slope * (mean[column] ?? Number.NaN)
  })
  site.offset = offset
}

/** Sets the place of the groove that is cut to that of one state. */
export function setCut(place: Place, cut: number, isOuter: boolean): void {
  place.cut = cut
  if (isOuter) place.outer = cut
}

interface Tilted {
  readonly chance: number
  readonly tiltedMean: number
  readonly tiltedVariance: number
  readonly errorVariance: number
}

/** Moments of a normal variable after one piece of evidence. */
function tilted(evidence: Evidence, mean: number, variance: number, times: number, unknowns: Unknowns): Tilted {
  if (evidence.says !== 'figure') {
    const deviation = evidence.says === 'above' ? evidence.deviation : 0
    return { ...aboveZero(mean, variance, deviation), errorVariance: deviation * deviation }
  }
  const { error, value } = evidence
  const ofScatter = evidence.perScatter * unknowns.subject.balls.scatter * times
  const hand = error.standardUncertainty * error.standardUncertainty + ofScatter * ofScatter
  const errorVariance = readingDeviation(error) ** 2 + ofScatter * ofScatter
  const spread = Math.sqrt(variance + hand)
  const low = (value - error.graduation / 2 - mean) / spread
  const high = (value + error.graduation / 2 - mean) / spread
  const chance = normalCdf(high) - normalCdf(low)
  if (!(error.graduation > 0 && chance > 1e-12)) {
    const share = variance / (variance + errorVariance)
    const z = (value - mean) / Math.sqrt(variance + errorVariance)
    return {
      chance: normalDensity(z) * (error.graduation > 0 ? error.graduation / spread : 1 / spread),
      tiltedMean: mean + share * (value - mean),
      tiltedVariance: variance * (1 - share),
      errorVariance,
    }
  }
  const ratio = (normalDensity(low) - normalDensity(high)) / chance
  const bend = (low * normalDensity(low) - high * normalDensity(high)) / chance - ratio * ratio
  return {
    chance,
    tiltedMean: mean + (variance / spread) * ratio,
    tiltedVariance: variance + (variance * variance * bend) / (spread * spread),
    errorVariance,
  }
}

function aboveZero(mean: number, variance: number, deviation: number): Omit<Tilted, 'errorVariance'> {
  const spread = Math.sqrt(variance + deviation * deviation)
  const z = mean / spread
  const chance = normalCdf(z)
  // Mills' ratio far out in the tail.
  const ratio = z > -30 ? normalDensity(z) / chance : -z
  const tiltedVariance = variance - ((variance * variance) / (spread * spread)) * ratio * (ratio + z)
  return {
    chance,
    tiltedMean: mean + (variance / spread) * ratio,
    tiltedVariance: Math.max(tiltedVariance, 1e-6 * variance),
  }
}

/** Cholesky's factor of the first `size` rows and columns. */
export function lowerFactor(covariance: Float64Array, columns: number, size: number): Float64Array {
  const factor = new Float64Array(size * size)
  for (let row = 0; row < size; row++) {
    for (let column = 0; column <= row; column++) {
      let sum = covariance[row * columns + column] ?? Number.NaN
      for (let before = 0; before < column; before++)
        sum -= (factor[row * size + before] ?? Number.NaN) * (factor[column * size + before] ?? Number.NaN)
      factor[row * size + column] =
        row === column ? Math.sqrt(Math.max(sum, 1e-12)) : sum / (factor[column * size + column] ?? Number.NaN)
    }
  }
  return factor
}
