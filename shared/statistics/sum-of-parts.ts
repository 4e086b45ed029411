import { fourierTransform } from '#shared/numbers/fourier-transform.ts'
import { type CharacteristicFunction, sinc } from './characteristic-function.ts'
import { forEachOf, type Sample } from './sample.ts'
import { BINS } from './streaming-histogram.ts'

/*
 * Two sums of the same independent parts, each with slopes of its own, without a single trial: their characteristic functions
 * are the products of those of the parts, and a Fourier series leads back. It repeats itself after a period, so that has to
 * hold all of the distribution but a share that nobody misses.
 */

/** Numbers of one distribution that do not know of one another, with their slope in either sum. */
export interface Part {
  readonly characteristic: CharacteristicFunction
  readonly variance: number
  readonly slopes: readonly [number, number]
  /** Whole. */
  readonly copies: number
}

/** A part that moves both sums at once: on any of some straight pieces that are equally likely, evenly spread over each. */
export interface Pieces {
  readonly pieces: readonly Piece[]
}
interface Piece {
  /** Its middle in either sum, less the mean over all. */
  readonly middle: readonly [number, number]
  /** From the middle to an end. */
  readonly half: readonly [number, number]
  /** Values of which one is added to the second sum alone, 0 on the mean. */
  readonly own?: Sample
}

type AnyPart = Part | Pieces

/** Normally distributed noise on top: its variances and covariance. */
export interface Noise {
  readonly variances: readonly [number, number]
  readonly covariance: number
}

interface Complex {
  real: number
  imaginary: number
}

/** The characteristic functions of what pieces have of their own, at some place in the second sum. */
type OwnTerms = ReadonlyMap<Pieces, readonly (Complex | undefined)[]>

const ownTerms = (parts: readonly AnyPart[], t: number): OwnTerms =>
  new Map(
    parts
      .filter((part) => 'pieces' in part)
      .map((part) => [part, part.pieces.map(({ own }) => own && characteristicOfSample(own, t))]),
  )

/** Its bins are a polynomial in the term of one bin's width, by Horner. */
function characteristicOfSample({ least, step, counts, size }: Sample, t: number): Complex {
  const [x, y] = [Math.cos(t * step), Math.sin(t * step)]
  let [real, imaginary] = [0, 0]
  for (let bin = counts.length - 1; bin >= 0; bin--) {
    const turned = real * x - imaginary * y + (counts[bin] ?? Number.NaN)
    imaginary = real * y + imaginary * x
    real = turned
  }
  const out = { real: real / size, imaginary: imaginary / size }
  turn(out, Math.cos(t * least), Math.sin(t * least))
  return out
}

/** The characteristic function of both sums less their means, at s and t. */
function characteristicAt(
  parts: readonly AnyPart[],
  noise: Noise,
  own: OwnTerms,
  [s, t]: readonly [number, number],
  out: Complex,
): void {
  const [one, other] = noise.variances
  out.real = Math.exp(-0.5 * (one * s * s + other * t * t) - noise.covariance * s * t)
  out.imaginary = 0
  for (const part of parts) {
    if ('pieces' in part) {
      let [real, imaginary] = [0, 0]
      const ownTerm = own.get(part)
      for (const [index, { middle, half }] of part.pieces.entries()) {
        const angle = s * middle[0] + t * middle[1]
        const size = sinc(s * half[0] + t * half[1])
        const [x, y] = [size * Math.cos(angle), size * Math.sin(angle)]
        const beside = ownTerm?.[index]
        real += beside === undefined ? x : x * beside.real - y * beside.imaginary
        imaginary += beside === undefined ? y : x * beside.imaginary + y * beside.real
      }
      turn(out, real / part.pieces.length, imaginary / part.pieces.length)
      continue
    }
    const { characteristic, slopes, copies } = part
    const at = slopes[0] * s + slopes[1] * t
    if (at === 0) continue
    if (characteristic.imaginary === undefined) {
      const factor = power(characteristic.real(at), copies)
      out.real *= factor
      out.imaginary *= factor
      continue
    }
    const real = characteristic.real(at)
    const imaginary = characteristic.imaginary(at)
    for (let copy = 0; copy < copies; copy++) turn(out, real, imaginary)
  }
}

function turn(out: Complex, real: number, imaginary: number): void {
  const turned = out.real * real - out.imaginary * imaginary
  out.imaginary = out.real * imaginary + out.imaginary * real
  out.real = turned
}

function deviationOf(own: Sample | undefined): number {
  let square = 0
  if (own !== undefined)
    forEachOf(own, (value, share) => {
      square += share * value * value
    })
  return Math.sqrt(square)
}

function meanOver({ pieces }: Pieces, of: (piece: Piece) => number): number {
  return pieces.reduce((sum, piece) => sum + of(piece), 0) / pieces.length
}

/** By products alone, for `**` differs from engine to engine. */
function power(base: number, exponent: number): number {
  let [product, square] = [1, base]
  for (let left = exponent; left > 0; left >>= 1) {
    if ((left & 1) === 1) product *= square
    square *= square
  }
  return product
}

/** A term below this is none; so many of them on end, and the series is over. */
const NOTHING = 1e-15
const QUIET = 8

/** A distribution in bins, and by how much a share of it may be off because it has corners that a series rounds. */
export interface Binned {
  /** Share of each bin. */
  readonly shares: Float64Array
  readonly roundedBy: number
}

/**
 * The distribution of one of the sums, in bins from `reach` below its mean to `reach` above it.
 *
 * @param which 0 or 1
 * @param reach some eight standard deviations: what lies beyond comes in again at the other end
 */
