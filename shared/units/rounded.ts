import { inUnits, lengthOf, type Mm, type Units } from './length.ts'

/*
 * Answers state a length to 1e-6 mm or 1e-7 in. Whatever is computed and then stated in an input, a default or a suggestion, is
 * rounded first and used as rounded: sent again, it gives the same bearing.
 */

/** Steps of an answer's length in one unit: the finest inch fraction in use, 1/128, is a whole number of them. */
const STEPS: Readonly<Record<Units, number>> = { mm: 1e6, in: 1e7 }

/** A length this near to a step, in steps, is on it: what is left is the rounding of doubles. */
const ON_STEP_WITHIN = 1e-5

type Round = (steps: number) => number
const nearest: Round = Math.round
const up: Round = (steps) => Math.ceil(steps - ON_STEP_WITHIN)
const down: Round = (steps) => Math.floor(steps + ON_STEP_WITHIN)

// Plus 0, as -0 is no length; the division is the one rounding, so the figure has no more digits than it is given.
const inSteps = (length: Mm, units: Units, round: Round): number =>
  round(inUnits(length, units) * STEPS[units]) / STEPS[units] + 0

/** A length as the number that stands for it in an answer in `units`. */
export const roundedIn = (length: Mm, units: Units): number => inSteps(length, units, nearest)

/** The nearest length [mm] that an answer in `units` can state exactly. */
export const rounded = (length: Mm, units: Units): Mm => lengthOf(roundedIn(length, units), units)

/** The next such length at or above: for a length that must not be less. */
export const roundedUp = (length: Mm, units: Units): Mm => lengthOf(inSteps(length, units, up), units)

/** The next such length at or below: for a length that must not be more. */
export const roundedDown = (length: Mm, units: Units): Mm => lengthOf(inSteps(length, units, down), units)
