/**
 * Guards for the core's own callers. Input from outside is checked at the edge; what trips here is a bug of ours.
 * Each states what is good, so that NaN never passes.
 */

/** @throws RangeError unless `value` is a finite number above 0 */
export function requireAboveZero(name: string, value: number): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${name} must be above 0 and finite, got ${value}`)
  }
}

/** @throws RangeError unless `value` is whole and at least `least` */
export function requireWhole(name: string, value: number, least: number): void {
  if (!(value >= least && Number.isInteger(value))) {
    throw new RangeError(`${name} must be whole and at least ${least}, got ${value}`)
  }
}

/** @throws RangeError unless `least` ≤ `value` ≤ `most` */
export function requireWithin(name: string, value: number, least: number, most: number): void {
  if (!(value >= least && value <= most)) {
    throw new RangeError(`${name} must be from ${least} to ${most}, got ${value}`)
  }
}
