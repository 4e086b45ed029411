import { normalCdf, normalDensity } from './normal.ts'
import { drawNormals } from './normal-cells.ts'
import { drawWords, type Random } from './random.ts'

/** The distribution of an unknown number. Any unit, the same throughout. */
export type Distribution =
  | { readonly kind: 'normal'; readonly mean: number; readonly standardDeviation: number }
  /** Anywhere from mean − halfWidth to mean + halfWidth. */
  | { readonly kind: 'uniform'; readonly mean: number; readonly halfWidth: number }
  /** The same ends, and most likely in the middle. */
  | { readonly kind: 'triangular'; readonly mean: number; readonly halfWidth: number }
  /** Any of these with the same chance, one at the least. */
  | { readonly kind: 'discrete'; readonly values: readonly number[] }

export function meanOf(distribution: Distribution): number {
  if (distribution.kind !== 'discrete') return distribution.mean
  return distribution.values.reduce((sum, value) => sum + value, 0) / distribution.values.length
}

/** Variance; for a discrete distribution over the number of its values, which are the population and not a sample. */
export function varianceOf(distribution: Distribution): number {
  switch (distribution.kind) {
    case 'normal':
      return distribution.standardDeviation * distribution.standardDeviation
    case 'uniform':
      return (distribution.halfWidth * distribution.halfWidth) / 3
    case 'triangular':
      return (distribution.halfWidth * distribution.halfWidth) / 6
    case 'discrete': {
      const mean = meanOf(distribution)
      const squares = distribution.values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0)
      return squares / distribution.values.length
    }
    default:
      return distribution satisfies never
  }
}

export interface Ends {
  readonly least: number
  readonly most: number
}

/** Between which ends all of it lies. A normal distribution has none: its are so many standard deviations off. */
export function endsOf(distribution: Distribution, standardDeviations: number): Ends {
  if (distribution.kind === 'discrete') {
    return { least: Math.min(...distribution.values), most: Math.max(...distribution.values) }
  }
  const reach =
    distribution.kind === 'normal' ? standardDeviations * distribution.standardDeviation : distribution.halfWidth
  return { least: distribution.mean - reach, most: distribution.mean + reach }
}

/** Probability per unit, of all but a discrete one; a normal one of no width has none. */
export function densityOf(distribution: Exclude<Distribution, { kind: 'discrete' }>): (x: number) => number {
  const { mean } = distribution
  if (distribution.kind === 'normal') {
    const { standardDeviation } = distribution
    return (x) => normalDensity((x - mean) / standardDeviation) / standardDeviation
  }
  const { halfWidth } = distribution
  if (distribution.kind === 'uniform') return (x) => Number(Math.abs(x - mean) <= halfWidth) / (2 * halfWidth)
  return (x) => Math.max(0, 1 - Math.abs(x - mean) / halfWidth) / halfWidth
}

export interface Moments {
  readonly mean: number
  readonly variance: number
}

/**
 * Mean and variance of the size |X| of a number X: of the folded normal distribution (F. C. Leone, L. S. Nelson and R. B.
 * Nottingham, Technometrics 3 (1961)), or by the integral of |x| over a density made of straight lines.
 */
export function momentsOfSize(distribution: Distribution): Moments {
  const mean = meanOf(distribution)
  const size = sizeMean(distribution)
  // E|X|² = E X²
  return { mean: size, variance: Math.max(0, varianceOf(distribution) + (mean - size) * (mean + size)) }
}

