/*
 * Makes the rows of `shared/statistics/play-loss.ts`: how much play random balls take, in standard deviations of one
 * ball, by the linear program at equal spacing. Takes some minutes.
 *
 *   node tests/bench/play-of-random-balls.ts [counts, all rows by default]
 *
 * W = 2 max Σ λᵢ zᵢ falls into 2 z̄, which is normal with variance 4 / Z, and V = 2 max Σ λᵢ (zᵢ − z̄), independent of
 * it. Trials draw V alone; the distribution of W is the mean over V of Φ((w − V) √Z / 2), which is smoother than counts
 * are. The quantiles are fitted by a polynomial of the standard normal ones. Beside each row stand the standard errors
 * of mean and 95 % quantile from eight parts of the trials, and the most by which the fitted chance is off that of the
 * trials.
 */
import { emptyCircle, halfPlanes, inscribeCircle } from '#shared/geometry/inscribed-circle.ts'
import { leastSquares } from '#shared/statistics/least-squares.ts'
import { normalCdf, normalDensity, normalQuantile } from '#shared/statistics/normal.ts'
import { PLAY_LOSS } from '#shared/statistics/play-loss.ts'
import { drawWords, randomStream } from '#shared/statistics/random.ts'
import { summary } from '#shared/statistics/summary.ts'

const PARTS = 8
const BINS_A_UNIT = 256
const BINS = 16 * BINS_A_UNIT
const DEGREE = 4
/** Normal quantiles between which the polynomial is fitted: chances of 1e-5 at either end. */
const REACH = 4.25
const NODES = 101

interface Drawn {
  readonly counts: Float64Array
  readonly sums: Float64Array
}

/** V of so many rings of balls, by bins, with what the bins hold in all. */
function drawLosses(ballCount: number, trials: number, stream: number): Drawn {
  const planes = halfPlanes(ballCount)
  for (let ball = 0; ball < ballCount; ball++) {
    planes.normalX[ball] = Math.cos((2 * Math.PI * ball) / ballCount)
    planes.normalY[ball] = Math.sin((2 * Math.PI * ball) / ballCount)
  }
  const circle = emptyCircle()
  const random = randomStream(17, stream)
  const drawn = { counts: new Float64Array(BINS), sums: new Float64Array(BINS) }
  for (let trial = 0; trial < trials; trial++) {
    const words = drawWords(random, ballCount)
    let mean = 0
    for (let ball = 0; ball < ballCount; ball++) {
      const size = normalQuantile(((words[ball] ?? 0) + 0.5) / 2 ** 32)
      planes.reach[ball] = -size
      mean += size / ballCount
    }
    inscribeCircle(planes, circle, 1e-13)
    const loss = Math.max(0, -2 * (circle.radius + mean))
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

/** P(W ≤ w) of what was drawn. */
function chanceOf({ counts, sums }: Drawn, ballCount: number): (w: number) => number {
  const bins = [...counts.entries()].filter(([, count]) => count > 0)
  const total = bins.reduce((sum, [, count]) => sum + count, 0)
  return (w) =>
    bins.reduce((sum, [bin, count]) => {
      const loss = (sums[bin] ?? 0) / count
      return sum + count * normalCdf(((w - loss) * Math.sqrt(ballCount)) / 2)
    }, 0) / total
}

function quantileOf(chance: (w: number) => number, probability: number): number {
  let [low, high] = [-20, 20]
  for (let round = 0; round < 50; round++) {
    const middle = (low + high) / 2
    if (chance(middle) < probability) low = middle
    else high = middle
  }
  return (low + high) / 2
}

function meanOf({ counts, sums }: Drawn): number {
  return sums.reduce((sum, of) => sum + of, 0) / counts.reduce((sum, of) => sum + of, 0)
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
  const coefficients = fitted(points)
  const off = Math.max(...nodes.map((z) => Math.abs(chance(polynomial(coefficients, z)) - normalCdf(z))))
  const errors = [
    standardError(parts.map(meanOf)),
    standardError(parts.map((part) => quantileOf(chanceOf(part, ballCount), 0.95))),
  ]
  const numbers = coefficients.map((coefficient) => Number(coefficient.toFixed(6)))
  return `  [${ballCount}, ${numbers.join(', ')}], // mean ±${errors.map((error) => error.toExponential(1)).join(', 95 % ±')}, chance off ${off.toExponential(1)}`
}

/** Above this count a trial costs more, and there is a row for some counts only. */
const EACH_COUNT_TO = 32

const asked = process.argv.slice(2).map(Number)
for (const ballCount of asked.length > 0 ? asked : PLAY_LOSS.map(([count]) => count)) {
  console.log(row(ballCount, ballCount <= EACH_COUNT_TO ? 2_000_000 : 800_000))
}
