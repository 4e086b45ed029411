import { itemAt } from '#shared/numbers/item-at.ts'
import { type Belief, expectation, type Fineness, without } from '#shared/statistics/belief.ts'
import { estimate } from '#shared/statistics/estimate.ts'
import { type ReadingError, readingDeviation } from '#shared/statistics/likelihood.ts'
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

/** To leave a reading out exactly takes a belief of its own: only where there is something to look into, and so often. */
const DOUBTFUL = 0.05
const MOST_LOOKED_INTO = 8

/**
 * Each reading held against what all the others, and what was known beforehand, lead to expect of it (a posterior
 * predictive check, leaving it out). Readings that agree with one another and not with the bearing hide behind one
 * another there: they stand out against what is believed from all of them.
 *
 * @param all the belief from all readings
 * @param believing the belief from all readings of now but the one left out
 */
export function disagreements(
  readings: readonly Reading[],
  model: GrooveModel,
  all: Belief,
  believing: (leftOut: number, fineness: Fineness) => Belief | undefined,
): readonly Disagreement[] {
  const roughly = readings.map((reading) => without(all, model.evidence(reading)))
  const chances = readings.map((reading, index) => chanceOf(reading, model, roughly[index] ?? all))
  const doubtful = [...chances.keys()]
    .filter((index) => itemAt(chances, index) < DOUBTFUL)
    .toSorted((one, other) => itemAt(chances, one) - itemAt(chances, other))
    .slice(0, MOST_LOOKED_INTO)
  return readings.flatMap((reading, index) => {
    const { kind } = reading
    const others = (doubtful.includes(index) ? believing(index, ROUGH) : undefined) ?? roughly[index] ?? all
    for (const belief of [others, all]) {
      const chance = chanceOf(reading, model, belief)
      if (chance < UNLIKELY) return [{ index, kind, chance, ...expected(reading, model, belief) }]
    }
    return []
  })
}

/** The chance of a reading at least as far off, or of a yes or no. */
function chanceOf(reading: Reading, model: GrooveModel, belief: Belief): number {
  const truth = model.truth(reading)
  const given = figureOf(reading)
  if (truth === undefined || given === undefined) {
    const { logLikelihood } = model.evidence(reading)
    return Math.min(
      1,
      expectation(belief, (x, y) => Math.exp(logLikelihood(x, y))),
    )
  }
  const deviation = readingDeviation(given.error)
  const below = expectation(belief, (x, y) => normalCdf((given.value - truth(x, y)) / deviation))
  return Math.max(0, 2 * Math.min(below, 1 - below))
}

function expected(reading: Reading, model: GrooveModel, belief: Belief): Pick<Disagreement, 'expected'> {
  const truth = model.truth(reading)
  const given = figureOf(reading)
  if (truth === undefined || given === undefined) return {}
  const deviation = readingDeviation(given.error)
  const { value, interval95 } = estimate(belief, truth)
  return { expected: { value, low: interval95.low - 2 * deviation, high: interval95.high + 2 * deviation } }
}

/** What was read where it is a figure, and no yes or no. */
function figureOf(reading: Reading): { readonly value: number; readonly error: ReadingError } | undefined {
  if ('value' in reading) return reading
  return reading.kind === 'plug' && reading.result === 'snug'
    ? { value: reading.diameter, error: reading.error }
    : undefined
}
