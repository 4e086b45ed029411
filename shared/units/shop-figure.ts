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

/** Errors below rounding count as none: a width of 1 1/8 in has no error at the rule. */
const EXACT_WITHIN = 8 * Number.EPSILON

/**
 * The nearest figure that a shop rule shows. Halves go away from zero.
 *
 * @param length below 1e12 mm either way: farther out tenths are lost in a double
 * @param denominator of an inch, whole and at least 1; unused in millimetres
 */
export function shopFigure(length: Mm, units: Units, denominator: number = USUAL_DENOMINATOR): ShopFigure {
  const steps = shopSteps(length, units, denominator)
  const text = units === 'in' ? inchText(Math.abs(steps), denominator) : millimetreText(Math.abs(steps))
  return { text: `${steps < 0 ? '−' : ''}${text} ${units}`, error: errorOf(steps, length, units, denominator) }
}

/** A length in inches that is on the rule, as the rule shows it: `31/64 in`. Undefined for any other, and in millimetres. */
export function figureOfRule(length: Mm, units: Units, denominator?: number): string | undefined {
  if (units !== 'in') return undefined
  const { text, error } = shopFigure(length, units, denominator)
  return error === 0 ? text : undefined
}

/** Error of the nearest figure of a shop rule, `shopFigure` without its text: figure less true length. */
export const shopError = (length: Mm, units: Units, denominator: number = USUAL_DENOMINATOR): Mm =>
  errorOf(shopSteps(length, units, denominator), length, units, denominator)

/** The nearest figure in whole steps of the rule. */
function shopSteps(length: Mm, units: Units, denominator: number): number {
  requireWhole('denominator', denominator, 1)
  const steps = Math.round(Math.abs(inUnits(length, units)) * stepsPerUnit(units, denominator))
  return length < 0 && steps > 0 ? -steps : steps
}

const stepsPerUnit = (units: Units, denominator: number): number =>
  units === 'in' ? denominator : STEPS_PER_MILLIMETRE

function errorOf(steps: number, length: Mm, units: Units, denominator: number): Mm {
  const shown = lengthOf(steps / stepsPerUnit(units, denominator), units)
  return mm(Math.abs(shown - length) <= EXACT_WITHIN * Math.abs(length) ? 0 : shown - length)
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
