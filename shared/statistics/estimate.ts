import { type Belief, cellSpan, eachCell, expectation } from './belief.ts'

/** What is known of one figure: its mean, its standard uncertainty and its shortest interval of 95 % (JCGM 101, 7.7). */
export interface Estimate {
  readonly value: number
  readonly standardUncertainty: number
  readonly interval95: { readonly low: number; readonly high: number }
}

const COVERAGE = 0.95
const BINS = 2048

/**
 * The estimate of any figure of x and y under a belief. For the interval each cell of the belief counts as evenly
 * filled, over the span by which the figure differs from one cell to the next.
 */
export function estimate(belief: Belief, of: (x: number, y: number) => number): Estimate {
  const values: number[] = []
  const weights: number[] = []
  let [mean, total] = [0, 0]
  eachCell(belief, (x, y, weight) => {
    const value = of(x, y)
    values.push(value)
    weights.push(weight)
    mean += weight * value
    total += weight
  })
  mean /= total
  const variance =
    values.reduce((sum, value, index) => sum + (value - mean) * (value - mean) * (weights[index] ?? Number.NaN), 0) /
    total
  const middle = [expectation(belief, (x) => x), expectation(belief, (_x, y) => y)] as const
  return {
    value: mean,
    standardUncertainty: Math.sqrt(variance),
    interval95: shortestInterval(spread(values, weights, cellSpan(belief, of, middle)), COVERAGE * total),
  }
}

/** A distribution function at even steps. */
interface Cumulated {
  readonly low: number
  readonly width: number
  readonly below: Float64Array
}

/** The distribution function of values that are each spread evenly over a span: the running mean of that of the points. */
function spread(values: readonly number[], weights: readonly number[], span: number): Cumulated {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const value of values) {
    least = Math.min(least, value)
    most = Math.max(most, value)
  }
  const low = least - span
  const width = Math.max((most - least + 2 * span) / BINS, Number.MIN_VALUE)
  const points = new Float64Array(BINS + 2)
  values.forEach((value, index) => {
    const bin = Math.min(BINS, Math.floor((value - low) / width)) + 1
    points[bin] = (points[bin] ?? Number.NaN) + (weights[index] ?? Number.NaN)
  })
  const below = accumulated(points)
  const area = accumulated(below)
  const reach = Math.max(1, Math.round(span / 2 / width))
  const last = BINS + 1
  const areaTo = (edge: number): number => {
    if (edge < 0) return 0
    return edge <= last
      ? (area[edge] ?? Number.NaN)
      : (area[last] ?? Number.NaN) + (edge - last) * (below[last] ?? Number.NaN)
  }
  return { low, width, below: below.map((_, edge) => (areaTo(edge + reach) - areaTo(edge - reach)) / (2 * reach)) }
}

function accumulated(steps: Float64Array): Float64Array {
  let sum = 0
  return steps.map((step) => {
    sum += step
    return sum
  })
}

/** The shortest stretch between two points of a distribution function that holds so much. */
function shortestInterval({ low, width, below }: Cumulated, holding: number): { low: number; high: number } {
  const last = below.length - 1
  let best = { low, high: low + last * width }
  let right = 0
  for (let left = 0; left <= last; left++) {
    const target = (below[left] ?? Number.NaN) + holding
    while (right < last && (below[right] ?? Number.NaN) < target) right++
    if ((below[right] ?? Number.NaN) < target) break
    const inBin = (below[right] ?? Number.NaN) - (below[right - 1] ?? Number.NaN)
    const place = right - (inBin > 0 ? ((below[right] ?? Number.NaN) - target) / inBin : 0)
    if ((place - left) * width < best.high - best.low) best = { low: low + left * width, high: low + place * width }
  }
  return best
}
