import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  countChoices,
  everyChoice,
  type Miss,
  nearestByExchange,
  nearestOfAll,
} from '#shared/numbers/nearest-choice.ts'
import { between } from '#tests/support/inputs.ts'
import { choicesOf } from '#tests/support/orders.ts'

const list = fc
  .array(between(0, 10), { minLength: 3, maxLength: 60 })
  .map((values) => values.toSorted((one, other) => one - other))
const sumOf = (values: readonly number[], places: readonly number[]) =>
  places.reduce((sum, place) => sum + (values[place] ?? Number.NaN), 0)
/** What is missing of a sum: it falls as the values chosen grow. */
const missing =
  (values: readonly number[], sum: number): Miss =>
  (places) =>
    sum - sumOf(values, places)

describe('all choices', () => {
  test('are counted as in the triangle of Pascal', () => {
    for (let among = 1; among <= 40; among++) {
      for (let count = 1; count < among; count++) {
        const above = countChoices(among - 1, count - 1, 1e15) + countChoices(among - 1, count, 1e15)
        expect(countChoices(among, count, 1e15)).toBe(above)
      }
    }
    expect(countChoices(49, 6, 1e9)).toBe(13_983_816)
    expect(countChoices(500, 200, 1e6)).toBe(Number.POSITIVE_INFINITY)
  })

  test('come once each, in the order of a dictionary', () => {
    for (const [among, count] of [
      [1, 1],
      [5, 5],
      [7, 3],
      [8, 1],
      [6, 0],
    ] as const) {
      const places = Array.from({ length: among }, (_, place) => place)
      expect([...everyChoice(among, count)]).toEqual(choicesOf(places, count))
      expect(choicesOf(places, count).length).toBe(countChoices(among, count, 1e6))
    }
  })

  test('hold the nearest, the first of equal ones', () => {
    const values = [1, 2, 3, 4]
    expect(nearestOfAll(4, 2, missing(values, 5))).toEqual({ places: [0, 3], miss: 0 })
    expect(nearestOfAll(4, 2, missing(values, 100)).places).toEqual([2, 3])
  })

  test('more than there are is refused', () => {
    expect(() => countChoices(3, 4, 10)).toThrow(RangeError)
    expect(() => nearestOfAll(3, 4, () => 0)).toThrow(RangeError)
    expect(() => nearestByExchange([1, 2, 3], 4, () => 0)).toThrow(RangeError)
    expect(() => nearestByExchange([1, 2, 3], 0, () => 0)).toThrow(RangeError)
  })
})

describe('by exchange', () => {
  test('comes at least as near as any neighbours in the list, with places that ascend', () => {
    fc.assert(
      fc.property(list, fc.nat(59), between(0, 1), (values, some, part) => {
        const count = 1 + (some % values.length)
        const [least, most] = [
          sumOf(values.slice(0, count), [...values.keys()].slice(0, count)),
          sumOf(values, places(values, count)),
        ]
        const miss = missing(values, least + part * (most - least))
        const found = nearestByExchange(values, count, miss)
        expect(found.miss).toBe(miss(found.places))
        expect(found.places).toEqual([...new Set(found.places)].toSorted((one, other) => one - other))
        expect(found.places.length).toBe(count)
        for (let start = 0; start + count <= values.length; start++) {
          const run = Array.from({ length: count }, (_, place) => start + place)
          expect(Math.abs(found.miss)).toBeLessThanOrEqual(Math.abs(miss(run)))
        }
      }),
    )
  })

  test('takes the largest or the smallest where none reaches, which is the nearest of all', () => {
    fc.assert(
      fc.property(list, (values) => {
        const count = Math.min(values.length, 4)
        expect(nearestByExchange(values, count, missing(values, 1000)).places).toEqual(places(values, count))
        expect(nearestByExchange(values, count, missing(values, -1)).places).toEqual([...Array(count).keys()])
      }),
    )
  })

  test('comes within a hundredth of the range of what the nearest of all reaches', () => {
    fc.assert(
      fc.property(fc.array(between(0, 1), { minLength: 16, maxLength: 16 }), between(0.2, 0.8), (some, part) => {
        const sizes = some.toSorted((one, other) => one - other)
        const [least, most] = [sumOf(sizes, [0, 1, 2, 3, 4]), sumOf(sizes, places(sizes, 5))]
        const miss = missing(sizes, least + part * (most - least))
        const [found, nearest] = [nearestByExchange(sizes, 5, miss), nearestOfAll(16, 5, miss)]
        expect(Math.abs(found.miss)).toBeGreaterThanOrEqual(Math.abs(nearest.miss))
        expect(Math.abs(found.miss)).toBeLessThanOrEqual(Math.abs(nearest.miss) + 1e-2 * (most - least))
      }),
      { numRuns: 100 },
    )
  })
})

/** The places of the last so many. */
const places = (values: readonly number[], count: number) => [...values.keys()].slice(values.length - count)
