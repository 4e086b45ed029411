import { itemAt } from '#shared/numbers/item-at.ts'
import { requireWhole, requireWithin } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { CharacteristicFunction } from './characteristic-function.ts'
import { normalDensity, normalQuantile } from './normal.ts'
import { PLAY_LOSS } from './play-loss.ts'

/*
 * The play of a ring of random balls before any is measured. To first order, with directions n evenly round the ring,
 * the play (`play-among-unequal-balls.ts`) is a linear program, and of balls that are independently normal with standard deviation σ
 *
 *   radialInternalClearance = nominal − σ W,      W = 2 max Σ λᵢ zᵢ   (λ ≥ 0, Σ λᵢ = 1, Σ λᵢ nᵢ = 0)
 *
 * where W depends on the count of balls alone. Its quantile function is tabulated (`play-loss.ts`) as a polynomial of
 * the standard normal quantile. W falls into 2 z̄ and a part that is never below 0: unequal balls have less play than
 * equal ones of their own mean.
 */

/** A ring of random balls with the play that it would have if all had the mean size. */
export interface RandomBalls {
  /** The design's `radialInternalClearance` [mm], by the mean ball of the lot. */
  readonly play: Mm
  /** σ of single balls [mm], 0 or above. */
  readonly scatter: Mm
  /** Z, whole, from 3 to 200. */
  readonly ballCount: number
}

const FEWEST = 3
const MOST = 200

/**
 * The play that a ring stays below with a given probability. That probability is within 0.001 of the linear program at
 * equal spacing, 0.0005 for counts that have a row. Exact play differs from that by 0.005 at most up to a scatter of a hundredth of
 * the ball where the gap is spread (`playInBlocks`, tried by 40,000 rings for counts from 5 to 40). Where all of the gap
 * lies at one place the difference grows with it and is largest for few balls: for a gap of a twentieth of a ball 0.006,
 * for one of half a ball 0.04 with 6 balls and 0.006 with 14.
 *
 * @param probability above 0 and below 1; below 1e-5 and above 1 − 1e-5 the polynomial is carried on as a straight line
 * @throws RangeError outside these ranges and those of `RandomBalls`
 */
export function playQuantile({
  play,
  scatter,
  ballCount,
  probability,
}: RandomBalls & { readonly probability: number }): Mm {
  requireScatter(scatter)
  return mm(play - scatter * lossAt(lossOf(ballCount), normalQuantile(1 - probability)))
}

/** Nodes of the trapezoidal rule over a normal density: from here to there, so far apart. */
const NODES_TO = 6.5
const NODE_STEP = 0.1
/** The characteristic function is divided by one that has fallen to this. */
const FALLEN_TO = 1e-3
/** With fewer balls, but for three, the fitted polynomials are too smooth to be divided. */
const FEWEST_DIVIDED = 7

/** Moments of a law. */
interface UnevenLoss {
  readonly mean: number
  readonly variance: number
  /** Third central moment over that of the deviation. */
  readonly skewness: number
}

/**
 * V = W − 2 z̄ for a scatter of 1: how much more play unequal balls take than equal ones of their own mean; so much less is the
 * largest disc inside them. Three balls take no more. As 2 z̄ is independent of V and symmetric, it adds to the variance alone.
 *
 * @throws RangeError outside the ranges of `RandomBalls`
 */
export function unevenLoss(ballCount: number): UnevenLoss {
  const { mean, variance, third } = momentsFor(ballCount)
  if (ballCount === FEWEST) return { mean: 0, variance: 0, skewness: 0 }
  const own = variance - 4 / ballCount
  return { mean, variance: own, skewness: third / (own * Math.sqrt(own)) }
}

/**
 * V by a standard normal number: Cornish and Fisher's first correction for skewness, never below 0.
 *
 * @throws RangeError outside the ranges of `RandomBalls`
 */
export function unevenLossBy(ballCount: number): (z: number) => number {
  const { mean, variance, skewness } = unevenLoss(ballCount)
  const deviation = Math.sqrt(variance)
  return (z) => Math.max(0, mean + deviation * (z + (skewness / 6) * (z * z - 1)))
}

/**
 * The characteristic function of V less its mean, for a scatter of 1. V is independent of z̄ (D. Basu, Sankhyā 15 (1955)),
 * so that of W is that of 2 z̄, e^(−2t²/Z), times that of V. Where the former has fallen to a thousandth the latter counts for
 * nothing, and is taken as 0; before, it is that of 400,000 trials to within 0.006.
 *
 * @returns undefined for counts from 4 to 6
 * @throws RangeError outside the ranges of `RandomBalls`
 */
