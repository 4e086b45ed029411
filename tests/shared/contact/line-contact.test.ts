import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { contactForm, contactUnder } from '#shared/contact/hertz.ts'
import { type Line, lineApproach, lineContactUnder, loadForHalfWidth } from '#shared/contact/line-contact.ts'
import { dentUnder, loadForDent } from '#shared/contact/wood-dent.ts'
import { integral } from '#shared/numbers/quadrature.ts'
import { mm } from '#shared/units/length.ts'
import { magnitude } from '#tests/support/inputs.ts'

const line: fc.Arbitrary<Line> = fc.record({
  modulus: magnitude(100, 1e5),
  rolling: magnitude(0.01, 1),
  length: magnitude(1, 200),
})

test('an ellipse drawn out without end has the pressure of a line of the same width', () => {
  const [rolling, modulus] = [0.2, 1200]
  const ellipse = contactUnder(contactForm([rolling, rolling * 1e-9]), modulus, 50)
  // In its middle the ellipse carries π b p₀ / 2 for each unit of length, as every part of the line does.
  const load = (Math.PI * ellipse.semiMinor * ellipse.maxPressure) / 2
  const { halfWidth, maxPressure } = lineContactUnder({ modulus, rolling, length: 1 }, load)
  expect(halfWidth).toBeWithin(1e-6 * halfWidth, ellipse.semiMinor)
  expect(maxPressure).toBeWithin(1e-6 * maxPressure, ellipse.maxPressure)
})

test('there and back by the width', () => {
  fc.assert(
    fc.property(line, magnitude(1e-3, 1e5), (on, load) => {
      const { halfWidth } = lineContactUnder(on, load)
      expect(loadForHalfWidth(on, halfWidth)).toBeWithin(1e-9 * load, load)
    }),
  )
})

describe('approach', () => {
  const steel = { stiffness: 206_000, poissonsRatio: 0.3 }

  // Palmgren's δ = 3.84 × 10⁻⁵ Q^0.9 / L^0.8 for a steel roller on one ring (Harris, Rolling Bearing Analysis; from memory):
  // measured, and whatever the curvature and the thickness of the ring.
  test('of a steel roller on a steel ring it is near the usual formula, and grows with about its power', () => {
    const length = 15
    const on = {
      line: { modulus: 206_000 / 0.91 / 2, rolling: 1 / 7.5, length },
      roller: { ...steel, radius: 7.5 },
      wall: { ...steel, thickness: 15 },
    }
    const usual = (load: number) => (3.84e-5 * load ** 0.9) / length ** 0.8
    for (const load of [1000, 5000, 20_000]) {
      expect(lineApproach(on, load) / usual(load)).toBeWithin(0.15, 1)
      const power = Math.log(lineApproach(on, 1.01 * load) / lineApproach(on, load)) / Math.log(1.01)
      expect(power).toBeWithin(0.03, 0.9)
    }
  })

  // McEwen's stresses on the middle line under a line contact (Johnson, Contact Mechanics, 4.45; from memory), in plane strain.
  test('in the wall it is the strain under the touch, summed up through the thickness', () => {
    fc.assert(
      fc.property(line, magnitude(1, 1e4), magnitude(0.05, 0.49), magnitude(100, 1000), (on, load, ratio, deep) => {
        const { halfWidth: b, maxPressure } = lineContactUnder(on, load)
        const wall = { stiffness: 800, poissonsRatio: ratio, thickness: deep * b }
        const strain = (depth: number): number => {
          const root = Math.sqrt(b * b + depth * depth)
          const along = -maxPressure * ((b * b + 2 * depth * depth) / (b * root) - (2 * depth) / b)
          const down = (-maxPressure * b) / root
          return ((1 - ratio * ratio) / wall.stiffness) * (down - (ratio / (1 - ratio)) * along)
        }
        // by octaves: all of it is near the surface
        const ends = [0, ...Array.from({ length: 12 }, (_, octave) => wall.thickness / 2 ** (11 - octave))]
        const shorter = ends.slice(1).reduce((sum, end, place) => sum - integral(strain, ends[place] ?? 0, end), 0)
        const rigid = { stiffness: 1e15, poissonsRatio: 0.3, radius: 1 / on.rolling }
        expect(lineApproach({ line: on, roller: rigid, wall }, load) / shorter).toBeWithin(1e-4, 1)
      }),
    )
  })

  test('it grows with the load, whatever the bodies', () => {
    fc.assert(
      fc.property(line, magnitude(1e-3, 1e6), magnitude(0.1, 50), (on, load, thickness) => {
        const bodies = { line: on, roller: { ...steel, radius: 1 / on.rolling }, wall: { ...steel, thickness } }
        const [less, more] = [lineApproach(bodies, load), lineApproach(bodies, 1.1 * load)]
        expect(less).toBeGreaterThan(0)
        expect(more).toBeGreaterThan(less)
      }),
    )
  })
})

describe('dents of rollers', () => {
  // Koczan, Karwat, Kozakiewicz, Journal of Wood Science 67 (2021): F ~ w^(3/2) for cylinders.
  test('the force goes with the 3/2 power of the mark: dents with its 3/4th, where nothing springs back', () => {
    const dented = { surface: { modulus: 1e12, rolling: 0.1, length: 20 }, hardness: 60 }
    const [one, two] = [loadForDent(dented, mm(0.1)), loadForDent(dented, mm(0.2))]
    expect(two / one).toBeWithin(1e-3, 2 ** 0.75)
  })

  test('there and back', () => {
    fc.assert(
      fc.property(line, magnitude(5, 100), magnitude(1e-5, 0.05), (surface, hardness, fraction) => {
        const dented = { surface, hardness }
        const depth = mm((2 * fraction) / surface.rolling)
        const back = dentUnder(dented, loadForDent(dented, depth) * (1 - 1e-12))
        // Where the contact stays elastic to the last, the load is that which sinks the roller in to its middle.
        if (back !== undefined && back > 0.999 * depth) expect(back).toBeWithin(1e-6 * depth, depth)
      }),
    )
  })
})
