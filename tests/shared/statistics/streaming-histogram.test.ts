import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  accumulated,
  addTo,
  coarse,
  countIn,
  emptyHistogram,
  quantile,
  shareBelow,
  shortestInterval,
  symmetricInterval,
} from '#shared/statistics/streaming-histogram.ts'
import { between } from '#tests/support/inputs.ts'

const lists = fc.array(between(-3, 3), { minLength: 50, maxLength: 400 })

const counted = (values: readonly number[], reach = 2) => {
  const histogram = emptyHistogram(0, reach)
  countIn(histogram, Float64Array.from(values), values.length)
  return histogram
}

test('parts add up to the whole, in either order', () => {
  fc.assert(
    fc.property(lists, lists, (one, other) => {
      const [forth, back] = [counted(one), counted(other)]
      addTo(forth, counted(other))
      addTo(back, counted(one))
      expect(forth).toEqual(counted([...one, ...other]))
      expect(back).toEqual(forth)
    }),
    { numRuns: 20 },
  )
  expect(() => addTo(emptyHistogram(0, 1), emptyHistogram(0, 2))).toThrow(RangeError)
})

test('a quantile lies between the values whose ranks are about it, to a bin', () => {
  fc.assert(
    fc.property(lists, between(0.01, 0.99), (values, share) => {
      const sorted = values.toSorted((one, other) => one - other)
      const rank = share * values.length
      const histogram = counted(values, 3)
      const { value } = quantile(histogram, share)
      expect(value).toBeGreaterThanOrEqual((sorted[Math.ceil(rank) - 2] ?? histogram.least) - histogram.binWidth)
      expect(value).toBeLessThanOrEqual((sorted[Math.ceil(rank)] ?? histogram.most) + histogram.binWidth)
    }),
  )
})

test('the share below a value is the way back of the quantile', () => {
  fc.assert(
    fc.property(lists, between(0.05, 0.95), (values, share) => {
      const histogram = counted(values)
      const { value } = quantile(histogram, share)
      // By no more than two values: a rank between two counts as either.
      expect(shareBelow(histogram, accumulated(histogram), value)).toBeWithin(2 / values.length, share)
    }),
  )
})

test('shares below the least and from the largest value on', () => {
  const histogram = counted([-5, 0, 0.5, 7])
  const below = accumulated(histogram)
  expect([-6, -5, 7, 8].map((value) => shareBelow(histogram, below, value))).toEqual([0, 0, 1, 1])
  expect(shareBelow(histogram, below, 0.25)).toBe(0.5)
})

test('the shortest interval is as short as the shortest of all pairs of values, to two bins', () => {
  fc.assert(
    fc.property(lists, (values) => {
      const sorted = values.toSorted((one, other) => one - other)
      const held = Math.ceil(0.95 * values.length)
      let shortest = Number.POSITIVE_INFINITY
      for (let first = 0; first + held <= values.length; first++) {
        shortest = Math.min(shortest, (sorted[first + held - 1] ?? Number.NaN) - (sorted[first] ?? Number.NaN))
      }
      const histogram = counted(values, 3)
      const { low, high } = shortestInterval(histogram, 0.95)
      expect(high - low).toBeLessThanOrEqual(shortest + 2 * histogram.binWidth)
      const inside = values.filter((value) => value >= low - histogram.binWidth && value <= high + histogram.binWidth)
      expect(inside.length).toBeGreaterThanOrEqual(held - 1)
      const symmetric = symmetricInterval(histogram, 0.95)
      expect(symmetric.high - symmetric.low).toBeGreaterThanOrEqual(high - low - 2 * histogram.binWidth)
    }),
  )
})

test('nothing counted has no quantile', () => {
  expect(() => quantile(emptyHistogram(0, 1), 0.5)).toThrow(RangeError)
  expect(() => shortestInterval(emptyHistogram(0, 1), 0.95)).toThrow(RangeError)
  expect(() => emptyHistogram(0, 0)).toThrow(RangeError)
})

test('for a picture: every value in one of 64 bins at the most, from the least to the largest, as many as there are', () => {
  fc.assert(
    fc.property(lists, (values) => {
      const histogram = counted(values)
      const { edges, counts } = coarse(histogram)
      const near = histogram.binWidth
      expect(edges.length).toBe(counts.length + 1)
      expect(counts.length).toBeLessThanOrEqual(64)
      expect(counts.reduce((sum, count) => sum + count, 0)).toBe(values.length)
      expect(edges[0]).toBeLessThanOrEqual(Math.min(...values))
      expect(edges.at(-1)).toBeGreaterThanOrEqual(Math.max(...values))
      expect(edges).toEqual(edges.toSorted((one, other) => one - other))
      // each bin has what lies in it, but for what rounding puts beside it
      for (const [bin, count] of counts.entries()) {
        const [from = Number.NaN, to = Number.NaN] = [edges[bin], edges[bin + 1]]
        const inside = values.filter((value) => value >= from - near && value <= to + near).length
        expect(count).toBeLessThanOrEqual(inside)
      }
    }),
  )
})

test('for a picture: one value is one bin, and nothing is none', () => {
  expect(coarse(emptyHistogram(0, 1))).toEqual({ edges: [], counts: [] })
  expect(coarse(counted([0.5, 0.5, 0.5]))).toEqual({ edges: [0.5, 0.5], counts: [3] })
})
