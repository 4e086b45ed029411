import { requireWithin } from '#shared/precondition.ts'

/** The complete elliptic integrals of a modulus e. */
export interface EllipticIntegrals {
  /** K = ∫ dφ / √(1 − e² sin² φ) over a quarter turn. */
  readonly first: number
  /** E = ∫ √(1 − e² sin² φ) dφ over a quarter turn. */
  readonly second: number
  /** (K − E) / e², which keeps its digits where e is small: π/4 at 0. */
  readonly difference: number
}

/** The mean doubles its right digits each round; from an axis ratio of 1e-300 it takes ten. */
const MOST_ROUNDS = 40

/**
 * K and E by the arithmetic-geometric mean of 1 and k':  K = π / 2M,  E = K (1 − Σ 2^(n−1) cₙ²)
 * (Abramowitz and Stegun, Handbook of Mathematical Functions, 17.6; from memory). The modulus is given by k' = √(1 − e²),
 * the axis ratio of an ellipse of eccentricity e, because there a long thin one keeps its digits.
 *
 * @param axisRatio k', above 0 and at most 1
 * @returns to a few units in the last place; E, near 1, to K of them
 * @throws RangeError outside that range
 */
export function completeElliptic(axisRatio: number): EllipticIntegrals {
  requireWithin('axisRatio', axisRatio, Number.MIN_VALUE, 1)
  let arithmetic = (1 + axisRatio) / 2
  let geometric = Math.sqrt(axisRatio)
  // cₙ² over e², so that nothing is divided by a small e²: with c₁ = (1 − k') / 2, and cₙ₊₁ = cₙ² / 4 aₙ₊₁
  let gap = (1 - axisRatio) / 2
  let perModulus = (1 - axisRatio) / (4 * (1 + axisRatio))
  let weight = 1
  let sum = 1 / 2
  for (let round = 0; round < MOST_ROUNDS && gap > 0; round++) {
    sum += weight * perModulus
    const mean = (arithmetic + geometric) / 2
    const share = gap / (4 * mean)
    perModulus *= share * share
    gap *= share
    geometric = Math.sqrt(arithmetic * geometric)
    arithmetic = mean
    weight *= 2
    if (weight * perModulus < Number.EPSILON * sum * Number.EPSILON) break
  }
  const first = Math.PI / (arithmetic + geometric)
  const squared = (1 - axisRatio) * (1 + axisRatio)
  return { first, second: first * (1 - squared * sum), difference: first * sum }
}
