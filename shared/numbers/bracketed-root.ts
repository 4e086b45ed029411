/** Each round halves the bracket or nearly, and a double has 1074 + 1023 binary places: neither outlasts this. */
const MOST_ROUNDS = 4400

/**
 * The root of an increasing function inside a bracket: through its last three points by inverse quadratic interpolation where they
 * bend too little to mislead it, else by halving (T. R. Chandrupatla, Advances in Engineering Software 28, 1997; from memory). From
 * where its chord meets 0 on. It ends when the bracket is down to rounding, so the answer is as exact as the function itself.
 *
 * @param at the function: it must not fall between `low` and `high`, and may be endless there
 * @param low where it is at most 0
 * @param high where it is at least 0
 * @param within to which part of itself the root is wanted; 0 for all that a double holds
 * @throws RangeError when the ends do not enclose a root
 */
export function bracketedRoot(at: (x: number) => number, low: number, high: number, within = 0): number {
  let [last, lastValue, far, farValue] = [low, at(low), high, at(high)]
  if (!(lastValue <= 0 && farValue >= 0))
    throw new RangeError(`no root between ${low} (${lastValue}) and ${high} (${farValue})`)
  if (lastValue === 0) return low
  const chord = lastValue / (lastValue - farValue)
  let part = chord > 0 ? chord : 1 / 2
  for (let round = 0; round < MOST_ROUNDS && farValue !== 0; round++) {
    let [before, beforeValue] = [last, lastValue]
    last += part * (far - last)
    lastValue = at(last)
    if (lastValue === 0) return last
    // the root lies between the last point and the far one
    if (lastValue < 0 !== beforeValue < 0) [before, beforeValue, far, farValue] = [far, farValue, before, beforeValue]
    const best = Math.abs(lastValue) < Math.abs(farValue) ? last : far
    const least = ((within + Number.EPSILON) * Math.abs(best)) / Math.abs(far - last)
    if (!(least < 1 / 2)) return best
    const across = (last - far) / (before - far)
    const rise = (lastValue - farValue) / (beforeValue - farValue)
    const isStraight = rise * rise < across && (1 - rise) * (1 - rise) < 1 - across
    const quadratic = isStraight
      ? (lastValue / (farValue - lastValue)) * (beforeValue / (farValue - beforeValue)) +
        ((before - last) / (far - last)) *
          (lastValue / (beforeValue - lastValue)) *
          (farValue / (beforeValue - farValue))
      : 1 / 2
    part = Math.min(1 - least, Math.max(least, quadratic))
  }
  return far
}
