import { toDecimals } from './decimals.ts'

/** Digits of a number in an answer that is not a length. */
const SIGNIFICANT_DIGITS = 9
/** Sizes that have their digits within twenty decimals. */
const LEAST = 1e-12
const MOST = 1e8

/** A number to 9 significant digits, the nearest double to that decimal: 0.3, not 0.30000000000000004. Never -0. */
export function significant(value: number): number {
  const size = Math.abs(value)
  if (!(size >= LEAST && size < MOST)) return Number(value.toPrecision(SIGNIFICANT_DIGITS)) + 0
  let decimals = 0
  for (let scaled = size; scaled < MOST; scaled *= 10) decimals++
  return toDecimals(value, decimals) + 0
}

/** How far apart two numbers of 9 significant digits are at the most, for their size. */
export const NEXT = 1e-8

/** The same, at or below the number: for one that must not be more. Above 0. */
export const significantDown = (value: number): number => {
  const nearest = significant(value)
  return nearest > value ? significant(value * (1 - NEXT)) : nearest
}
