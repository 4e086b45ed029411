import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bestOrder, type Order, ordersJudged } from '#shared/numbers/best-order.ts'
import { ordersOf } from '#tests/support/orders.ts'

/** Rewards for neighbours: neither turning nor mirroring changes their sum. */
const among = (values: readonly number[]) => (order: Order) => {
  const value = (place: number): number => values[order.at(place) ?? -1] ?? Number.NaN
  const sum = order.reduce((total, _, place) => total + value(place) * value(place - 1), 0)
  return { decisive: [0], sum }
}
const search = (values: readonly number[], evaluations: number, judge = among(values)) => ({
  count: values.length,
  judge,
  worth: ({ sum }: { readonly sum: number }) => sum,
  starts: [],
  evaluations,
})
const values = (minLength: number, maxLength: number) =>
  fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength, maxLength })

describe('the best order round a ring', () => {
  test('of up to eight items, none of all orders is worth more', () => {
    fc.assert(
      fc.property(values(3, 7), (list) => {
        const { order, exhaustive } = bestOrder(search(list, 0))
        expect(exhaustive).toBe(true)
        const [, ...rest] = list.keys()
        const most = Math.max(...ordersOf(rest).map((each) => among(list)([0, ...each]).sum))
        expect(among(list)(order).sum).toBeWithin(1e-12, most)
      }),
      { numRuns: 50 },
    )
  })

  test('of more it is an order of all, the first item first, found again, and no worse for more looks', () => {
    fc.assert(
      fc.property(values(9, 20), (list) => {
        const found = bestOrder(search(list, 300))
        expect(found.exhaustive).toBe(false)
        expect([...found.order].sort((one, other) => one - other)).toEqual([...list.keys()])
        expect(found.order[0]).toBe(0)
        expect(found.order[1]).toBeLessThan(found.order.at(-1) ?? Number.NaN)
        expect(bestOrder(search(list, 300))).toEqual(found)
      }),
      { numRuns: 50 },
    )
  })

  test.each([3, 5, 8, 9, 12])('looks at as many orders of %i items as it says', (count) => {
    let judged = 0
    const list = Array.from({ length: count }, (_, item) => Math.sin(item))
    const judge = (order: Order) => {
      judged++
      return among(list)(order)
    }
    bestOrder(search(list, 500, judge))
    expect(judged).toBe(ordersJudged(count, 500))
  })
})
