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
    const weight = weights[point] ?? 0
    const value = values[point] ?? 0
    mean += weight * value
    if (weight > 1e-9 && value < least) least = value
    if (weight > 1e-9 && value > most) most = value
  }
  let variance = 0
  for (let point = 0; point < values.length; point++) {
    const off = (values[point] ?? 0) - mean
    variance += (weights[point] ?? 0) * off * off
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
    const bin = Math.min(BINS - 1, Math.max(0, Math.floor(((values[point] ?? 0) - least) * perBin)))
    bins[bin + SMOOTHED] = (bins[bin + SMOOTHED] ?? 0) + (weights[point] ?? 0)
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
      sum += (bins[near] ?? 0) * (reach - Math.abs(near - bin))
    total += sum
    below[bin + 1] = total
  }
  const holding = COVERAGE * total
  const last = bins.length
  let best = { min: 0, max: last }
  let right = 0
  for (let left = 0; left <= last; left++) {
    const wanted = (below[left] ?? 0) + holding
    while (right < last && (below[right] ?? 0) < wanted) right++
    if ((below[right] ?? 0) < wanted) break
    const inBin = (below[right] ?? 0) - (below[right - 1] ?? 0)
    const end = right - (inBin > 0 ? ((below[right] ?? 0) - wanted) / inBin : 0)
    if (end - left < best.max - best.min) best = { min: left, max: end }
  }
  return { min: from + (best.min - reach) * width, max: from + (best.max - reach) * width }
}
