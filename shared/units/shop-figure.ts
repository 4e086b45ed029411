import { requireWhole } from '#shared/precondition.ts'
import { inUnits, lengthOf, type Mm, mm, type Units } from './length.ts'

/** A length as it can be set out with a rule or caliper, and what that rounding costs. */
export interface ShopFigure {
  /** `"1 3/16 in"` or `"30.2 mm"` */
  readonly text: string
  /** Shop figure less true length: above 0 when the shop figure is the larger. */
  readonly error: Mm
}

/** A common rule reads to 1/64 in, a common caliper to 0.1 mm: common practice, no source. */
export const USUAL_DENOMINATOR = 64
const STEPS_PER_MILLIMETRE = 10

/** What differs by no more than rounding does not differ: a width of 1 1/8 in has no error at the rule. */
const EXACT_WITHIN = 8 * Number.EPSILON

/**
 * The nearest figure that a shop rule shows. Halves go away from zero.
 *
 * @param length below 1e12 mm either way: farther out tenths are lost in a double
 * @param denominator of an inch, whole and at least 1; unused in millimetres
 */
export function shopFigure(length: Mm, units: Units, denominator: number = USUAL_DENOMINATOR): ShopFigure {
  requireWhole('denominator', denominator, 1)
  const perUnit = units === 'in' ? denominator : STEPS_PER_MILLIMETRE
  const steps = Math.round(Math.abs(inUnits(length, units)) * perUnit)
  const sign = length < 0 && steps > 0 ? -1 : 1
  const text = units === 'in' ? inchText(steps, denominator) : millimetreText(steps)
  const shown = lengthOf((sign * steps) / perUnit, units)
  const isExact = Math.abs(shown - length) <= EXACT_WITHIN * Math.abs(length)
  return { text: `${sign < 0 ? '-' : ''}${text} ${units}`, error: mm(isExact ? 0 : shown - length) }
}

/** The length of one step of the rule or caliper in use. */
export const shopStep = (units: Units, denominator: number = USUAL_DENOMINATOR): Mm =>
  lengthOf(1 / (units === 'in' ? denominator : STEPS_PER_MILLIMETRE), units)

const millimetreText = (steps: number): string =>
  `${Math.floor(steps / STEPS_PER_MILLIMETRE)}.${steps % STEPS_PER_MILLIMETRE}`

function inchText(steps: number, denominator: number): string {
  const whole = Math.floor(steps / denominator)
  const rest = steps % denominator
  if (rest === 0) return String(whole)
  const shared = greatestCommonDivisor(rest, denominator)
  const fraction = `${rest / shared}/${denominator / shared}`
  return whole === 0 ? fraction : `${whole} ${fraction}`
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b)
}
