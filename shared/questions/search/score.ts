import { LEAST_WALL, MOST_CONFORMITY } from '#shared/bearing/findings.ts'
import type { Criterion } from './fields.ts'
import type { ResolvedSearch } from './input.ts'
import type { Sizes } from './module.ts'

/*
 * How good a design is, criterion by criterion from 0 to 1: 1 is as good as it gets. Where each begins and ends is common
 * practice, no source.
 */

export type Marks = Readonly<Partial<Record<Criterion, number>>>

/**
 * Weighted mean of the marks that these designs have; 0 where nothing counts. A mark that is not known yet is taken as 1, so
 * that the score is an upper bound.
 *
 * @param isRisky the bearing has a warning of severity `risk`: the score loses the search's deduction
 */
export function scoreOf(marks: Marks, { weights, input }: ResolvedSearch, isRisky: boolean): number {
  let [sum, whole] = [0, 0]
  for (const [name, weight] of weights) {
    sum += (marks[name] ?? 1) * weight
    whole += weight
  }
  return whole > 0 ? (sum / whole) * (isRisky ? 1 - input.riskDeduction : 1) : 0
}

const from0To1 = (value: number): number => Math.min(1, Math.max(0, value))

/** Twice the least wall, which is what is left outside where nothing is stated, is ample. */
export const wallMark = (thinnest: number, ballDiameter: number): number =>
  from0To1(thinnest / (2 * LEAST_WALL * ballDiameter))

/** A conformity at which a ball has lost its groove. Common practice, no source. */
const NO_GROOVE = 1

/** Mean of the seats: on the bottom of a groove that is not much rounder than the ball. */
export function seatMark(seats: Sizes['seats']): number {
  const marks = seats.map(({ onBottom, conformity }) =>
    onBottom ? from0To1((NO_GROOVE - conformity) / (NO_GROOVE - MOST_CONFORMITY)) : 0,
  )
  return marks.reduce((sum, mark) => sum + mark, 0) / marks.length
}

/** The working load over the load that is carried: 1 gives 1/2, 3 gives 3/4. Below 1 marks come, and the fewer the better. */
export const loadMark = (margin: number): number => from0To1(margin / (1 + margin))
