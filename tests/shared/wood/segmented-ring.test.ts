import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { segmentWood } from '#shared/data/segment-woods.ts'
import { mm } from '#shared/units/length.ts'
import { segmentedMovement } from '#shared/wood/segmented-movement.ts'
import { type PlaneWood, segmentedGrowth } from '#shared/wood/segmented-ring.ts'
import { curvedGrainGrowth } from '#tests/support/curved-grain.ts'
import { between } from '#tests/support/inputs.ts'
import { swollenPieces } from '#tests/support/segment-elements.ts'

const MAPLE = segmentWood('maple-sugar', 'tangential').plane
const WOODS = [
  ['maple, flat-sawn', MAPLE],
  ['cherry, quarter-sawn', segmentWood('cherry-black', 'radial').plane],
  ['basswood, flat-sawn', segmentWood('basswood-american', 'tangential').plane],
] as const
const COUNTS = [3, 4, 6, 8, 12, 24]
const elements = (outer: number, wood: PlaneWood, count?: number, across = 10, round = 12) =>
  swollenPieces({ innerRadius: 1, outerRadius: outer, ...wood, ...(count && { count }) }, across, round)

describe('the finite elements', () => {
  test.each([1.05, 1.3, 2, 4])(
    'with curved grain are the closed form of a hoop, outside %s times the hole',
    (outer) => {
      for (const [, wood] of WOODS) {
        const closed = curvedGrainGrowth({ innerRadius: 1, outerRadius: outer, ...wood })
        const { meanInside, meanOutside } = elements(outer, wood, undefined, 16)
        expect(meanInside).toBeWithin(3e-4 * Math.abs(closed.inside), closed.inside)
        expect(meanOutside).toBeWithin(3e-4 * Math.abs(closed.outside), closed.outside)
      }
    },
  )

  test.each([4, 6, 12, 24])('of %s pieces change by less than 2e-4 where they are made half as large', (count) => {
    for (const outer of [1.2, 1.6, 3]) {
      const [coarse, fine] = [elements(outer, MAPLE, count, 6, 8), elements(outer, MAPLE, count, 12, 16)]
      expect(coarse.meanInside).toBeWithin(2e-4, fine.meanInside)
      expect(coarse.meanOutside).toBeWithin(2e-4, fine.meanOutside)
    }
  })
})

describe.each(WOODS)('%s', (_name, wood) => {
  test.each([1.08, 1.3, 2, 6])('moves as the finite elements do, outside %s times the hole', (outer) => {
    // All counts of one wood, and of the others one even ring and one that is nearly round: each is a solve of its own.
    for (const count of wood === MAPLE ? COUNTS : [4, 12]) {
      const of = elements(outer, wood, count, outer > 2 ? 16 : 8)
      const { inside, outside, stress } = segmentedGrowth(outer, count, wood)
      expect(inside.mean).toBeWithin(0.001, of.meanInside)
      expect(outside.mean).toBeWithin(0.001, of.meanOutside)
      for (const [edge, growths] of [
        [inside, of.inside],
        [outside, of.outside],
      ] as const) {
        expect(edge.least).toBeWithin(0.02, Math.min(...growths))
        expect(edge.most).toBeWithin(0.02, Math.max(...growths))
      }
      if (count < 8 || outer < 1.3) continue
      const well = of.stresses.filter(({ radius }) => radius >= 0.9 + 0.1 * outer && radius <= 0.1 + 0.9 * outer)
      const acrossGrain = well.map(({ across }) => across)
      const largest = Math.max(...acrossGrain.map(Math.abs))
      expect(stress.least).toBeWithin(0.05 * largest, Math.min(0, ...acrossGrain))
      expect(stress.most).toBeWithin(0.2 * largest, Math.max(0, ...acrossGrain))
    }
  })
})

test('very many pieces are a hoop of curved grain', () => {
  for (const [, wood] of WOODS)
    for (const outer of [1.1, 1.5, 4]) {
      const closed = curvedGrainGrowth({ innerRadius: 1, outerRadius: outer, ...wood })
      const { inside, outside } = segmentedGrowth(outer, 400, wood)
      expect(inside.mean).toBeWithin(2e-4, closed.inside)
      expect(outside.mean).toBeWithin(2e-4, closed.outside)
      expect(inside.most - inside.least).toBeWithin(1e-4, 0)
    }
})

/*
 * Another program of finite elements: a maple ring dried by 3.18 %, of such a size that its balls' gap would be 0.307 mm
 * wider were its grain curved. Half the last printed digit; 0.18 mm is how much the radius differs round the ring of 4.
 */
