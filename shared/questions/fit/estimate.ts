/** The estimate of one figure: its mean, its standard uncertainty and its shortest interval of 95 % (JCGM 101, 7.7). */
export interface Estimate {
  readonly value: number
  readonly standardUncertainty: number
  readonly interval95: { readonly min: number; readonly max: number }
}

/** As in JCGM 101 (`jcgm-101`, a source). */
const COVERAGE = 0.95
const BINS = 512
/** Points are spread over so many bins each way: enough that the shortest interval is not one of chance. */
const SMOOTHED = 6

/** The estimate of a figure known at weighted points; the weights add up to 1. */
export function estimateOf(values: Float64Array, weights: Float64Array): Estimate {
  let [mean, least, most] = [0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (let point = 0; point < values.length; point++) {
    const weight = weights[point] ?? Number.NaN
    const value = values[point] ?? Number.NaN
    mean += weight * value
    if (weight > 1e-9 && value < least) least = value
    if (weight > 1e-9 && value > most) most = value
  }
  let variance = 0
  for (let point = 0; point < values.length; point++) {
    const off = (values[point] ?? Number.NaN) - mean
    variance += (weights[point] ?? Number.NaN) * off * off
  }
  return {
    value: mean,
    standardUncertainty: Math.sqrt(variance),
    interval95: shortest(binned(values, weights, least, most), least, (most - least) / BINS),
  }
}

function binned(values: Float64Array, weights: Float64Array, least: number, most: number): Float64Array {
  const bins = new Float64Array(BINS + 2 * SMOOTHED)
  const perBin = most > least ? BINS / (most - least) : 0
  for (let point = 0; point < values.length; point++) {
    const bin = Math.min(BINS - 1, Math.max(0, Math.floor(((values[point] ?? Number.NaN) - least) * perBin)))
    bins[bin + SMOOTHED] = (bins[bin + SMOOTHED] ?? Number.NaN) + (weights[point] ?? Number.NaN)
  }
  return bins
}

/** The shortest stretch of bins that holds the share, its ends within bins. `bins` begins `SMOOTHED` bins before `from`. */
function shortest(bins: Float64Array, from: number, width: number): { min: number; max: number } {
  const below = new Float64Array(bins.length + 1)
  const reach = SMOOTHED
  let total = 0
  for (let bin = 0; bin < bins.length; bin++) {
    let sum = 0
    for (let near = Math.max(0, bin - reach + 1); near < Math.min(bins.length, bin + reach); near++)
      sum += (bins[near] ?? Number.NaN) * (reach - Math.abs(near - bin))
    total += sum
    below[bin + 1] = total
  }
  const holding = COVERAGE * total
  const last = bins.length
  let best = { min: 0, max: last }
  let right = 0
  for (let left = 0; left <= last; left++) {
    const wanted = (below[left] ?? Number.NaN) + holding
    while (right < last && (below[right] ?? Number.NaN) < wanted) right++
    if ((below[right] ?? Number.NaN) < wanted) break
    const inBin = (below[right] ?? Number.NaN) - (below[right - 1] ?? Number.NaN)
    const end = right - (inBin > 0 ? ((below[right] ?? Number.NaN) - wanted) / inBin : 0)
    if (end - left < best.max - best.min) best = { min: left, max: end }
  }
  return { min: from + (best.min - reach) * width, max: from + (best.max - reach) * width }
}
