/*
 * Makes the rows of `shared/statistics/play-loss.ts`: how much play random balls take, in standard deviations of one
 * ball, by the linear program at equal spacing. Takes an hour of processor time.
 *
 *   node tests/bench/play-of-random-balls.ts [counts, all rows by default]
 *
 * W = 2 max Σ λᵢ zᵢ falls into 2 z̄, which is normal with variance 4 / Z, and V = 2 max Σ λᵢ (zᵢ − z̄), independent of
 * it. V does not change when the ring moves aside, so it follows from what is left of z without mean and first harmonic:
 * normal in Z − 3 dimensions, its length r has a χ distribution, and V = r U with a U of its direction, which r does not
 * depend on. Trials draw U alone; the distribution of W is the mean of Φ((w − r U) √Z / 2) over r and U, which is smoother
 * than counts are. The quantiles are fitted by a polynomial of the standard normal ones. Beside each row stand the
 * standard errors of mean and 95 % quantile from eight parts of the trials, and the most by which the fitted chance and
 * quantile are off those of the trials.
 */
import { emptyCircle, halfPlanes, inscribeCircle } from '#shared/geometry/inscribed-circle.ts'
import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { leastSquares } from '#shared/statistics/least-squares.ts'
import { normalCdf, normalDensity, normalQuantile } from '#shared/statistics/normal.ts'
import { PLAY_LOSS } from '#shared/statistics/play-loss.ts'
import { drawWords, randomStream } from '#shared/statistics/random.ts'
import { summary } from '#shared/statistics/summary.ts'

const PARTS = 8
/** U is 2 at most: twice the largest of numbers of which the squares add up to 1. */
const BINS_A_UNIT = 512
const BINS = 2 * BINS_A_UNIT
const DEGREE = 7
/** Normal quantiles between which the polynomial is fitted: chances of 1e-5 at either end. */
const REACH = 4.25
const NODES = 101

interface Drawn {
  readonly counts: Float64Array
  readonly sums: Float64Array
}

/** U of so many rings of balls, by bins, with what the bins hold in all. */
function drawLosses(ballCount: number, trials: number, stream: number): Drawn {
  const planes = halfPlanes(ballCount)
  const { normalX, normalY, reach } = planes
  for (let ball = 0; ball < ballCount; ball++) {
    normalX[ball] = Math.cos((2 * Math.PI * ball) / ballCount)
    normalY[ball] = Math.sin((2 * Math.PI * ball) / ballCount)
  }
  const circle = emptyCircle()
  const random = randomStream(17, stream)
  const drawn = { counts: new Float64Array(BINS), sums: new Float64Array(BINS) }
  for (let trial = 0; trial < trials; trial++) {
    const words = drawWords(random, ballCount)
    let [mean, cosine, sine, squares] = [0, 0, 0, 0]
    for (let ball = 0; ball < ballCount; ball++) {
      const size = normalQuantile(((words[ball] ?? 0) + 0.5) / 2 ** 32)
      reach[ball] = -size
      mean += size / ballCount
      cosine += (2 * size * (normalX[ball] ?? 0)) / ballCount
      sine += (2 * size * (normalY[ball] ?? 0)) / ballCount
      squares += size * size
    }
    inscribeCircle(planes, circle, 1e-13)
    const length = Math.sqrt(squares - ballCount * (mean * mean + (cosine * cosine + sine * sine) / 2))
    const loss = Math.max(0, (-2 * (circle.radius + mean)) / length)
    const bin = Math.min(BINS - 1, Math.floor(loss * BINS_A_UNIT))
    drawn.counts[bin] = (drawn.counts[bin] ?? 0) + 1
    drawn.sums[bin] = (drawn.sums[bin] ?? 0) + loss
  }
  return drawn
}

const joined = (parts: readonly Drawn[]): Drawn => ({
  counts: Float64Array.from({ length: BINS }, (_, bin) =>
    parts.reduce((sum, part) => sum + (part.counts[bin] ?? 0), 0),
  ),
  sums: Float64Array.from({ length: BINS }, (_, bin) => parts.reduce((sum, part) => sum + (part.sums[bin] ?? 0), 0)),
})

