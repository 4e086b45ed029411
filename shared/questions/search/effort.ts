import { itemAt, lastOf } from '#shared/numbers/item-at.ts'
import { candidatesAsked, candidatesIn, countsOf, type DesignSearchInput } from './input.ts'
import type { SearchProgress } from './progress.ts'

/*
 * What a search costs, in units of work: about that of judging one candidate. Units are counted, not timed, so that the same
 * search always has the same count; how long a unit takes is for whoever runs it to measure. All ratios here are measured.
 */

/** For each candidate: to find its bound, to judge it, and to load it. */
export const SEARCH_EFFORT = { bound: 0.05, judgement: 1, load: 0.5 } as const

const YEAR_EFFORT = { each: 20, state: 12, ballInState: 0.5 }

/** To look at so many states of the year. */
export const effortOfYear = (states: number, ballCount: number): number =>
  YEAR_EFFORT.each + states * (YEAR_EFFORT.state + YEAR_EFFORT.ballInState * ballCount)

/** Today and all states of the year. */
const statesIn = ({ climate }: NonNullable<DesignSearchInput['year']>): number =>
  1 + (climate.kind === 'months' ? climate.months.length : 2)

/** How many candidates fill the list of the best. */
function wanted(input: DesignSearchInput): number {
  const asked = candidatesAsked(input)
  if (input.show === 'all') return asked
  const { least, most } = countsOf(input)
  return Math.min(asked, input.balls.length * (most - least + 1))
}

/** The work of finding all bounds, and of judging as many candidates as fill the list: few searches take less. */
export function expectedEffort(input: DesignSearchInput): number {
  const candidates = candidatesIn(input)
  const { year } = input
  const inYear = year === undefined ? 0 : effortOfYear(statesIn(year), countsOf(input).least)
  const judged = Math.min(candidates, wanted(input))
  return candidates * SEARCH_EFFORT.bound + judged * (SEARCH_EFFORT.judgement + SEARCH_EFFORT.load + inYear)
}

/** So many looks at the year tell how many of the candidates run through it. */
const FEWEST_YEARS = 8

/** Of the work that a full list would take if it grew no better on the way, so much is left: measured. */
const LIST_IMPROVES = 1 / 3

/**
 * The work that a search still takes once its list is full, to find what surpasses the last in it. Candidates come in ever more
 * seldom: the work on the l-th is about in proportion to 1/l, so that from here, where it is r, to the last whose bound reaches
 * the list it is r l ln(last / l).
 *
 * @param each r
 * @param from l, above 0
 * @param lowest the last score in the list
 */
function effortToSurpass({ bounds }: Reached, each: number, from: number, lowest: number): number {
  const last = Math.max(from, countAbove(bounds, lowest))
  return LIST_IMPROVES * each * from * Math.log(last / from)
}

/** How many of the values, which descend, are not below a limit. */
function countAbove(values: Float64Array, limit: number): number {
  let [from, to] = [0, values.length]
  while (from < to) {
    const middle = (from + to) >> 1
    if (itemAt(values, middle) >= limit) from = middle + 1
    else to = middle
  }
  return from
}

type Reached = Omit<SearchProgress, 'effortLeft'>

/**
 * The work that a search still takes, by what it has found so far. With a year: to fill the list, or to have tried as many as
 * may stop, at the pace at which it did so, and then to surpass what is in it. Without one: what was expected of it.
 *
 * @param mostStopped so many may be tried that do not run all year
 * @param each the work on a candidate of late; 0 before the first
 */
export function effortLeft(input: DesignSearchInput, reached: Reached, mostStopped: number, each: number): number {
  const { order, looked, best, years, dropped, isOver, effort } = reached
  if (isOver) return 0
  const left = order.length - looked
  const missing = wanted(input) - best.length
  const lowest = best.length === 0 ? Number.POSITIVE_INFINITY : lastOf(best).score
  if (missing <= 0) return effortToSurpass(reached, each, Math.max(1, looked), lowest)
  const expected = Math.max(0, expectedEffort(input) - effort)
  if (input.year === undefined)
    return Math.max(expected, effortToSurpass(reached, each, Math.max(1, looked), Number.NEGATIVE_INFINITY))
  if (years < FEWEST_YEARS) return expected
  const stopped = dropped['not-all-year']
  const toFill = best.length === 0 ? Number.POSITIVE_INFINITY : (missing * years) / best.length
  const toGiveUp = stopped === 0 ? Number.POSITIVE_INFINITY : ((mostStopped + 1 - stopped) * years) / stopped
  const perYear = (effort - candidatesIn(input) * SEARCH_EFFORT.bound) / years
  if (Math.min(left, toGiveUp) < toFill) return Math.min(left, toGiveUp) * perYear
  // Until it is full the list grows worse, so that more than this reaches it.
  return (toFill + effortToSurpass(reached, 1, wanted(input), lowest)) * perYear
}
