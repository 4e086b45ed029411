/** Each round at least halves the bracket, and a double has 1074 + 1023 binary places: no bracket outlasts this. */
const MOST_ROUNDS = 2200

/** The value and the slope of a function at a point. */
export type ValueAndSlope = readonly [value: number, slope: number]

/**
 * The root of an increasing function inside a bracket: Newton's steps, kept inside the bracket, and a bisection
 * wherever a step would leave it or the value did not halve. It ends when the bracket or the step is within a unit in
 * the last place of the root, so the answer is as exact as the function's own rounding allows.
 *
 * @param at value and slope of the function; it must not fall between `low` and `high`
 * @param low where the value is at most 0
 * @param high where the value is at least 0
 * @throws RangeError when the ends do not enclose a root
 */
export function bracketedRoot(at: (x: number) => ValueAndSlope, low: number, high: number): number {
  const [atLow] = at(low)
  const [atHigh] = at(high)
  if (!(atLow <= 0 && atHigh >= 0)) throw new RangeError(`no root between ${low} (${atLow}) and ${high} (${atHigh})`)
  if (atLow === 0) return low
  if (atHigh === 0) return high
  let [below, above] = [low, high]
  let x = low + (high - low) / 2
  let before = Number.POSITIVE_INFINITY
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const [value, slope] = at(x)
    if (value === 0) return x
    if (value < 0) below = x
    else above = x
    const step = value / slope
    const newton = x - step
    const inside = newton > below && newton < above && Math.abs(value) <= before / 2
    before = Math.abs(value)
    const next = inside ? newton : below + (above - below) / 2
    if (next === x || next === below || next === above || Math.abs(next - x) <= Number.EPSILON * Math.abs(x)) return next
    x = next
  }
  return x
}
