import { itemAt, lastOf } from '#shared/numbers/item-at.ts'
import { boreCount, candidatesIn, candidatesWanted, countsOf, type DesignSearchInput } from './input.ts'
import type { SearchProgress } from './progress.ts'

/*
 * Cost of a search, in units of work: one is about the cost of judging one candidate. Units are counted, not timed, so that the same
 * search always has the same count; how long a unit takes is for whoever runs it to measure. All ratios here are measured.
 */

/** To judge a candidate, to load it, and to bound one that differs in its bore alone or look at its bound again. */
export const SEARCH_EFFORT = { judgement: 1, load: 1, bound: 0.03 } as const

/** To look at the ends of a year, for each ball and beside them. */
const YEAR_EFFORT = { each: 40, ball: 1.5 }

/** The work of proving a candidate: it is judged again, with its load and its year. */
export const effortToProve = ({ load, year }: DesignSearchInput, ballCount: number): number =>
  SEARCH_EFFORT.judgement +
  (load === undefined ? 0 : SEARCH_EFFORT.load) +
  (year === undefined ? 0 : YEAR_EFFORT.each + YEAR_EFFORT.ball * ballCount)

/** How many candidates fill the list of the best. */
function wanted(input: DesignSearchInput): number {
  const most = candidatesWanted(input)
  if (input.show === 'all') return most
  const { min, max } = countsOf(input)
  return Math.min(most, input.balls.length * (max - min + 1))
}

/** The work of judging all rings of balls, with a bound for each bore. */
function effortToJudge(input: DesignSearchInput): number {
  const candidates = candidatesIn(input)
  return (candidates / Math.max(1, boreCount(input))) * SEARCH_EFFORT.judgement + candidates * SEARCH_EFFORT.bound
}

/** The work of judging all candidates, and of proving as many as fill the list: few searches take less. */
export function expectedEffort(input: DesignSearchInput): number {
  const candidates = candidatesIn(input)
  const proved = Math.min(candidates, wanted(input))
  return effortToJudge(input) + proved * effortToProve(input, countsOf(input).min)
}

type Reached = Omit<SearchProgress, 'effortLeft'>

/** So many proofs tell how many of the candidates come through. */
const FEWEST_PROOFS = 8

/**
 * The work that a search still takes, by what it has found so far. Once all are judged: to fill the list, or to have tried as
 * many as may stop, at the pace at which it did so, and then to look at those whose bound reaches the last in it.
 *
 * @param mostStopped so many may be tried that do not run all year
 */
export function effortLeft(input: DesignSearchInput, reached: Reached, mostStopped: number): number {
  const { order, looked, proved, best, dropped, isOver, effort } = reached
  if (isOver) return 0
  const toJudge = effortToJudge(input)
  if (order.length === 0) return Math.max(0, expectedEffort(input) - effort)
  const each = proved === 0 ? 0 : (effort - toJudge) / proved
  const missing = wanted(input) - best.length
  if (missing > 0 && proved < FEWEST_PROOFS) return Math.max(0, expectedEffort(input) - effort)
  const toFill = missing <= 0 ? 0 : best.length === 0 ? order.length : (missing * proved) / best.length
  const stopped = dropped['not-all-year']
  const toGiveUp = stopped === 0 ? Number.POSITIVE_INFINITY : ((mostStopped + 1 - stopped) * proved) / stopped
  const left = order.length - looked
  if (Math.min(left, toGiveUp) < toFill) return Math.min(left, toGiveUp) * each
  const lowest = best.length === 0 ? Number.POSITIVE_INFINITY : lastOf(best).score
  const reaching = proofsUntil(reached, countAbove(reached, lowest))
  return Math.max(toFill, reaching) * each
}

/** How many proofs those before a place of the order may still take: one for each ring of balls whose load and year are not known. */
function proofsUntil({ order, bounds, lost, looked }: Reached, end: number): number {
  if (lost.every(Number.isNaN)) return Math.max(0, end - looked)
  const isCounted = new Uint8Array(lost.length)
  let proofs = 0
  for (let place = looked; place < end; place++) {
    const ring = Math.floor((itemAt(order, place) * lost.length) / bounds.length)
    if (!Number.isNaN(itemAt(lost, ring)) || isCounted[ring] === 1) continue
    isCounted[ring] = 1
    proofs++
  }
  return proofs
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