export function unevenCharacteristic(ballCount: number): CharacteristicFunction | undefined {
  const loss = lossOf(ballCount)
  if (ballCount === FEWEST) return { real: () => 1 }
  if (ballCount < FEWEST_DIVIDED) return undefined
  const { mean } = unevenLoss(ballCount)
  const last = Math.sqrt((-Math.log(FALLEN_TO) * ballCount) / 2)
  const known = new Map<number, readonly [real: number, imaginary: number]>()
  const at = (t: number): readonly [number, number] => {
    if (Math.abs(t) > last) return [0, 0]
    const found = known.get(t)
    if (found !== undefined) return found
    let [real, imaginary] = [0, 0]
    for (let z = -NODES_TO; z <= NODES_TO; z += NODE_STEP) {
      const angle = t * (lossAt(loss, z) - mean)
      real += normalDensity(z) * Math.cos(angle)
      imaginary += normalDensity(z) * Math.sin(angle)
    }
    const scale = NODE_STEP * Math.exp((2 * t * t) / ballCount)
    const value = [real * scale, imaginary * scale] as const
    known.set(t, value)
    return value
  }
  return { real: (t) => at(t)[0], imaginary: (t) => at(t)[1] }
}

/**
 * Standard error of the tabulated law at the standard normal quantile z, in standard deviations of one ball: those of its
 * trials, of the fit and of what lies between two rows together.
 */
export function playLawError(ballCount: number, z: number): number {
  const isRow = PLAY_LOSS.some(([count]) => count === ballCount)
  return (isRow ? 0.0005 : 0.001) * (1 + (z * z) / 4)
}

/** Mean and standard deviation of the play of a ring of random balls; ranges and errors as in `playQuantile`. */
export function playMoments({ play, scatter, ballCount }: RandomBalls): {
  readonly mean: Mm
  readonly standardDeviation: Mm
} {
  requireScatter(scatter)
  const { mean, variance } = momentsFor(ballCount)
  return { mean: mm(play - scatter * mean), standardDeviation: mm(scatter * Math.sqrt(variance)) }
}

function requireScatter(scatter: number): void {
  requireWithin('scatter', scatter, 0, Number.MAX_VALUE)
}

/** Coefficients of 1, z, z² and so on. */
type Polynomial = readonly number[]

/** Means of the powers of a standard normal number: of an even one of all odd numbers below it, multiplied. */
const normalMoment = (power: number): number =>
  power % 2 === 1 ? 0 : power < 2 ? 1 : (power - 1) * normalMoment(power - 2)

interface Moments {
  readonly mean: number
  readonly variance: number
  /** Central. */
  readonly third: number
}

const MOMENTS = new Map<number, Moments>()

function momentsFor(ballCount: number): Moments {
  const known = MOMENTS.get(ballCount) ?? momentsOf(lossOf(ballCount))
  MOMENTS.set(ballCount, known)
  return known
}

/** Of a polynomial in a standard normal number. */
function momentsOf(polynomial: Polynomial): Moments {
  const mean = meanOf(polynomial)
  const off = polynomial.map((coefficient, power) => (power === 0 ? coefficient - mean : coefficient))
  const squared = product(off, off)
  return { mean, variance: meanOf(squared), third: meanOf(product(squared, off)) }
}

const meanOf = (polynomial: Polynomial): number =>
  polynomial.reduce((sum, coefficient, power) => sum + coefficient * normalMoment(power), 0)

function product(one: Polynomial, other: Polynomial): Polynomial {
  const all = new Array<number>(one.length + other.length - 1).fill(0)
  one.forEach((a, power) => {
    other.forEach((b, more) => {
      all[power + more] = (all[power + more] ?? Number.NaN) + a * b
    })
  })
  return all
}

const KNOWN = new Map<number, Polynomial>()

/**
 * Coefficients for a count. A count without a row lies between those of its own parity, evenly by the root of the logarithm, as
 * the largest of as many normal numbers does: within 0.0005 of where its own would.
 */
function lossOf(ballCount: number): Polynomial {
  requireWhole('ballCount', ballCount, FEWEST)
  requireWithin('ballCount', ballCount, FEWEST, MOST)
  const known = KNOWN.get(ballCount) ?? between(ballCount)
  KNOWN.set(ballCount, known)
  return known
}

function between(ballCount: number): Polynomial {
  const rows = PLAY_LOSS.filter(([count]) => count % 2 === ballCount % 2)
  const above = rows.findIndex(([count]) => count >= ballCount)
  const [highCount, ...high] = itemAt(rows, above)
  if (highCount === ballCount) return high
  const [lowCount, ...low] = itemAt(rows, above - 1)
  const at = (count: number): number => Math.sqrt(Math.log(count))
  const part = (at(ballCount) - at(lowCount)) / (at(highCount) - at(lowCount))
  return low.map((coefficient, power) => coefficient + part * (itemAt(high, power) - coefficient))
}

/** Normal quantile up to which the polynomials were fitted. */
const FITTED_TO = 4.25

/** W at a standard normal quantile; a straight line past what was fitted. */
function lossAt(polynomial: Polynomial, z: number): number {
  const inside = Math.min(Math.max(z, -FITTED_TO), FITTED_TO)
  let [value, slope] = [0, 0]
  for (let power = polynomial.length - 1; power >= 0; power--) {
    slope = slope * inside + value
    value = value * inside + (polynomial[power] ?? Number.NaN)
  }
  return value + slope * (z - inside)
}
