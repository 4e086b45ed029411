/** Each round halves the bracket or the value, and a double has 1074 + 1023 binary places: neither outlasts this. */
const MOST_ROUNDS = 4400

/** The value and the slope of a function at a point. */
export type ValueAndSlope = readonly [value: number, slope: number]

/** A step this small, by the root's size, is the function's own rounding: taking it is all that is left to do. */
const LAST_STEP = 8 * Number.EPSILON

/**
 * The root of an increasing function inside a bracket: from where its chord meets 0 by Newton's steps, kept inside the
 * bracket, with a bisection wherever a step would leave it or the value did not halve. It ends when a step or the
 * bracket is down to rounding, so the answer is as exact as the function itself.
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
  const chord = low - (atLow / (atHigh - atLow)) * (high - low)
  let x = chord > low && chord < high ? chord : low + (high - low) / 2
  let before = Number.POSITIVE_INFINITY
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const [value, slope] = at(x)
    if (value === 0) return x
    if (value < 0) below = x
    else above = x
    const step = value / slope
    const newton = x - step
    // an endless slope tells nothing of how far the root is
    if (slope < Number.POSITIVE_INFINITY && Math.abs(step) <= LAST_STEP * Math.abs(x))
      return Math.min(Math.max(newton, below), above)
    const inside = newton > below && newton < above && Math.abs(value) <= before / 2
    const next = inside ? newton : below + (above - below) / 2
    before = Math.abs(value)
    if (next === below || next === above) return next
    x = next
  }
  return x
}
