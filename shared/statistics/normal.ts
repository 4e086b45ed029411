import { requireWithin } from '#shared/precondition.ts'

/** 1 / √(2π) */
const PEAK = 0.3989422804014327

/** Standard normal density. */
export const normalDensity = (z: number): number => PEAK * Math.exp(-0.5 * z * z)

// Hart (1968), algorithm 5666, coefficients as in G. West, Better approximations to cumulative normal functions (2005);
// from memory, and tested against an integral of the density.
// Written out, for some ten thousand are worked out for one answer.
const upper = (z: number): number =>
  (((((3.52624965998911e-2 * z + 0.700383064443688) * z + 6.37396220353165) * z + 33.912866078383) * z +
    112.079291497871) *
    z +
    221.213596169931) *
    z +
  220.206867912376
const lower = (z: number): number =>
  ((((((8.83883476483184e-2 * z + 1.75566716318264) * z + 16.064177579207) * z + 86.7807322029461) * z +
    296.564248779674) *
    z +
    637.333633378831) *
    z +
    793.826512519948) *
    z +
  440.413735824752
const TAIL_FROM = 7.07106781186547
const NOTHING_LEFT_FROM = 37

const polynomial = (coefficients: readonly number[], x: number): number => {
  let sum = 0
  for (const coefficient of coefficients) sum = sum * x + coefficient
  return sum
}

/**
 * Standard normal distribution function, the chance that a standard normal number is at most z.
 *
 * @returns from 0 to 1, to about 1e-15 absolute; in the lower tail to about 1e-8 relative
 */
export function normalCdf(z: number): number {
  const size = Math.abs(z)
  const tail = size > NOTHING_LEFT_FROM ? 0 : upperTail(size)
  return z > 0 ? 1 - tail : tail
}

function upperTail(z: number): number {
  const exponential = Math.exp(-0.5 * z * z)
  if (z < TAIL_FROM) return (exponential * upper(z)) / lower(z)
  // The continued fraction of Mills' ratio.
  return (exponential / (z + 1 / (z + 2 / (z + 3 / (z + 4 / (z + 0.65)))))) * PEAK
}

/**
 * Logarithm of the distribution function; stays finite where the function itself is 0 in a double.
 */
export function logNormalCdf(z: number): number {
  if (z > -NOTHING_LEFT_FROM) return Math.log(normalCdf(z))
  return -0.5 * z * z - Math.log(-z / PEAK)
}

/**
 * Quantile of the standard normal distribution: M. J. Wichura, Algorithm AS 241, PPND16, Applied Statistics 37 (1988);
 * coefficients from memory, tested as the way back of `normalCdf`.
 *
 * @param probability above 0 and below 1
 * @throws RangeError outside that range
 */
export function normalQuantile(probability: number): number {
  requireWithin('probability', probability, Number.MIN_VALUE, 1 - Number.EPSILON / 2)
  const fromMiddle = probability - 0.5
  if (Math.abs(fromMiddle) <= 0.425) {
    const r = 0.180625 - fromMiddle * fromMiddle
    return (fromMiddle * polynomial(MIDDLE_A, r)) / polynomial(MIDDLE_B, r)
  }
  const r = Math.sqrt(-Math.log(fromMiddle < 0 ? probability : 1 - probability))
  const size =
    r <= 5
      ? polynomial(NEAR_C, r - 1.6) / polynomial(NEAR_D, r - 1.6)
      : polynomial(FAR_E, r - 5) / polynomial(FAR_F, r - 5)
  return fromMiddle < 0 ? -size : size
}

const MIDDLE_A = [
  2509.0809287301226727, 33430.575583588128105, 67265.770927008700853, 45921.953931549871457, 13731.693765509461125,
  1971.5909503065514427, 133.14166789178437745, 3.387132872796366608,
] as const
const MIDDLE_B = [
  5226.495278852545925, 28729.085735721942674, 39307.89580009271061, 21213.794301586595867, 5394.1960214247511077,
  687.1870074920579083, 42.313330701600911252, 1,
] as const
const NEAR_C = [
  7.7454501427834140764e-4, 0.0227238449892691845833, 0.24178072517745061177, 1.27045825245236838258,
  3.64784832476320460504, 5.7694972214606914055, 4.6303378461565452959, 1.42343711074968357734,
] as const
const NEAR_D = [
  1.05075007164441684324e-9, 5.475938084995344946e-4, 0.0151986665636164571966, 0.14810397642748007459,
  0.68976733498510000455, 1.6763848301838038494, 2.05319162663775882187, 1,
] as const
const FAR_E = [
  2.01033439929228813265e-7, 2.71155556874348757815e-5, 0.0012426609473880784386, 0.026532189526576123093,
  0.29656057182850489123, 1.7848265399172913358, 5.4637849111641143699, 6.6579046435011037772,
] as const
const FAR_F = [
  2.04426310338993978564e-15, 1.4215117583164458887e-7, 1.8463183175100546818e-5, 7.868691311456132591e-4,
  0.0148753612908506148525, 0.13692988092273580531, 0.59983220655588793769, 1,
] as const

/** No quantile is asked of a probability nearer to 0 or 1. */
const INSIDE = 1e-12

/**
 * Quantile of a normal distribution of which both tails are cut off:  µ + σ Φ⁻¹(Φ(a) + p (Φ(b) − Φ(a)))  between the ends a and b.
 *
 * @param low where it begins, may be −∞
 * @param high where it ends, may be +∞; taken as `low` where it lies below it
 * @param share p, from 0 to 1
 */
export function normalQuantileBetween(
  { mean, deviation }: { readonly mean: number; readonly deviation: number },
  low: number,
  high: number,
  share: number,
): number {
  const [below, above] = [normalCdf((low - mean) / deviation), normalCdf((high - mean) / deviation)]
  const at = below + share * Math.max(0, above - below)
  const found = mean + deviation * normalQuantile(Math.min(Math.max(at, INSIDE), 1 - INSIDE))
  return Math.min(Math.max(found, low), Math.max(high, low))
}
