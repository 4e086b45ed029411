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

/**
 * The work that a search still takes, by what it has found so far. With a year: to fill the list, or to have tried as many as
 * may stop, at the pace at which it did so. Without one: what was expected of it.
 *
 * @param mostStopped so many may be tried that do not run all year
 */
export function effortLeft(
  input: DesignSearchInput,
  { order, looked, best, years, dropped, isOver, effort }: Omit<SearchProgress, 'effortLeft'>,
  mostStopped: number,
): number {
  if (isOver) return 0
  const left = order.length - looked
  if (input.year === undefined || years < FEWEST_YEARS) return Math.max(0, expectedEffort(input) - effort)
  const stopped = dropped['not-all-year']
  const missing = Math.max(0, wanted(input) - best.length)
  const toFill = best.length === 0 ? Number.POSITIVE_INFINITY : (missing * years) / best.length
  const toGiveUp = stopped === 0 ? Number.POSITIVE_INFINITY : ((mostStopped + 1 - stopped) * years) / stopped
  const looking = effort - candidatesIn(input) * SEARCH_EFFORT.bound
  return Math.min(left, toFill, toGiveUp) * (looking / years)
}
