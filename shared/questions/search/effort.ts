import { itemAt, lastOf } from '#shared/numbers/item-at.ts'
import { candidatesIn, candidatesWanted, countsOf, type DesignSearchInput } from './input.ts'
import type { SearchProgress } from './progress.ts'

/*
 * What a search costs, in units of work: about that of judging one candidate. Units are counted, not timed, so that the same
 * search always has the same count; how long a unit takes is for whoever runs it to measure. All ratios here are measured.
 */

/** For each candidate: to judge it, to load it, and to look at it again in the order of the bounds. */
export const SEARCH_EFFORT = { judgement: 1, load: 1, look: 0.01 } as const

/** To look at the ends of a year, for each ball and beside them. */
const YEAR_EFFORT = { each: 40, ball: 1.5 }

/** The work of proving a candidate: it is judged again, with its load and its year. */
export const effortToProve = ({ load, year }: DesignSearchInput, ballCount: number): number =>
  load === undefined && year === undefined
    ? 0
    : SEARCH_EFFORT.judgement +
      (load === undefined ? 0 : SEARCH_EFFORT.load) +
      (year === undefined ? 0 : YEAR_EFFORT.each + YEAR_EFFORT.ball * ballCount)

/** How many candidates fill the list of the best. */
function wanted(input: DesignSearchInput): number {
  const most = candidatesWanted(input)
  if (input.show === 'all') return most
  const { min, max } = countsOf(input)
  return Math.min(most, input.balls.length * (max - min + 1))
}

/** The work of judging all candidates, and of proving as many as fill the list: few searches take less. */
export function expectedEffort(input: DesignSearchInput): number {
  const candidates = candidatesIn(input)
  const proved = Math.min(candidates, wanted(input))
  return candidates * SEARCH_EFFORT.judgement + proved * effortToProve(input, countsOf(input).min)
}

type Reached = Omit<SearchProgress, 'effortLeft'>

/** So many proofs tell how many of the candidates come through. */
const FEWEST_PROOFS = 8
/** Of the candidates whose bound reaches a full list, so many are still looked at: it grows better on the way. Measured. */
const LIST_IMPROVES = 1 / 2

/**
 * The work that a search still takes, by what it has found so far. Once all are judged: to fill the list, or to have tried as
 * many as may stop, at the pace at which it did so, and then to look at those whose bound reaches the last in it.
 *
 * @param mostStopped so many may be tried that do not run all year
 */
export function effortLeft(input: DesignSearchInput, reached: Reached, mostStopped: number): number {
  const { order, bounds, judged, looked, proved, best, dropped, isOver, effort } = reached
  if (isOver) return 0
  if (judged < bounds.length) return Math.max(bounds.length - judged, expectedEffort(input) - effort)
  const each = proved === 0 ? 0 : (effort - bounds.length * SEARCH_EFFORT.judgement) / proved
  const missing = wanted(input) - best.length
  if (missing > 0 && proved < FEWEST_PROOFS) return Math.max(0, expectedEffort(input) - effort)
  const toFill = missing <= 0 ? 0 : best.length === 0 ? order.length : (missing * proved) / best.length
  const stopped = dropped['not-all-year']
  const toGiveUp = stopped === 0 ? Number.POSITIVE_INFINITY : ((mostStopped + 1 - stopped) * proved) / stopped
  const left = order.length - looked
  if (Math.min(left, toGiveUp) < toFill) return Math.min(left, toGiveUp) * each
  const lowest = best.length === 0 ? Number.POSITIVE_INFINITY : lastOf(best).score
  const reaching = Math.max(0, countAbove(reached, lowest) - looked)
  return Math.max(toFill, reaching * LIST_IMPROVES) * each
}

/** How many candidates, of which the order has the best first, have a bound that is not below a score. */
function countAbove({ order, bounds }: Reached, score: number): number {
  let [from, to] = [0, order.length]
  while (from < to) {
    const middle = (from + to) >> 1
    if (itemAt(bounds, itemAt(order, middle)) >= score) from = middle + 1
    else to = middle
  }
  return from
}
