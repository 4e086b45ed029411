import { type Belief, expectation, type Fineness } from '#shared/statistics/belief.ts'
import { estimate } from '#shared/statistics/estimate.ts'
import { readingDeviation } from '#shared/statistics/likelihood.ts'
import { normalCdf } from '#shared/statistics/normal.ts'
import type { Reading, ReadingKind } from './input.ts'
import type { GrooveModel } from './model.ts'

/** A reading that the others make unlikely. */
export interface Disagreement {
  /** Its place among the readings of now. */
  readonly index: number
  readonly kind: ReadingKind
  /** What the others say that it should have been, where it is a figure. */
  readonly expected?: { readonly value: number; readonly low: number; readonly high: number }
  /** The chance of a reading at least as far off, given the others. */
  readonly chance: number
}

/** Rarer than this among readings that agree: such a reading is named. */
const UNLIKELY = 0.01

/** A rougher grid is enough to tell the unlikely from the likely. */
const ROUGH: Fineness = { u: 97, y: 13 }

/**
 * Each reading held against what all the others lead to expect of it (a posterior predictive check, leaving it out).
 *
 * @param believing the belief from all readings of now but the one left out
 */
export function disagreements(
  readings: readonly Reading[],
  model: GrooveModel,
  believing: (without: number, fineness: Fineness) => Belief | undefined,
): readonly Disagreement[] {
  return readings.flatMap((reading, index) => {
    const others = believing(index, ROUGH)
    if (others === undefined) return []
    const found = checked(reading, model, others)
    return found.chance < UNLIKELY ? [{ index, kind: reading.kind, ...found }] : []
  })
}

function checked(reading: Reading, model: GrooveModel, others: Belief): Pick<Disagreement, 'expected' | 'chance'> {
  const truth = model.truth(reading)
  if (truth === undefined || !('value' in reading)) {
    const { logLikelihood } = model.evidence(reading)
    return { chance: expectation(others, (x, y) => Math.exp(logLikelihood(x, y))) }
  }
  const deviation = readingDeviation(reading.error)
  const below = expectation(others, (x, y) => normalCdf((reading.value - truth(x, y)) / deviation))
  const { value, interval95 } = estimate(others, truth)
  return {
    chance: 2 * Math.min(below, 1 - below),
    expected: { value, low: interval95.low - 2 * deviation, high: interval95.high + 2 * deviation },
  }
}