test.each([
  [24, 0.29],
  [12, 0.24],
  [8, 0.15],
  [6, 0.035],
  [4, -0.28],
])('a ring of %s pieces, its outside 1.3 times its hole, opens the gap by %s mm', (count, expected) => {
  const free = { along: -3.18 * 0.00005, across: -3.18 * 0.00353 }
  const curved = curvedGrainGrowth({ innerRadius: 1, outerRadius: 1.3, ...MAPLE }).inside
  const gapPerGrowth = 0.307 / (free.along + (free.across - free.along) * curved)
  const { inside } = segmentedMovement({ innerRadius: mm(1), outerRadius: mm(1.3), count, wood: MAPLE })(free)
  expect(gapPerGrowth * inside.mean).toBeWithin(0.005, expected)
  const radius = gapPerGrowth / (24 * Math.sin(Math.PI / 12))
  if (count === 4) expect(radius * (inside.most - inside.least)).toBeWithin(0.005, 0.18)
})

/* The same program: a segmented inner ring with a bore of 10 mm, its outside not stated, the pull across its grain. */
test.each([
  [3.18, 8.7],
  [6, 16],
])('an inner ring that dries by %s is pulled by about %s MPa across the grain', (dried, expected) => {
  const { plane, stiffness } = segmentWood('maple-sugar', 'tangential')
  const ring = { innerRadius: mm(5), outerRadius: mm(22), count: 12, wood: plane }
  const { pull } = segmentedMovement(ring)({ along: -dried * 0.00005, across: -dried * 0.00353 })
  expect(pull * stiffness).toBeWithin(0.1 * expected, expected)
})

test('a ring looked up is the ring solved', () => {
  const numbers = [between(1.02, 11), fc.integer({ min: 3, max: 48 }), fc.constantFrom(...WOODS)] as const
  fc.assert(
    fc.property(...numbers, (outer, count, [, wood]) => {
      const solved = segmentedGrowth(outer, count, wood)
      const ring = { innerRadius: mm(30), outerRadius: mm(30 * outer), count, wood }
      const { inside, outside, pull } = segmentedMovement(ring)({ along: 0, across: 1 })
      expect(inside.mean).toBeWithin(1e-3, solved.inside.mean)
      expect(outside.mean).toBeWithin(1e-3, solved.outside.mean)
      if (outer < 2.5) expect(inside.least).toBeWithin(0.01, solved.inside.least)
      expect(outside.most).toBeWithin(0.005, solved.outside.most)
      expect(pull).toBeWithin(2e-3, solved.stress.most)
    }),
    { numRuns: 25 },
  )
})

test('an outside more than 12 times as wide as the hole no longer feels it', () => {
  const at = (outer: number) =>
    segmentedMovement({ innerRadius: mm(1), outerRadius: mm(outer), count: 8, wood: MAPLE })({ along: 0, across: 1 })
  expect(at(500)).toEqual(at(12))
  expect(at(12).outside.mean).toBeWithin(0.003, elements(30, MAPLE, 8, 30).meanOutside)
})

test('wood that grows alike both ways just grows', () => {
  const move = segmentedMovement({ innerRadius: mm(40), outerRadius: mm(60), count: 6, wood: MAPLE })
  const { inside, outside, pull } = move({ along: 0.01, across: 0.01 })
  for (const edge of [inside, outside])
    for (const growth of [edge.mean, edge.least, edge.most]) expect(growth).toBeWithin(1e-15, 0.01)
  expect(pull).toBeWithin(1e-15, 0)
})

test('a ring that shrinks does the opposite of one that swells, and is pulled where that is pushed', () => {
  const ring = { innerRadius: mm(40), outerRadius: mm(60), count: 8, wood: MAPLE }
  const [swollen, shrunk] = [0.01, -0.01].map((across) => segmentedMovement(ring)({ along: 0, across }))
  expect(shrunk?.inside.mean).toBeWithin(1e-15, -(swollen?.inside.mean ?? Number.NaN))
  expect(shrunk?.inside.least).toBeWithin(1e-15, -(swollen?.inside.most ?? Number.NaN))
  expect(shrunk?.pull).toBeGreaterThan(swollen?.pull ?? Number.NaN)
})

test.each([
  [1, 12],
  [101, 12],
  [1.5, 2],
  [1.5, 6.5],
  [Number.NaN, 12],
])('an outside %s times the hole, of %s pieces, is a bug of ours', (outer, count) => {
  expect(() => segmentedGrowth(outer, count, MAPLE)).toThrow(RangeError)
})
