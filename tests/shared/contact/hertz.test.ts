import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { contactForm, contactStiffness, contactUnder, loadForSemiMinor } from '#shared/contact/hertz.ts'
import { integral } from '#shared/numbers/quadrature.ts'
import { magnitude } from '#tests/support/inputs.ts'

const curvature = magnitude(1e-4, 1e3)
const modulus = magnitude(1, 1e6)
const load = magnitude(1e-6, 1e6)

test('equal curvatures: a³ = 3 F R / 4E*, δ = a²/R, p₀ = 3F / 2πa²', () => {
  fc.assert(
    fc.property(curvature, modulus, load, (rho, stiff, force) => {
      const { semiMajor, semiMinor, approach, maxPressure } = contactUnder(contactForm([rho, rho]), stiff, force)
      const radius = Math.cbrt((3 * force) / (4 * stiff * rho))
      expect(semiMajor / radius).toBeWithin(1e-14, 1)
      expect(semiMinor).toBe(semiMajor)
      expect(approach / (radius * radius * rho)).toBeWithin(1e-14, 1)
      expect(maxPressure / ((3 * force) / (2 * Math.PI * radius * radius))).toBeWithin(1e-14, 1)
    }),
  )
})

/*
 * A second road: under the pressure p₀ √(1 − x²/a² − y²/b²) the surfaces must come together by δ − A x² − B y². Boussinesq:
 * a point sinks by the pressure summed over the straight lines through it, u = 1/(π E*) ∫ dφ ∫ p ds. Along such a line the
 * pressure is half an ellipse, h high and 2h/√q long, so that its share is π/2 h² / √q.
 */
test('the surfaces meet at the middle and at the ends of both axes, by Boussinesq along the rays', () => {
  fc.assert(
    fc.property(magnitude(1, 1e4), (ratio) => {
      const form = contactForm([ratio, 1])
      const { semiMajor: a, semiMinor: b, maxPressure, approach } = contactUnder(form, 1, 1)
      const sunk = (x: number, y: number): number => {
        const line = (angle: number): number => {
          const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
          const square = (cos * cos) / (a * a) + (sin * sin) / (b * b)
          const linear = (x * cos) / (a * a) + (y * sin) / (b * b)
          const height = 1 - (x * x) / (a * a) - (y * y) / (b * b) + (linear * linear) / square
          return height / Math.sqrt(square)
        }
        return (maxPressure / 2) * (integral(line, 0, Math.PI / 2) + integral(line, Math.PI / 2, Math.PI))
      }
      expect(sunk(0, 0) / approach).toBeWithin(1e-6, 1)
      expect(sunk(a, 0) / (approach - (a * a) / 2)).toBeWithin(1e-5, 1)
      expect(sunk(0, b) / (approach - (ratio * b * b) / 2)).toBeWithin(1e-5, 1)
    }),
    { numRuns: 40 },
  )
})

describe('a contact scales', () => {
  test('load as the cube of the pressure and of the axes, approach as its 2/3rd power; the planes may change places', () => {
    fc.assert(
      fc.property(curvature, curvature, modulus, load, (one, other, stiff, force) => {
        const form = contactForm([one, other])
        expect(contactForm([other, one])).toEqual(form)
        const contact = contactUnder(form, stiff, force)
        expect(contactUnder(form, stiff, 8 * force).maxPressure / contact.maxPressure).toBeWithin(1e-12, 2)
        expect(loadForSemiMinor(form, stiff, contact.semiMinor) / force).toBeWithin(1e-12, 1)
        const { approach } = contact
        expect((contactStiffness(form, stiff) * approach * Math.sqrt(approach)) / force).toBeWithin(1e-12, 1)
        expect(contact.semiMinor).toBeLessThanOrEqual(contact.semiMajor)
      }),
    )
  })

  test('a thinner hollow makes a longer ellipse', () => {
    const ratios = [1, 1 + 1e-12, 1 + 1e-6, 1.01, 2, 100, 1e6, 1e12]
    const forms = ratios.map((ratio) => 1 / contactForm([1, 1 / ratio]).axisRatio)
    for (const [place, k] of forms.entries()) if (place > 0) expect(k).toBeGreaterThan(forms[place - 1] ?? Infinity)
  })
})

test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('a curvature of %s touches in no point', (rho) => {
  expect(() => contactForm([1, rho])).toThrow(RangeError)
})
