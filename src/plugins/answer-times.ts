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
