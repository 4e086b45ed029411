import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { depthForHalfWidth, grooveHalfWidth, grooveWidth } from '#shared/geometry/groove.ts'
import { mm } from '#shared/units/length.ts'
import { between, magnitude } from '#tests/support/inputs.ts'

const radius = magnitude(0.001, 10_000)
const part = between(1e-6, 1)
const groove = (r: number, share: number) => ({ radius: mm(r), depth: mm(r * share) })

describe('the width of a groove', () => {
  test('there and back, depth from width', () => {
    fc.assert(
      fc.property(radius, part, (r, share) => {
        const cut = groove(r, share)
        // at a half circle the width hardly tells the depth any more: a rounding there is a rounding's root here
        expect(depthForHalfWidth(grooveHalfWidth(cut), cut.radius)).toBeWithin(3e-8 * r, cut.depth)
        if (share < 0.99)
          expect(depthForHalfWidth(grooveHalfWidth(cut), cut.radius)).toBeWithin(1e-13 * cut.depth, cut.depth)
      }),
    )
  })

  test('its edges lie on the arc, a radius from its centre', () => {
    fc.assert(
      fc.property(radius, part, (r, share) => {
        const cut = groove(r, share)
        expect(Math.hypot(grooveHalfWidth(cut), r - cut.depth)).toBeWithin(1e-15 * 4 * r, r)
      }),
    )
  })

  test('a half circle is a diameter wide', () => {
    expect(grooveWidth(groove(8.48, 1))).toBe(16.96)
  })

  test('a deeper groove and a larger arc are wider', () => {
    fc.assert(
      fc.property(radius, between(0.01, 0.98), (r, share) => {
        const width = grooveWidth(groove(r, share))
        expect(grooveWidth(groove(r, share * 1.01))).toBeGreaterThan(width)
        expect(grooveWidth({ radius: mm(r * 1.01), depth: mm(r * share) })).toBeGreaterThan(width)
      }),
    )
  })

  test('scales', () => {
    fc.assert(
      fc.property(radius, part, magnitude(1e-3, 1e3), (r, share, scale) => {
        const { radius: arc, depth } = groove(r, share)
        const scaled = { radius: mm(arc * scale), depth: mm(Math.min(depth * scale, arc * scale)) }
        expect(grooveWidth(scaled) / scale).toBeWithin(1e-14 * r, grooveWidth({ radius: arc, depth }))
      }),
    )
  })
})

describe('refused, as a bug of ours', () => {
  test.each([
    [8, 0],
    [8, -1],
    [8, 8.001],
    [8, Number.NaN],
    [0, 1],
    [-8, 1],
    [Number.NaN, 1],
    [Number.POSITIVE_INFINITY, 1],
  ])('a radius of %s cut %s deep', (r, depth) => {
    expect(() => grooveHalfWidth({ radius: mm(r), depth: mm(depth) })).toThrow(RangeError)
  })

  test.each([0, -1, 8.1, Number.NaN])('half a width of %s on a radius of 8', (halfWidth) => {
    expect(() => depthForHalfWidth(mm(halfWidth), mm(8))).toThrow(RangeError)
  })
})
