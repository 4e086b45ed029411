import { itemAt } from './item-at.ts'

/**
 * Whole numbers in proportion to shares, by the method of the largest remainder: each share is rounded down, and what is then
 * missing from the rounded sum goes, one each, to those that lost most by it. Rounded each on its own, 62.6, 18.7 and 18.7 of
 * 100 would add to 101. Of equal remainders the first goes up, so the same shares give the same parts.
 *
 * @param shares each 0 or more; together 1, or less where some of the whole is in none of them
 * @param whole that a share of 1 is, whole and above 0
 * @throws RangeError for a share below 0 or not finite
 */
export function wholeParts(shares: readonly number[], whole: number): readonly number[] {
  for (const share of shares)
    if (!(share >= 0 && share < Infinity)) throw new RangeError(`share must be at least 0 and finite, got ${share}`)
  const exact = shares.map((share) => share * whole)
  const down = exact.map(Math.floor)
  const missing = Math.round(sumOf(exact)) - sumOf(down)
  const raised = new Set(
    exact
      .map((_, index) => index)
      .toSorted((one, other) => remainder(exact, other) - remainder(exact, one))
      .slice(0, missing),
  )
  return down.map((part, index) => (raised.has(index) ? part + 1 : part))
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)
const remainder = (exact: readonly number[], index: number): number =>
  itemAt(exact, index) - Math.floor(itemAt(exact, index))