export function binnedSum(parts: readonly AnyPart[], noise: Noise, which: 0 | 1, reach: number): Binned {
  const terms = { real: new Float64Array(BINS), imaginary: new Float64Array(BINS) }
  const value: Complex = { real: 1, imaginary: 0 }
  const last = BINS / 2 - 1
  let [roundedBy, quiet] = [0, 0]
  for (let term = 0; term <= last && quiet < QUIET; term++) {
    const t = (Math.PI * term) / reach
    const own = ownTerms(which === 0 ? [] : parts, t)
    characteristicAt(parts, noise, own, which === 0 ? [t, 0] : [0, t], value)
    setTerm(terms, term, value)
    const size = Math.abs(value.real) + Math.abs(value.imaginary)
    quiet = size < NOTHING ? quiet + 1 : 0
    // A share takes each term over π times its number. Those beyond the last fall as 1 / number at the least, so all of them
    // together are no more than the largest of the last half over 2 π.
    if (term > last / 2) roundedBy = Math.max(roundedBy, size / (2 * Math.PI))
  }
  fourierTransform(terms)
  return { shares: terms.real, roundedBy }
}

/** A term and its mirror image, turned to the middle of the bins and averaged over their width. */
function setTerm(
  { real, imaginary }: { readonly real: Float64Array; readonly imaginary: Float64Array },
  term: number,
  value: Complex,
): void {
  const half = (Math.PI * term) / BINS
  const average = term === 0 ? 1 : Math.sin(half) / half
  const sign = term % 2 === 0 ? average / BINS : -average / BINS
  const x = sign * (value.real * Math.cos(half) + value.imaginary * Math.sin(half))
  const y = sign * (value.imaginary * Math.cos(half) - value.real * Math.sin(half))
  real[term] = x
  imaginary[term] = y
  if (term > 0) {
    real[BINS - term] = x
    imaginary[BINS - term] = -y
  }
}

/** From where to where, as distances from the mean; from any of several ends that are equally likely. */
export interface Between {
  readonly lows: readonly number[]
  readonly high: number
}

/** Size below which the terms of a two-dimensional series are left out. */
const LEFT_OUT = 1e-8
const MOST_TERMS = 20_000

/**
 * The share that has both sums between ends of their own: a Fourier series in two directions, of which the terms lie in a
 * band, the narrower and longer the more the two sums are one.
 *
 * @param reaches as for `binnedSum`
 * @returns undefined where it would take too many terms
 */
export function shareBetween(
  parts: readonly AnyPart[],
  noise: Noise,
  [one, other]: readonly [Between, Between],
  reaches: readonly [number, number],
): number | undefined {
  const { variances, covariance } = spreadOf(parts, noise)
  const lean = variances[0] > 0 ? covariance / variances[0] : 0
  const at = { real: 1, imaginary: 0 }
  const windows = new Map<number, Complex>()
  let [sum, quiet, count] = [0, 0, 0]
  for (let row = 0; quiet < QUIET; row++) {
    const t = (Math.PI * row) / reaches[1]
    const own = ownTerms(parts, t)
    const inRow = windowAt(other, t, reaches[1])
    // Where the terms of a row are largest.
    const middle = Math.round((-lean * t * reaches[0]) / Math.PI)
    let largest = 0
    for (const step of [1, -1]) {
      let quietHere = 0
      for (let place = step === 1 ? middle : middle - 1; quietHere < QUIET; place += step) {
        const s = (Math.PI * place) / reaches[0]
        characteristicAt(parts, noise, own, [s, t], at)
        const inOne = windows.get(place) ?? windowAt(one, s, reaches[0])
        windows.set(place, inOne)
        const inBoth = product(inRow, inOne)
        const term = product(at, inBoth)
        const size = Math.abs(term.real) + Math.abs(term.imaginary)
        // The rows below 0 are those above it in the mirror.
        sum += row === 0 ? term.real : 2 * term.real
        largest = Math.max(largest, size)
        quietHere = size < LEFT_OUT ? quietHere + 1 : 0
        if (++count > MOST_TERMS) return undefined
      }
    }
    quiet = largest < LEFT_OUT ? quiet + 1 : 0
  }
  return Math.min(1, Math.max(0, sum))
}

const product = (one: Complex, other: Complex): Complex => ({
  real: one.real * other.real - one.imaginary * other.imaginary,
  imaginary: one.real * other.imaginary + one.imaginary * other.real,
})

/** The mean of e^(−isx) over the period, x between two ends and none elsewhere. */
function windowAt({ lows, high }: Between, s: number, reach: number): Complex {
  const atLows = (of: (low: number) => number): number => lows.reduce((sum, low) => sum + of(low), 0) / lows.length
  if (s === 0) return { real: (high - atLows((low) => low)) / (2 * reach), imaginary: 0 }
  return {
    real: (Math.sin(s * high) - atLows((low) => Math.sin(s * low))) / (2 * reach * s),
    imaginary: (Math.cos(s * high) - atLows((low) => Math.cos(s * low))) / (2 * reach * s),
  }
}

/** Variances of both sums, the noise among it, and what they have in common. */
export function spreadOf(parts: readonly AnyPart[], { variances, covariance }: Noise): Noise {
  const sum = (of: (pair: readonly [number, number]) => number): number =>
    parts.reduce(
      (total, part) =>
        total +
        ('pieces' in part
          ? meanOver(part, ({ middle, half, own }) => of(middle) + of(half) / 3 + of([0, deviationOf(own)]))
          : part.copies * part.variance * of(part.slopes)),
      0,
    )
  return {
    variances: [variances[0] + sum(([one]) => one * one), variances[1] + sum(([, other]) => other * other)],
    covariance: covariance + sum(([one, other]) => one * other),
  }
}
