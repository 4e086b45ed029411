import { LEAST_WALL, MOST_CONFORMITY } from '#shared/bearing/findings.ts'
import { CRITERIA, type Criterion, type Weights } from './input.ts'

/*
 * How good a design is, criterion by criterion from 0 to 1: 1 is as good as it gets. Where each begins and ends is common
 * practice, no source.
 */

export type Marks = Readonly<Record<Criterion, number>>

/** Weighted mean of the marks; 0 where nothing counts. */
export function scoreOf(marks: Marks, weights: Weights): number {
  let [sum, whole] = [0, 0]
  for (const name of CRITERIA) {
    sum += marks[name] * weights[name]
    whole += weights[name]
  }
  return whole > 0 ? sum / whole : 0
}

const from0To1 = (value: number): number => Math.min(1, Math.max(0, value))

/** How far the gap moves when the groove is cut to the nearest figure of the rule: half the band away is 0. */
export const closureMark = (gapChange: number, band: number): number =>
  band > 0 ? from0To1(1 - Math.abs(gapChange) / (band / 2)) : gapChange === 0 ? 1 : 0

/** Twice the least wall, which is what is left outside when nothing is said, is ample. */
export const wallMark = (thinnest: number, ballDiameter: number): number =>
  from0To1(thinnest / (2 * LEAST_WALL * ballDiameter))

/** Whether the inner ring comes out of the hole of the outer one. */
export const nestingMark = (landGap: number, partingWidth: number): number => from0To1(landGap / partingWidth)

/** A conformity at which a ball has lost its groove. */
const NO_GROOVE = 1

/** Of each ring half: on the bottom of a groove that is not much rounder than the ball. */
export function seatMark(rings: readonly { readonly onBottom: boolean; readonly conformity: number }[]): number {
  const marks = rings.map(({ onBottom, conformity }) =>
    onBottom ? from0To1((NO_GROOVE - conformity) / (NO_GROOVE - MOST_CONFORMITY)) : 0,
  )
  return marks.reduce((sum, mark) => sum + mark, 0) / marks.length
}

/** The usual band of a gap, in ball diameters. */
const USUAL_BAND = 1 / 8

/**
 * How far the balls' scatter moves the gap. Z balls, each with its own deviation, move the gap of a ring that just closes by
 * √Z (1 + sin(π/Z)) of it: the slope of all together over √Z. Half of the usual band, an eighth of a ball, gives 1/2.
 */
export function sensitivityMark(ballCount: number, ballDiameter: number, standardDeviation: number): number {
  const moves = Math.sqrt(ballCount) * (1 + Math.sin(Math.PI / ballCount)) * standardDeviation
  const share = moves / ((USUAL_BAND * ballDiameter) / 2)
  return 1 / (1 + share * share)
}
