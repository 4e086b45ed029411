import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  LINE_CONTACT,
  loadWhenBallCarries,
  POINT_CONTACT,
  radialLoadIntegral,
  type Sharing,
  sharedByBalls,
  sharedByMany,
} from '#shared/contact/load-distribution.ts'
import { mm } from '#shared/units/length.ts'
import { between, magnitude } from '#tests/support/inputs.ts'

const sharing: fc.Arbitrary<Sharing> = fc.record({
  count: fc.integer({ min: 3, max: 200 }),
  exponent: fc.constantFrom(POINT_CONTACT, LINE_CONTACT),
  stiffness: magnitude(1e-3, 1e9),
  clearance: fc.oneof(fc.constant(mm(0)), magnitude(1e-9, 1e4).map(mm)),
})
const load = magnitude(1e-6, 1e6)

test('the forces of the balls hold the load, and no ball pulls', () => {
  fc.assert(
    fc.property(load, sharing, between(0, 1), (force, how, phase) => {
      const { each, most } = sharedByBalls(force, how, phase)
      const sum = each.reduce((so, one, ball) => so + one * Math.cos((2 * Math.PI * (ball + phase)) / how.count), 0)
      expect(sum / force).toBeWithin(1e-9, 1)
      expect(Math.min(...each)).toBeGreaterThanOrEqual(0)
      expect(Math.max(...each)).toBe(most)
    }),
  )
})

test('by the integral: the displacement gives the ε at which Z K (δ − Gr/2)ⁿ Jr(ε) is the load', () => {
  fc.assert(
    fc.property(load, sharing, (force, how) => {
      const { loadZone, most } = sharedByMany(force, how)
      expect((how.count * most * radialLoadIntegral(loadZone, how.exponent)) / force).toBeWithin(1e-9, 1)
      expect(loadZone).toBeLessThanOrEqual(0.5)
    }),
  )
})

test('balls by the hundred share as the integral says', () => {
  for (const clearance of [0, 0.01, 0.1, 1].map(mm)) {
    const how = { count: 2000, exponent: POINT_CONTACT, stiffness: 1e3, clearance }
    const [one, many] = [sharedByBalls(5000, how, 0.3), sharedByMany(5000, how)]
    expect(one.displacement / many.displacement).toBeWithin(1e-5, 1)
  }
})

describe('order', () => {
  test('more play, and the most loaded ball carries more; never more than all of it', () => {
    fc.assert(
      fc.property(load, sharing, magnitude(1, 100), (force, how, times) => {
        const wider = { ...how, clearance: mm(how.clearance * times) }
        const [before, after] = [sharedByBalls(force, how, 0).most, sharedByBalls(force, wider, 0).most]
        expect(after).toBeGreaterThanOrEqual(before * (1 - 1e-9))
        expect(after).toBeLessThanOrEqual(force * (1 + 1e-9))
      }),
    )
  })

  test('a ball right under the load carries the most, and there and back is the same load', () => {
    fc.assert(
      fc.property(load, sharing, (force, how) => {
        const { each, most } = sharedByBalls(force, how, 0)
        expect(each[0]).toBe(most)
        expect(loadWhenBallCarries(most, how) / force).toBeWithin(1e-9, 1)
      }),
    )
  })
})

test.each([
  [0, {}],
  [1, { count: 0 }],
  [1, { stiffness: 0 }],
  [1, { clearance: mm(-1) }],
  [1, { exponent: 3 }],
])('a load of %s shared as by %o is misuse', (force, change) => {
  const how = { count: 10, exponent: POINT_CONTACT, stiffness: 1, clearance: mm(0), ...change }
  expect(() => sharedByBalls(force, how, 0)).toThrow(RangeError)
  expect(() => sharedByMany(force, how)).toThrow(RangeError)
})
