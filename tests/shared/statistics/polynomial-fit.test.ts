import { describe, expect, test } from 'vitest'
import { leastSquares } from '#shared/statistics/least-squares.ts'
import { polynomialFit } from '#shared/statistics/polynomial-fit.ts'
import { uniforms } from '#tests/support/chance.ts'

const XS = Float64Array.from({ length: 200 }, (_, point) => Math.sin(point * 1.7) * 3 + point / 100)

test('a polynomial is found again, and its slope is sure', () => {
  const polynomial = (x: number): number => 1 - 2 * x + 0.5 * x * x * x - 0.02 * x ** 5
  const fit = polynomialFit(XS, XS.map(polynomial), 5)
  for (const x of [-4, -1, 0, 0.3, 2, 6]) {
    expect(fit.at(x)).toBeWithin(1e-10, polynomial(x))
    expect(fit.errorAt(x)).toBeLessThan(1e-10)
    expect(fit.slopeErrorAt(x)).toBeLessThan(1e-10)
  }
  expect(fit.residualVariance).toBeLessThan(1e-24)
})

describe('scattered points: what least squares by QR says, which NIST certifies', () => {
  const uniform = uniforms(3)
  const ys = XS.map((x) => Math.exp(x / 3) + uniform() - 0.5)
  const powers = (x: number): number[] => [1, x, x * x, x * x * x]
  const fit = polynomialFit(XS, ys, 3)

  test('values, residuals and their variance', () => {
    const { coefficients, residualDeviation } = leastSquares(Array.from(XS, powers), Array.from(ys))
    const value = (x: number) => powers(x).reduce((sum, power, k) => sum + power * (coefficients[k] ?? 0), 0)
    for (const x of [-3, 0, 1.5, 4]) expect(fit.at(x)).toBeWithin(1e-11, value(x))
    XS.forEach((x, point) => {
      expect(fit.residuals[point]).toBeWithin(1e-11, (ys[point] ?? 0) - value(x))
    })
    expect(Math.sqrt(fit.residualVariance)).toBeWithin(1e-12, residualDeviation)
  })

  test('the errors of value and slope at a place: those of the first two coefficients about that place, about', () => {
    for (const place of [-2, 0, 3]) {
      const about = leastSquares(
        Array.from(XS, (x) => powers(x - place)),
        Array.from(ys),
      )
      // Two hundred points that scatter alike: by what each is off it is nearly what it is by their mean square.
      expect(fit.errorAt(place) / (about.standardErrors[0] ?? 0)).toBeWithin(0.25, 1)
      expect(fit.slopeErrorAt(place) / (about.standardErrors[1] ?? 0)).toBeWithin(0.25, 1)
    }
  })
})

test('points that scatter more at one end: the errors are what many such samples scatter by', () => {
  const uniform = uniforms(8)
  const fits = Array.from({ length: 400 }, () =>
    polynomialFit(
      XS,
      XS.map((x) => Math.exp(x) * (uniform() - 0.5)),
      2,
    ),
  )
  for (const place of [-2, 1, 4]) {
    const scatter = Math.sqrt(fits.reduce((sum, fit) => sum + fit.at(place) ** 2, 0) / fits.length)
    const claimed = Math.sqrt(fits.reduce((sum, fit) => sum + fit.errorAt(place) ** 2, 0) / fits.length)
    expect(claimed / scatter).toBeWithin(0.15, 1)
  }
})

test('points all in one place have a mean and no more', () => {
  const fit = polynomialFit(
    new Float64Array(10).fill(2),
    Float64Array.from({ length: 10 }, (_, point) => point),
    3,
  )
  expect(fit.at(2)).toBe(4.5)
})

test('too few points', () => {
  expect(() => polynomialFit(new Float64Array(4), new Float64Array(4), 3)).toThrow(RangeError)
})
