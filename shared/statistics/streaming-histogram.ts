import { requireAboveZero, requireWithin } from '#shared/precondition.ts'

/*
 * The summary of a stream of values: how many fell in each of many narrow bins, and the two farthest. No value is
 * stored, so the memory does not grow with their number, and two histograms of the same bins add up to one, in any order.
 */

export const BINS = 8192

export interface Histogram {
  readonly low: number
  readonly binWidth: number
  /** Values below the first bin or above the last count in it. */
  readonly counts: Uint32Array
  least: number
  most: number
}

/** @param reach above 0: bins go from `centre` so far down and up */
export function emptyHistogram(centre: number, reach: number): Histogram {
  requireAboveZero('reach', reach)
  return {
    low: centre - reach,
    binWidth: (2 * reach) / BINS,
    counts: new Uint32Array(BINS),
    least: Number.POSITIVE_INFINITY,
    most: Number.NEGATIVE_INFINITY,
  }
}

/** Counts in the first values of an array. */
export function countIn(histogram: Histogram, values: Float64Array, count: number): void {
  const { low, binWidth, counts } = histogram
  const perWidth = 1 / binWidth
  let { least, most } = histogram
  for (let index = 0; index < count; index++) {
    const value = values[index] ?? Number.NaN
    const place = (value - low) * perWidth
    const bin = place < BINS ? (place > 0 ? place | 0 : 0) : BINS - 1
    counts[bin] = (counts[bin] ?? Number.NaN) + 1
    if (value < least) least = value
    if (value > most) most = value
  }
  histogram.least = least
  histogram.most = most
}

/** Adds the counts of a histogram of the same bins to those of another. */
export function addTo(sum: Histogram, { low, binWidth, counts, least, most }: Histogram): void {
  if (low !== sum.low || binWidth !== sum.binWidth) throw new RangeError('histograms must have the same bins')
  for (let bin = 0; bin < counts.length; bin++)
    sum.counts[bin] = (sum.counts[bin] ?? Number.NaN) + (counts[bin] ?? Number.NaN)
  sum.least = Math.min(sum.least, least)
  sum.most = Math.max(sum.most, most)
}

/** Makes it empty again. */
export function clear(histogram: Histogram): void {
  histogram.counts.fill(0)
  histogram.least = Number.POSITIVE_INFINITY
  histogram.most = Number.NEGATIVE_INFINITY
}

/** Room for `accumulated`, to be used again by frequent callers. */
export const roomForEdges = (): Float64Array => new Float64Array(BINS + 1)

/** The bin of a value, the first or the last where it lies beyond them. */
function binOf({ low, binWidth, counts }: Histogram, value: number): number {
  return Math.max(0, Math.min(counts.length - 1, Math.floor((value - low) / binWidth)))
}

/** How many values were counted up to each edge between bins: one more than there are bins. */
export function accumulated(histogram: Histogram, below = roomForEdges()): Float64Array {
  const { counts, least, most } = histogram
  // A bin either side, for the rounding of where a value lies; all others are empty.
  const first = Math.max(0, binOf(histogram, least) - 1)
  const last = Math.min(counts.length - 1, binOf(histogram, most) + 1)
  below.fill(0, 0, first + 1)
  let sum = 0
  for (let bin = first; bin <= last; bin++) {
    sum += counts[bin] ?? Number.NaN
    below[bin + 1] = sum
  }
  return below.fill(sum, last + 1)
}

/** Start of a bin, no farther out than any value: the first and the last bin hold the values beyond. */
function startOf(histogram: Histogram, bin: number): number {
  const { low, binWidth, least } = histogram
  const from = bin === 0 ? Math.min(least, low + binWidth) : low + bin * binWidth
  return from >= least ? from : Math.max(from, Math.min(least, nextEdge(histogram, bin)))
}

/** And where it ends. */
function endOf(histogram: Histogram, bin: number): number {
  const { low, binWidth, least, most } = histogram
  const to = nextEdge(histogram, bin)
  const from = bin === 0 ? Math.min(least, low + binWidth) : low + bin * binWidth
  return to <= most ? to : Math.min(to, Math.max(most, from))
}

function nextEdge({ low, binWidth, most, counts }: Histogram, bin: number): number {
  return bin === counts.length - 1 ? Math.max(most, low + bin * binWidth) : low + (bin + 1) * binWidth
}

/** The value below which so many were counted; within a bin they are taken as evenly spread. */
function valueAt(histogram: Histogram, below: Float64Array, rank: number): number {
  let [low, high] = [0, histogram.counts.length - 1]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((below[middle + 1] ?? Number.NaN) >= rank) high = middle
    else low = middle + 1
  }
  const [from, to] = [startOf(histogram, low), endOf(histogram, low)]
  const count = histogram.counts[low] ?? Number.NaN
  return count === 0 ? from : from + ((rank - (below[low] ?? Number.NaN)) / count) * (to - from)
}

