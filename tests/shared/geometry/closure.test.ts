import fc from 'fast-check'
import { expect, test } from 'vitest'
import { IN_A_RING, ON_A_CIRCLE } from '#shared/geometry/closure.ts'
import { mm } from '#shared/units/length.ts'
import { ballCount, between } from '#tests/support/inputs.ts'

const lots = ballCount.chain((count) => fc.array(between(0.97, 1.03), { minLength: count, maxLength: count }))

test.each([
  ['in a ring', IN_A_RING],
  ['on a circle', ON_A_CIRCLE],
] as const)('%s: a ball that grows makes the gap smaller', (_, closure) => {
  fc.assert(
    fc.property(lots, fc.nat(), between(0.001, 0.02), (balls, which, more) => {
      const radius = closure.radiusFor(balls, mm(0.2))
      const grown = balls.map((ball, index) => (index === which % balls.length ? ball + more : ball))
      expect(closure.gap(radius, grown)).toBeLessThan(0.2)
    }),
  )
})

test.each([
  ['in a ring', IN_A_RING],
  ['on a circle', ON_A_CIRCLE],
] as const)('%s: from the tightest radius on, no gap opens faster than the steepest', (_, closure) => {
  fc.assert(
    fc.property(lots, between(0, 0.3), between(0, 0.1), (balls, gap, more) => {
      const [near, far] = [closure.radiusFor(balls, mm(gap)), closure.radiusFor(balls, mm(gap + 0.01 + more))]
      const sizes = { ballCount: balls.length, smallest: Math.min(...balls), largest: Math.max(...balls) }
      expect((0.01 + more) / (far - near)).toBeLessThanOrEqual(closure.steepest(near, sizes) * (1 + 1e-6))
    }),
  )
})

test.each([
  ['in a ring', IN_A_RING, 16],
  ['on a circle', ON_A_CIRCLE, 8],
] as const)('%s: two of the largest ball just fit side by side', (_, closure, radius) => {
  expect(closure.largestBall(mm(radius))).toBe(16)
  expect(() => closure.gap(mm(radius), [16, 16, 16])).not.toThrow()
  expect(() => closure.gap(mm(radius), [16.01, 16.01, 16.01])).toThrow(RangeError)
})
