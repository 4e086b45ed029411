import { itemAt } from '#shared/numbers/item-at.ts'

/** What was answered on one route with one status, and how long it took. */
export type Series = {
  readonly method: string
  readonly route: string
  readonly status: number
  /** Answers no later than each of `BUCKETS`, and not in the one before; the last are those later than all. */
  readonly counts: Float64Array
  seconds: number
}

/** Upper ends [s]: a bearing takes tenths of a millisecond, a fit tens of them, a million trials seconds. */
export const BUCKETS = [0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10] as const

export type AnswerTimes = Map<string, Series>

/** Enters an answer: what a request pays for being counted. */
export function enter(times: AnswerTimes, method: string, route: string, status: number, seconds: number): void {
  const key = `${method} ${status} ${route}`
  let series = times.get(key)
  if (series === undefined) {
    series = { method, route, status, counts: new Float64Array(BUCKETS.length + 1), seconds: 0 }
    times.set(key, series)
  }
  const bucket = bucketOf(seconds)
  series.counts[bucket] = itemAt(series.counts, bucket) + 1
  series.seconds += seconds
}

function bucketOf(seconds: number): number {
  let bucket = 0
  while (seconds > (BUCKETS[bucket] ?? Number.POSITIVE_INFINITY)) bucket += 1
  return bucket
}
