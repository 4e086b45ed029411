import type { FastifyBaseLogger } from 'fastify'

/** Often enough to be noticed, too seldom to fill a disk while a store is down for a day. */
const BETWEEN_LINES_MS = 60_000

/** Keeps count of the requests that a shared store did not count, and says so in the log at most once a minute. */
export type StoreFailures = {
  /** A request passes uncounted, because of this. */
  readonly uncounted: (reason: string) => void
  /** Something else went wrong between us and the store. */
  readonly trouble: (reason: string) => void
  /** Requests that passed uncounted since the start. */
  readonly total: () => number
}

/** @param now a clock that never goes back [ms] */
export function storeFailures(
  log: Pick<FastifyBaseLogger, 'warn'>,
  now: () => number = () => performance.now(),
): StoreFailures {
  let total = 0
  let logged = 0
  let nextLineAt = Number.NEGATIVE_INFINITY

  const trouble = (reason: string): void => {
    if (now() < nextLineAt) return
    nextLineAt = now() + BETWEEN_LINES_MS
    log.warn({ reason, uncounted: total - logged }, 'the shared store failed: requests pass without being counted')
    logged = total
  }
  return {
    uncounted: (reason) => {
      total += 1
      trouble(reason)
    },
    trouble,
    total: () => total,
  }
}