/** The share of values below a value. */
export function shareBelow(histogram: Histogram, below: Float64Array, value: number): number {
  const { counts, least, most } = histogram
  if (!(value > least)) return 0
  if (value >= most) return 1
  const bin = binOf(histogram, value)
  const [from, to] = [startOf(histogram, bin), endOf(histogram, bin)]
  const part = to > from ? Math.min(1, Math.max(0, (value - from) / (to - from))) : 1
  return ((below[bin] ?? Number.NaN) + part * (counts[bin] ?? Number.NaN)) / (below[counts.length] ?? Number.NaN)
}

export interface Estimated {
  readonly value: number
  readonly standardError: number
}

/**
 * The value below which a share of all lies, with its standard error: half of what lies between the quantiles of that
 * share less and more its own standard error √(p (1 − p) / n) (R. S. Woodruff, Journal of the American Statistical
 * Association 47 (1952)). No density has to be guessed.
 *
 * @param probability above 0 and below 1
 * @throws RangeError for an empty histogram
 */
export function quantile(histogram: Histogram, probability: number, below = accumulated(histogram)): Estimated {
  requireWithin('probability', probability, Number.MIN_VALUE, 1 - Number.EPSILON / 2)
  const count = below[histogram.counts.length] ?? Number.NaN
  requireAboveZero('count', count)
  const error = Math.sqrt((probability * (1 - probability)) / count)
  const at = (share: number): number => valueAt(histogram, below, Math.min(1, Math.max(0, share)) * count)
  return { value: at(probability), standardError: (at(probability + error) - at(probability - error)) / 2 }
}

export interface Interval {
  readonly low: number
  readonly high: number
}

/** The interval that holds a share of all values and leaves as many below as above (JCGM 101:2008, 7.7.2). */
export function symmetricInterval(histogram: Histogram, share: number, below = accumulated(histogram)): Interval {
  const count = below[histogram.counts.length] ?? Number.NaN
  const outside = ((1 - share) / 2) * count
  return { low: valueAt(histogram, below, outside), high: valueAt(histogram, below, count - outside) }
}

/**
 * The shortest interval that holds a share of all values (JCGM 101:2008, 5.3.4 and 7.7): its lower end is sought among
 * the edges of the bins.
 *
 * @throws RangeError for an empty histogram
 */
export function shortestInterval(histogram: Histogram, share: number, below = accumulated(histogram)): Interval {
  const { counts } = histogram
  const count = below[counts.length] ?? Number.NaN
  requireAboveZero('count', count)
  const needed = share * count
  let shortest: Interval = { low: histogram.least, high: histogram.most }
  let upper = 0
  for (let bin = binOf(histogram, histogram.least); bin < counts.length; bin++) {
    if (counts[bin] === 0) continue
    const rank = (below[bin] ?? Number.NaN) + needed
    if (rank > count) break
    while ((below[upper + 1] ?? Number.NaN) < rank) upper++
    const low = startOf(histogram, bin)
    const from = startOf(histogram, upper)
    const to = endOf(histogram, upper)
    const high = from + ((rank - (below[upper] ?? Number.NaN)) / (counts[upper] ?? Number.NaN)) * (to - from)
    if (high - low < shortest.high - shortest.low) shortest = { low, high }
  }
  return shortest
}

/** A histogram to look at: one edge more than there are bins. */
export interface CoarseHistogram {
  readonly edges: readonly number[]
  readonly counts: readonly number[]
}

const MOST_COARSE = 64

/** The same counts in 64 bins at the most, from the least value to the largest; every value is in one. */
export function coarse(histogram: Histogram): CoarseHistogram {
  const { counts, low, binWidth, least, most } = histogram
  const first = counts.findIndex((count) => count > 0)
  const last = counts.findLastIndex((count) => count > 0)
  if (first < 0 || least === most) return first < 0 ? { edges: [], counts: [] } : oneBin(histogram)
  let width = 1
  while (Math.floor(last / width) - Math.floor(first / width) + 1 > MOST_COARSE) width *= 2
  const [from, to] = [Math.floor(first / width), Math.floor(last / width) + 1]
  const edges = Array.from({ length: to - from + 1 }, (_, index) => low + (from + index) * width * binWidth)
  // What lies beyond the bins was counted in the first and the last of them.
  edges[0] = Math.min(edges[0] ?? least, least)
  edges[edges.length - 1] = Math.max(edges[edges.length - 1] ?? most, most)
  return {
    edges,
    counts: Array.from({ length: to - from }, (_, index) => {
      const bins = counts.subarray((from + index) * width, (from + index + 1) * width)
      return bins.reduce((sum, count) => sum + count, 0)
    }),
  }
}

const oneBin = ({ least, most, counts }: Histogram): CoarseHistogram => ({
  edges: [least, most],
  counts: [counts.reduce((sum, count) => sum + count, 0)],
})
