/** Many equally likely values in bins of one width: how many fall to each, from the least value's bin on. */
export interface Sample {
  readonly least: number
  readonly step: number
  /** By the bin; together they are `size`. */
  readonly counts: Float64Array
  readonly size: number
}

/** Bins are a sixtieth of a standard deviation wide or less: what they add to the variance is below 1e-4 of it. */
const BINS = 512

/**
 * Counts values. Each is shared between the two bins beside it, so that their mean stays as it is, and their variance grows by no more than
 * a quarter of the square of a bin's width.
 *
 * @param values one or more
 */
export function sampleOf(values: Float64Array): Sample {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const value of values) {
    least = Math.min(least, value)
    most = Math.max(most, value)
  }
  const step = (most - least) / BINS
  const counts = new Float64Array(BINS + 1)
  for (const value of values) {
    const place = step > 0 ? (value - least) / step : 0
    const bin = Math.min(BINS - 1, Math.floor(place))
    counts[bin] = (counts[bin] ?? Number.NaN) + bin + 1 - place
    counts[bin + 1] = (counts[bin + 1] ?? Number.NaN) + place - bin
  }
  return { least, step, counts, size: values.length }
}

/** Each value of a sample with its share. */
export function forEachOf({ least, step, counts, size }: Sample, take: (value: number, share: number) => void): void {
  for (let bin = 0; bin < counts.length; bin++) {
    const count = counts[bin] ?? Number.NaN
    if (count > 0) take(least + bin * step, count / size)
  }
}
