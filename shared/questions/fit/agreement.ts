import { normalCdf } from '#shared/statistics/normal.ts'
import type { Evidence } from './evidence.ts'
import type { Prediction } from './proposal.ts'
import type { AskedReading } from './reading.ts'

/** A reading of the present state that the others make unlikely. */
export interface Disagreement {
  /** Its place among the readings of now. */
  readonly index: number
  /** The value that the other readings predict, if it is a figure. */
  readonly expected?: { readonly value: number; readonly min: number; readonly max: number }
  /** The chance of a reading at least as far off, given the others. */
  readonly chance: number
  /** What it was more likely than not, and so what to read. */
  readonly mistakenFor?: AskedReading
}

/** Rarer than this among readings that agree: such a reading is named. Common practice, no source. */
const UNLIKELY = 0.01
/** 95 % of a normal distribution lie within so many deviations. */
const DEVIATIONS = 1.96

/**
 * Each reading held against what all the others lead to expect (a posterior predictive check, leaving it out), and against what all
 * do: two that agree with one another and not with the bearing hide behind one another in the first. A reading that says two things,
 * a figure and a word, is named once.
 */
export function disagreements(
  evidence: readonly Evidence[],
  predictions: readonly Prediction[],
  present: number,
): readonly Disagreement[] {
  const found = all(evidence, predictions, present)
  return found.filter(({ index }, place) => found.findIndex((other) => other.index === index) === place)
}

function all(
  evidence: readonly Evidence[],
  predictions: readonly Prediction[],
  present: number,
): readonly Disagreement[] {
  return evidence.flatMap((each, index) => {
    const prediction = predictions[index]
    if (prediction === undefined || each.state !== present) return []
    for (const [mean, variance] of [prediction.without, prediction.withAll]) {
      const deviation = Math.sqrt(variance + prediction.errorVariance)
      if (each.says !== 'figure') {
        const chance = normalCdf(mean / deviation)
        if (chance < UNLIKELY) return [{ index: each.index, chance }]
        continue
      }
      const chance = 2 * normalCdf(-Math.abs(each.value - mean) / deviation)
      if (chance < UNLIKELY) {
        const expected = { value: mean, min: mean - DEVIATIONS * deviation, max: mean + DEVIATIONS * deviation }
        return [{ index: each.index, chance, expected }]
      }
    }
    return []
  })
}

/**
 * So many deviations off what all others and the design lead to expect, a reading is of another bearing.
 * Common practice, no source.
 */
const OUT_OF_THE_QUESTION = 10

/** Whether no groove at all gives these readings together. */
export const contradict = (evidence: readonly Evidence[], predictions: readonly Prediction[]): boolean =>
  evidence.some((each, index) => {
    const prediction = predictions[index]
    if (prediction === undefined || each.says !== 'figure') return false
    return [prediction.without, prediction.withAll].some(
      ([mean, variance]) =>
        !(Math.abs(each.value - mean) <= OUT_OF_THE_QUESTION * Math.sqrt(variance + prediction.errorVariance)),
    )
  })
