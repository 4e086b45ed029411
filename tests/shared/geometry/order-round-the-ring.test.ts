import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ballGapOnCircle, closingCircle } from '#shared/geometry/balls-on-a-circle.ts'
import { gapOverOrders, gapOverOrdersOnCircle, spreadOrder } from '#shared/geometry/order-round-the-ring.ts'
import { closingRadius, unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { mm } from '#shared/units/length.ts'
import { ballCount, between } from '#tests/support/inputs.ts'
import { ordersOf } from '#tests/support/orders.ts'

describe('the order in which no side stands out', () => {
  test('of eight: the largest, the fifth, the third, the seventh, the second opposite the largest, …', () => {
    expect(spreadOrder(8)).toEqual([0, 4, 2, 6, 1, 5, 3, 7])
  })

  test('by thirds, of nine: the three largest a third of a turn apart, the next three a ninth further on', () => {
    expect(spreadOrder(9, 3)).toEqual([0, 3, 6, 1, 4, 7, 2, 5, 8])
    for (let count = 3; count <= 200; count++) {
      const order = spreadOrder(count, 3)
      expect(order.toSorted((one, other) => one - other)).toEqual(Array.from({ length: count }, (_, rank) => rank))
      expect(Math.abs(order.indexOf(1) - count / 3)).toBeLessThanOrEqual(1)
      expect(Math.abs(order.indexOf(2) - (2 * count) / 3)).toBeLessThanOrEqual(1)
    }
  })

  test('has every ball once, and the two largest opposite one another within a place', () => {
    for (let count = 3; count <= 200; count++) {
      const order = spreadOrder(count)
      expect(order.toSorted((one, other) => one - other)).toEqual(Array.from({ length: count }, (_, rank) => rank))
      expect(Math.abs(order.indexOf(1) - count / 2)).toBeLessThanOrEqual(1)
    }
  })

  test('leaves the ring better balanced than balls laid by size: less than 0.6 as far off its centre', () => {
    const offCentre = (sizes: readonly number[]) => {
      const turn = (place: number) => (2 * Math.PI * place) / sizes.length
      const [x, y] = [Math.cos, Math.sin].map((part) =>
        sizes.reduce((sum, size, place) => sum + size * part(turn(place)), 0),
      )
      return Math.hypot(x ?? Number.NaN, y ?? Number.NaN)
    }
    for (let count = 4; count <= 200; count++) {
      const order = spreadOrder(count)
      const bySize = order.toSorted((one, other) => one - other)
      expect(offCentre(order)).toBeLessThan(0.6 * offCentre(bySize))
    }
  })

  test.each([2, 0, -1, 3.5, Number.NaN])('of %s balls is refused', (count) => {
    expect(() => spreadOrder(count)).toThrow(/ballCount must be whole and at least 3/)
  })
})

/** Five or six balls of a few percent more or less, in a groove that leaves them a gap from −1/4 of a ball to 1/2. */
const few = fc
  .tuple(fc.array(between(0.95, 1.05), { minLength: 5, maxLength: 6 }), between(-0.25, 0.5))
  .map(([balls, gap]) => ({ balls, bottom: closingRadius(balls, mm(gap)) }))

describe('what the order can change', () => {
  test('every order of five or six balls leaves a gap within the bounds, and they are not much wider than that', () => {
    fc.assert(
      fc.property(few, ({ balls, bottom }) => {
        const { least, most } = gapOverOrders(bottom, balls)
        const gaps = ordersOf(balls).map((order) => unequalBallGap(bottom, order))
        const [smallest, largest] = [Math.min(...gaps), Math.max(...gaps)]
        expect(smallest).toBeGreaterThanOrEqual(least)
        expect(largest).toBeLessThanOrEqual(most)
        const spread = Math.max(...balls) - Math.min(...balls)
        expect(most - least).toBeLessThan(largest - smallest + 5 * spread * spread)
      }),
      { numRuns: 60 },
    )
  })

  test('on a plate too: every order of five or six balls', () => {
    fc.assert(
      fc.property(fc.array(between(0.95, 1.05), { minLength: 5, maxLength: 6 }), between(-0.25, 0.5), (balls, gap) => {
        const radius = closingCircle(balls, mm(gap))
        const { least, most, coversHalf } = gapOverOrdersOnCircle(radius, balls)
        const gaps = ordersOf(balls).map((order) => ballGapOnCircle(radius, order))
        expect(Math.min(...gaps)).toBeGreaterThanOrEqual(least)
        expect(Math.max(...gaps)).toBeLessThanOrEqual(most)
        const spread = Math.max(...balls) - Math.min(...balls)
        expect(most - least).toBeLessThan(Math.max(...gaps) - Math.min(...gaps) + 5 * spread * spread)
        expect(coversHalf).toBe(true)
      }),
      { numRuns: 60 },
    )
    expect(() => gapOverOrdersOnCircle(mm(7.9), [16, 15, 15])).toThrow(RangeError)
  })

  test('holds for rings of any size in any of some orders', () => {
    const ring = ballCount.chain((count) => fc.array(between(0.97, 1.03), { minLength: count, maxLength: count }))
    fc.assert(
      fc.property(ring, between(-0.9, 0.9), fc.nat(1000), (balls, gap, turn) => {
        fc.pre(balls.length > 3 || gap < 0.3)
        const bottom = closingRadius(balls, mm(gap))
        fc.pre(bottom >= Math.max(...balls))
        const { least, most, coversHalf } = gapOverOrders(bottom, balls)
        const bySize = balls.toSorted((one, other) => one - other)
        const from = turn % balls.length
        for (const order of [balls, bySize, spreadOrder(balls.length).map((rank) => bySize[rank] ?? Number.NaN)]) {
          const turned = [...order.slice(from), ...order.slice(0, from)]
          expect(unequalBallGap(bottom, turned)).toBeGreaterThanOrEqual(least)
          expect(unequalBallGap(bottom, turned)).toBeLessThanOrEqual(most)
        }
        expect(coversHalf).toBe(true)
      }),
    )
  })

  test('is nothing for equal balls', () => {
    fc.assert(
      fc.property(ballCount, between(-0.5, 0.3), (count, gap) => {
        const equal = Array.from({ length: count }, () => 16)
        const bottom = closingRadius(equal, mm(16 * gap))
        const { least, most } = gapOverOrders(bottom, equal)
        expect(least).toBeWithin(1e-11 * count * bottom, 16 * gap)
        expect(most).toBeWithin(1e-11 * count * bottom, 16 * gap)
      }),
    )
  })

  test('grows with the square of the spread', () => {
    const width = (spread: number) => {
      const balls = Array.from({ length: 12 }, (_, ball) => 16 + (spread * (ball - 5.5)) / 5.5)
      const { least, most } = gapOverOrders(closingRadius(balls), balls)
      return most - least
    }
    expect(width(0.2) / width(0.1)).toBeWithin(0.1, 4)
    expect(width(0.1)).toBeLessThan(0.01)
  })

  test('a groove in which balls cover less than half is told from one in which they cover more', () => {
    const balls = [1, 1.01, 0.99, 1.02]
    expect(gapOverOrders(mm(1.3), balls).coversHalf).toBe(true)
    const wide = gapOverOrders(mm(3), balls)
    expect(wide.coversHalf).toBe(false)
    for (const order of ordersOf(balls)) {
      expect(unequalBallGap(mm(3), order)).toBeGreaterThanOrEqual(wide.least)
      expect(unequalBallGap(mm(3), order)).toBeLessThanOrEqual(wide.most)
    }
  })

  test.each([
    [15.9, [16, 15, 15]],
    [Number.NaN, [16, 16, 16]],
    [40, [16, 0, 16]],
    [40, [16, Number.NaN, 16]],
    [40, [16, 16]],
  ])('a groove bottom of %s round %s is refused', (bottom, balls) => {
    expect(() => gapOverOrders(mm(bottom), balls)).toThrow(RangeError)
  })
})
