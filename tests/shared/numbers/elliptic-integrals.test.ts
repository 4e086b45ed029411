import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { completeElliptic } from '#shared/numbers/elliptic-integrals.ts'
import { integral } from '#shared/numbers/quadrature.ts'
import { between } from '#tests/support/inputs.ts'

const UNIT = Number.EPSILON

test('a circle: K = E = π/2, and (K − E)/e² = π/4', () => {
  expect(completeElliptic(1)).toEqual({ first: Math.PI / 2, second: Math.PI / 2, difference: Math.PI / 4 })
})

test('Legendre: E K′ + E′ K − K K′ = π/2 at every modulus', () => {
  const angle = between(1e-6, Math.PI / 2 - 1e-6)
  fc.assert(
    fc.property(angle, (at) => {
      const [one, other] = [completeElliptic(Math.cos(at)), completeElliptic(Math.sin(at))]
      const sum = one.second * other.first + other.second * one.first - one.first * other.first
      expect(sum).toBeWithin(64 * UNIT * one.first * other.first, Math.PI / 2)
    }),
  )
})

test('Landen: K of a modulus is that of the means of its axes, K(k′) = K(2√k′ / (1 + k′)) · 2 / (1 + k′)', () => {
  fc.assert(
    fc.property(between(1e-9, 1), (axis) => {
      const next = Math.min(1, (2 * Math.sqrt(axis)) / (1 + axis))
      const landen = (completeElliptic(next).first * 2) / (1 + axis)
      expect(completeElliptic(axis).first / landen).toBeWithin(8 * UNIT, 1)
    }),
  )
})

test('the integrals themselves, by quadrature over the quarter turn', () => {
  for (const axis of [1, 0.999, 0.8, 0.5, 0.1, 0.02]) {
    const root = (angle: number) => Math.hypot(Math.cos(angle), axis * Math.sin(angle))
    const { first, second, difference } = completeElliptic(axis)
    expect(integral((angle) => 1 / root(angle), 0, Math.PI / 2)).toBeWithin(1e-11, first)
    expect(integral(root, 0, Math.PI / 2)).toBeWithin(1e-12, second)
    expect(integral((angle) => Math.sin(angle) ** 2 / root(angle), 0, Math.PI / 2)).toBeWithin(1e-11, difference)
  }
})

describe('the ends', () => {
  test('nearly a circle: (K − E)/e² follows its series, π/4 (1 + 3/8 e²), to the last digits', () => {
    for (const flat of [1e-15, 1e-12, 1e-9]) {
      const squared = flat * (2 - flat)
      expect(completeElliptic(1 - flat).difference).toBeWithin(4 * UNIT, (Math.PI / 4) * (1 + (3 / 8) * squared))
    }
  })

  test('a sliver: K nears ln(4/k′), E nears 1', () => {
    for (const axis of [1e-6, 1e-12, 1e-100, 1e-300]) {
      const { first, second } = completeElliptic(axis)
      expect(first / Math.log(4 / axis)).toBeWithin(axis * 10 + 16 * UNIT, 1)
      expect(second).toBeWithin(axis + 4 * UNIT * first, 1)
    }
  })

  test.each([0, -1, 1.0001, Number.NaN, Number.POSITIVE_INFINITY])('an axis ratio of %s is no ellipse', (axis) => {
    expect(() => completeElliptic(axis)).toThrow(RangeError)
  })
})
