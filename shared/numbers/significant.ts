/** Digits of a number in an answer that is not a length. */
export const SIGNIFICANT_DIGITS = 9

/** A number to 9 significant digits, the nearest double to that decimal: 0.3, not 0.30000000000000004. Never -0. */
export const significant = (value: number): number => Number(value.toPrecision(SIGNIFICANT_DIGITS)) + 0
