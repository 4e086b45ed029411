import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mm } from '#shared/units/length.ts'
import { segmentedGrowth } from '#shared/wood/segmented-ring.ts'
import { growthByElements } from '#tests/support/elastic-ring.ts'
import { between } from '#tests/support/inputs.ts'

const ring = (innerRadius: number, outerRadius: number, acrossOverAlong = 0.065) => ({
  innerRadius: mm(innerRadius),
  outerRadius: mm(outerRadius),
  acrossOverAlong,
})
/** Sugar maple, flat-sawn, over 4 % of moisture (Wood Handbook, Table 13-5). */
const MAPLE = { round: 0.0002, across: 4 * 0.00353 }

test('the same as finite elements say, whatever the ring, and whatever Poisson ratio they take', () => {
  const numbers = [between(10, 200), between(1.02, 4), between(0.04, 0.3), between(0, 0.5)] as const
  fc.assert(
    fc.property(...numbers, (inner, ratio, acrossOverAlong, poisson) => {
      const of = ring(inner, inner * ratio, acrossOverAlong)
      const elements = growthByElements({ ...of, poisson }, MAPLE)
      const { inside, outside } = segmentedGrowth(of, MAPLE)
      expect(inside).toBeWithin(2e-5 * MAPLE.across, elements.inside)
      expect(outside).toBeWithin(2e-5 * MAPLE.across, elements.outside)
    }),
    { numRuns: 60 },
  )
})

test('wood that grows alike both ways just grows', () => {
  const alike = segmentedGrowth(ring(40, 60), { round: 0.01, across: 0.01 })
  expect(alike.inside).toBeWithin(1e-15, 0.01)
  expect(alike.outside).toBeWithin(1e-15, 0.01)
})

test('a thin hoop keeps its middle, and its wall grows by itself: each side by half of it', () => {
  const [inner, outer] = [100, 101]
  const { inside, outside } = segmentedGrowth(ring(inner, outer), MAPLE)
  const wall = (MAPLE.across - MAPLE.round) * (outer - inner)
  expect(inner * (inside - MAPLE.round)).toBeWithin(0.02 * wall, -wall / 2)
  expect(outer * (outside - MAPLE.round)).toBeWithin(0.02 * wall, wall / 2)
})

test('an endless plate with a hole: round - (across - round) / (k - 1)', () => {
  const k = 1 / Math.sqrt(0.065)
  const expected = MAPLE.round - (MAPLE.across - MAPLE.round) / (k - 1)
  expect(segmentedGrowth(ring(1, 1e4), MAPLE).inside).toBeWithin(1e-12, expected)
})

test('in real rings the groove moves with the wall, not with the radius, and the other way', () => {
  const [inner, outer] = [39, 55]
  const moved = inner * segmentedGrowth(ring(inner, outer), MAPLE).inside
  const wallSwells = (outer - inner) * MAPLE.across
  expect(moved).toBeLessThan(0)
  expect(-moved).toBeLessThan(wallSwells)
  expect(-moved).toBeGreaterThan(wallSwells / 4)
  expect(-moved).toBeLessThan((inner * MAPLE.across) / 3)
})

test.each([
  [0, 10, 0.1],
  [10, 10, 0.1],
  [10, 20, 0],
  [10, 20, 1],
  [10, Number.NaN, 0.1],
])('a ring from %s to %s with %s is a bug of ours', (inner, outer, ratio) => {
  expect(() => segmentedGrowth(ring(inner, outer, ratio), MAPLE)).toThrow(RangeError)
})