function sizeMean(distribution: Distribution): number {
  switch (distribution.kind) {
    case 'normal': {
      const { mean, standardDeviation } = distribution
      if (standardDeviation === 0) return Math.abs(mean)
      const z = mean / standardDeviation
      return mean * (1 - 2 * normalCdf(-z)) + 2 * standardDeviation * normalDensity(z)
    }
    case 'uniform': {
      const { halfWidth } = distribution
      const mean = Math.abs(distribution.mean)
      return mean >= halfWidth ? mean : (mean * mean + halfWidth * halfWidth) / (2 * halfWidth)
    }
    case 'triangular': {
      const { halfWidth } = distribution
      const mean = Math.abs(distribution.mean)
      if (mean >= halfWidth) return mean
      // E|X| = mean + 2 E max(0, −X), and the corner beyond 0 has E max(0, −X) = (halfWidth − mean)³ / 6 halfWidth².
      const beyond = halfWidth - mean
      return mean + (beyond * beyond * beyond) / (3 * halfWidth * halfWidth)
    }
    case 'discrete':
      return distribution.values.reduce((sum, value) => sum + Math.abs(value), 0) / distribution.values.length
    default:
      return distribution satisfies never
  }
}

/** A word of 32 bits as a number between 0 and 1: the middle of its 2^-32. */
const PER_WORD = 1 / 4_294_967_296

/**
 * Draws independent numbers of a distribution into the beginning of `out`, by + − × alone, so that every engine gives the
 * same bits.
 */
export function draw(distribution: Distribution, random: Random, out: Float64Array, count: number): void {
  if (distribution.kind === 'normal') drawNormals(distribution, random, out, count)
  else if (distribution.kind === 'uniform') drawUniform(distribution, random, out, count)
  else if (distribution.kind === 'triangular') drawTriangular(distribution, random, out, count)
  else drawAny(distribution.values, random, out, count)
}

interface Between {
  readonly mean: number
  readonly halfWidth: number
}

function drawUniform({ mean, halfWidth }: Between, random: Random, out: Float64Array, count: number): void {
  const words = drawWords(random, count)
  const [from, per] = [mean - halfWidth * (1 - PER_WORD), 2 * halfWidth * PER_WORD]
  for (let index = 0; index < count; index++) out[index] = from + per * (words[index] ?? Number.NaN)
}

/** The sum of two uniform numbers of half the width. */
function drawTriangular({ mean, halfWidth }: Between, random: Random, out: Float64Array, count: number): void {
  const words = drawWords(random, 2 * count)
  const [from, per] = [mean - halfWidth * (1 - PER_WORD), halfWidth * PER_WORD]
  for (let index = 0; index < count; index++) {
    out[index] = from + per * ((words[index] ?? Number.NaN) + (words[count + index] ?? Number.NaN))
  }
}

function drawAny(values: readonly number[], random: Random, out: Float64Array, count: number): void {
  const words = drawWords(random, count)
  for (let index = 0; index < count; index++) {
    // No value is favoured by more than their number × 2^-32.
    out[index] = values[Math.floor((words[index] ?? Number.NaN) * PER_WORD * values.length)] ?? Number.NaN
  }
}

/**
 * Draws, again and again, so many of a list without putting any back: trial t has its values at t, t + trials,
 * t + 2 trials, … By the shuffle of R. Durstenfeld, Algorithm 235, Communications of the ACM 7 (1964), broken off.
 *
 * @param values as many as are drawn, or more
 */
export function drawWithoutReplacement(
  values: readonly number[],
  drawn: number,
  random: Random,
  out: Float64Array,
  trials: number,
): void {
  if (!(values.length >= drawn)) throw new RangeError(`values must be ${drawn} or more, got ${values.length}`)
  const words = drawWords(random, drawn * trials)
  const left = Float64Array.from(values)
  for (let trial = 0; trial < trials; trial++) {
    // The list needs no reset: drawing from it is fair in whatever order the trial before left it.
    for (let place = 0; place < drawn; place++) {
      const at = place + Math.floor((words[place * trials + trial] ?? Number.NaN) * PER_WORD * (left.length - place))
      const value = left[at] ?? Number.NaN
      left[at] = left[place] ?? Number.NaN
      left[place] = value
      out[place * trials + trial] = value
    }
  }
}
