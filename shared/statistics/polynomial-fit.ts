import { itemAt } from '#shared/numbers/item-at.ts'
import { requireWhole } from '#shared/precondition.ts'

/** A polynomial through scattered points, and how sure it is. */
export interface PolynomialFit {
  readonly at: (x: number) => number
  /** Standard error of the polynomial itself at a place: grows beyond the points. */
  readonly errorAt: (x: number) => number
  /** Standard error of its slope there. */
  readonly slopeErrorAt: (x: number) => number
  /** Differences of the points from the fit. */
  readonly residuals: Float64Array
  /** Variance of these, over their degrees of freedom. */
  readonly residualVariance: number
}

/** p_(k+1)(x) = (x − middle) p_k(x) − carry p_(k−1)(x), each orthogonal to all others over the points. */
interface Step {
  readonly middle: number
  readonly carry: number
  readonly coefficient: number
  /** Σ p_k² over the points; 0 where there are fewer places than that takes. */
  readonly square: number
  /** p_k at each point. */
  readonly values: Float64Array
}

/**
 * Least squares by polynomials that are orthogonal over the points themselves (G. E. Forsythe, Journal of the Society for
 * Industrial and Applied Mathematics 5 (1957)): each coefficient is a projection. The errors are those of points that
 * scatter more in one place than in another (H. White, Econometrica 48 (1980)).
 *
 * @param degree whole; two points more than that, or more
 */
export function polynomialFit(xs: Float64Array, ys: Float64Array, degree: number): PolynomialFit {
  requireWhole('number of points', xs.length, degree + 2)
  const residuals = ys.slice()
  const steps: Step[] = []
  for (let k = 0; k <= degree; k++) {
    const step = nextStep(xs, residuals, steps.at(-1), steps.at(-2))
    steps.push(step)
    for (let point = 0; point < xs.length; point++) {
      residuals[point] = (residuals[point] ?? Number.NaN) - step.coefficient * (step.values[point] ?? Number.NaN)
    }
  }
  const left = residuals.reduce((sum, residual) => sum + residual * residual, 0)
  const residualVariance = left / (xs.length - degree - 1)
  const covariances = covariancesOf(steps, residuals)
  return {
    at: (x) => valuesAt(steps, x).values.reduce((sum, value, k) => sum + value * itemAt(steps, k).coefficient, 0),
    errorAt: (x) => errorOf(covariances, valuesAt(steps, x).values),
    slopeErrorAt: (x) => errorOf(covariances, valuesAt(steps, x).slopes),
    residuals,
    residualVariance,
  }
}

function nextStep(xs: Float64Array, left: Float64Array, last: Step | undefined, before: Step | undefined): Step {
  const values = new Float64Array(xs.length).fill(1)
  if (last !== undefined) climb(xs, last, before?.values ?? new Float64Array(xs.length), values)
  let square = 0
  let moment = 0
  let product = 0
  for (let point = 0; point < xs.length; point++) {
    const value = values[point] ?? Number.NaN
    square += value * value
    moment += (xs[point] ?? Number.NaN) * value * value
    product += (left[point] ?? Number.NaN) * value
  }
  const per = square > 0 ? 1 / square : 0
  const carry = last !== undefined && last.square > 0 ? square / last.square : 0
  return { middle: moment * per, carry, coefficient: product * per, square, values }
}

/** The next polynomial's values from those of the last two. */
function climb(xs: Float64Array, { middle, carry, values: own }: Step, before: Float64Array, out: Float64Array): void {
  for (let point = 0; point < xs.length; point++) {
    out[point] =
      ((xs[point] ?? Number.NaN) - middle) * (own[point] ?? Number.NaN) - carry * (before[point] ?? Number.NaN)
  }
}

/** Covariances of the coefficients: Σ p_k p_l e² over both squares, e the difference of a point. */
function covariancesOf(steps: readonly Step[], residuals: Float64Array): readonly (readonly number[])[] {
  const squares = residuals.map((residual) => residual * residual)
  return steps.map((one) =>
    steps.map((other) => {
      let sum = 0
      for (let point = 0; point < squares.length; point++) {
        sum += (one.values[point] ?? Number.NaN) * (other.values[point] ?? Number.NaN) * (squares[point] ?? Number.NaN)
      }
      return one.square > 0 && other.square > 0 ? sum / (one.square * other.square) : 0
    }),
  )
}

function errorOf(covariances: readonly (readonly number[])[], weights: readonly number[]): number {
  const variance = covariances.reduce(
    (sum, row, k) =>
      sum + (weights[k] ?? Number.NaN) * row.reduce((inner, each, l) => inner + each * (weights[l] ?? Number.NaN), 0),
    0,
  )
  return Math.sqrt(Math.max(0, variance))
}

/** Each p_k and its slope at a place, up the recurrence. */
function valuesAt(steps: readonly Step[], x: number) {
  const values: number[] = []
  const slopes: number[] = []
  let [before, own, slopeBefore, slope] = [0, 1, 0, 0]
  for (const { middle, carry } of steps) {
    values.push(own)
    slopes.push(slope)
    const next = (x - middle) * own - carry * before
    const nextSlope = own + (x - middle) * slope - carry * slopeBefore
    before = own
    own = next
    slopeBefore = slope
    slope = nextSlope
  }
  return { values, slopes }
}