/** Points of a χ distribution with their weights: r = s⁴ of a length s, so that the even steps of s see a smooth end at 0. */
function lengthsOf(dimensions: number): readonly (readonly [length: number, weight: number])[] {
  const middle = Math.sqrt(dimensions)
  const [from, to] = [Math.max(0, middle - 6.5) ** 0.25, (middle + 6.5) ** 0.25]
  const steps = 60
  const points = Array.from({ length: steps + 1 }, (_, step) => {
    const s = from + ((to - from) * step) / steps
    const length = s ** 4
    const density = Math.exp((dimensions - 1) * Math.log(length / middle) - (length * length - dimensions) / 2)
    return [length, s === 0 ? 0 : s ** 3 * density] as const
  })
  const whole = points.reduce((sum, [, weight]) => sum + weight, 0)
  return points.map(([length, weight]) => [length, weight / whole] as const)
}

/** P(W ≤ w) of what was drawn. */
function chanceOf({ counts, sums }: Drawn, ballCount: number): (w: number) => number {
  const bins = [...counts.entries()].filter(([, count]) => count > 0)
  const total = bins.reduce((sum, [, count]) => sum + count, 0)
  const means = bins.map(([bin, count]) => [(sums[bin] ?? 0) / count, count / total] as const)
  const lengths = lengthsOf(ballCount - 3)
  const per = Math.sqrt(ballCount) / 2
  return (w) => {
    let chance = 0
    for (const [length, weight] of lengths)
      for (const [loss, share] of means) chance += weight * share * normalCdf((w - length * loss) * per)
    return chance
  }
}

const quantileOf = (chance: (w: number) => number, probability: number): number =>
  bracketedRoot((w) => chance(w) - probability, -20, 20, 1e-12)

function meanOf({ counts, sums }: Drawn, ballCount: number): number {
  const length = lengthsOf(ballCount - 3).reduce((sum, [each, weight]) => sum + each * weight, 0)
  return (length * sums.reduce((sum, of) => sum + of, 0)) / counts.reduce((sum, of) => sum + of, 0)
}

/** Weighted as the normal density with half its exponent: the tails count, though less. */
const fitted = (points: readonly (readonly [z: number, w: number])[]): readonly number[] =>
  leastSquares(
    points.map(([z]) => Array.from({ length: DEGREE + 1 }, (_, power) => z ** power)),
    points.map(([, w]) => w),
    points.map(([z]) => Math.sqrt(normalDensity(z))),
  ).coefficients

const polynomial = (coefficients: readonly number[], z: number): number =>
  coefficients.reduceRight((sum, coefficient) => sum * z + coefficient, 0)

const standardError = (values: readonly number[]): number =>
  summary(values).standardDeviation / Math.sqrt(values.length)

function row(ballCount: number, trials: number): string {
  const parts = Array.from({ length: PARTS }, (_, part) =>
    drawLosses(ballCount, trials / PARTS, 1000 * ballCount + part),
  )
  const chance = chanceOf(joined(parts), ballCount)
  const nodes = Array.from({ length: NODES }, (_, node) => REACH * ((2 * node) / (NODES - 1) - 1))
  const points = nodes.map((z) => [z, quantileOf(chance, normalCdf(z))] as const)
  const numbers = fitted(points).map((coefficient) => Number(coefficient.toFixed(7)))
  const ofChance = Math.max(...nodes.map((z) => Math.abs(chance(polynomial(numbers, z)) - normalCdf(z))))
  const ofQuantile = Math.max(...points.map(([z, w]) => Math.abs(polynomial(numbers, z) - w) / (1 + (z * z) / 4)))
  const errors = [
    standardError(parts.map((part) => meanOf(part, ballCount))),
    standardError(parts.map((part) => quantileOf(chanceOf(part, ballCount), 0.95))),
  ].map((error) => error.toExponential(1))
  return `  [${ballCount}, ${numbers.join(', ')}], // mean ±${errors.join(', 95 % ±')}, chance off ${ofChance.toExponential(1)}, quantile ${ofQuantile.toExponential(1)} (1 + z²/4)`
}

/** Above this count a trial costs more, and there is a row for some counts only. */
const EACH_COUNT_TO = 32

/** Three balls find a circle of their own: 2 / √3 of a standard normal number. */
const drawnCounts = PLAY_LOSS.flatMap(([count]) => (count === 3 ? [] : [count]))
const asked = process.argv.slice(2).map(Number)
for (const ballCount of asked.length > 0 ? asked : drawnCounts) {
  console.log(row(ballCount, ballCount <= EACH_COUNT_TO ? 4_000_000 : 3_000_000))
}
