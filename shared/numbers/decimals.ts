import { itemAt } from './item-at.ts'

/** Powers of ten that a double has exactly. */
const POWERS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`))
/** Above this a double has hardly a digit after the point left. */
const LARGEST = 1e9
/** The product of a value and a power of ten is out by less than this, in steps: 1e9 steps of 1e-16 each. */
const PRODUCT_WITHIN = 1e-6

/**
 * A number to so many decimals, the nearest double to that decimal; half a step goes away from 0. It is `Number(value.toFixed(decimals))`,
 * without the text: a whole number of steps and a power of ten are exact, and so their quotient is rounded once. Where the
 * product is too near to the middle between two decimals to tell, the text decides.
 *
 * @param decimals whole, from 0 to 22
 */
export function toDecimals(value: number, decimals: number): number {
  const power = itemAt(POWERS, decimals)
  const steps = value * power
  const nearest = Math.round(steps)
  const isClear = Math.abs(steps) <= LARGEST && Math.abs(Math.abs(steps - nearest) - 0.5) > PRODUCT_WITHIN
  return isClear ? nearest / power : Number(value.toFixed(decimals))
}
