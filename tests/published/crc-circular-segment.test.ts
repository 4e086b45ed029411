// CRC Concise Encyclopedia of Mathematics, "Segment" (archive.lib.msu.edu/crcmath/math/math/s/s141.htm): chord
// c = 2 √(h (2 R − h)) (9), angle θ = 2 asin(c / 2R) (10), area A = ½ R² (θ − sin θ) (12). Its other forms, and the area,
// are roads to the groove's width that the core does not take. Tolerance: what doubles hold, or the quadrature's step.
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { depthForHalfWidth, grooveWidth } from '#shared/geometry/groove.ts'
import { mm } from '#shared/units/length.ts'
import { between, magnitude } from '#tests/support/inputs.ts'

const section = fc.tuple(magnitude(0.01, 1000), between(0.001, 0.999))

test('CRC (6), (7): chord from the angle, c = 2 R sin(θ/2) = 2 d tan(θ/2) with cos(θ/2) = d / R', () => {
  fc.assert(
    fc.property(section, ([radius, share]) => {
      const depth = radius * share
      const half = Math.acos((radius - depth) / radius)
      const width = grooveWidth({ radius: mm(radius), depth: mm(depth) })
      expect(width).toBeWithin(1e-12 * radius, 2 * radius * Math.sin(half))
      expect(width).toBeWithin(1e-12 * radius, 2 * (radius - depth) * Math.tan(half))
    }),
  )
})

test('CRC (12): the groove’s widths, summed over its depth, are the area of the segment', () => {
  fc.assert(
    fc.property(section, ([radius, share]) => {
      const depth = radius * share
      const STEPS = 2000
      // midpoints set closer at the bottom, where the width grows at once
      const area = Array.from({ length: STEPS }, (_, i) => {
        const [from, to] = [(i / STEPS) ** 2 * depth, ((i + 1) / STEPS) ** 2 * depth]
        return grooveWidth({ radius: mm(radius), depth: mm((from + to) / 2) }) * (to - from)
      }).reduce((sum, strip) => sum + strip, 0)
      const angle = 2 * Math.acos((radius - depth) / radius)
      expect(area).toBeWithin(1e-5 * radius * depth, (radius * radius * (angle - Math.sin(angle))) / 2)
    }),
    { numRuns: 40 },
  )
})

test('CRC (5): depth from the chord, h = R − ½ √(4 R² − c²)', () => {
  fc.assert(
    fc.property(section, ([radius, share]) => {
      const chord = 2 * radius * share
      const depth = radius - Math.sqrt(4 * radius * radius - chord * chord) / 2
      expect(depthForHalfWidth(mm(chord / 2), mm(radius))).toBeWithin(1e-12 * radius, depth)
    }),
  )
})
