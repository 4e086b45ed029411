import { describe, expect, test } from 'vitest'
import { normalCdf } from '#shared/statistics/normal.ts'
import { normalColumn, POINTS } from '#shared/statistics/normal-points.ts'

/** Eight columns of a lattice, and beyond them as many of a shuffle as are used together. */
const COLUMNS = Array.from({ length: 12 }, (_, column) => column)
const places = (column: number) => Array.from(normalColumn(column), (z) => normalCdf(z) * POINTS)

test.each(COLUMNS)(
  'column %s is spread evenly: one point in each of as many equal parts, wherever they begin',
  (column) => {
    const sorted = places(column).toSorted((one, other) => one - other)
    const steps = sorted.slice(1).map((place, i) => place - (sorted[i] ?? Number.NaN))
    // the first and the last are kept off the ends
    expect(Math.max(...steps.slice(1, -1))).toBeWithin(1e-5, 1)
    expect(Math.min(...steps.slice(1, -1))).toBeWithin(1e-5, 1)
    expect(sorted[0]).toBeGreaterThanOrEqual(0.25 - 1e-9)
    expect(sorted.at(-1)).toBeLessThanOrEqual(POINTS - 0.25 + 1e-9)
  },
)

test('columns have nothing to do with one another, and are the same ones every time', () => {
  for (const one of COLUMNS) {
    expect(normalColumn(one)).toBe(normalColumn(one))
    for (const other of COLUMNS.slice(one + 1)) {
      const [left, right] = [places(one), places(other)]
      const product = left.reduce(
        (sum, place, i) => sum + (place / POINTS - 0.5) * ((right[i] ?? Number.NaN) / POINTS - 0.5),
        0,
      )
      // of independent uniform numbers 1/12 times this; four standard errors of a shuffle
      expect(Math.abs((12 * product) / POINTS)).toBeLessThan(4 / Math.sqrt(POINTS))
    }
  }
})

describe('the first few points of a lattice lie evenly too', () => {
  test.each([64, 256])('%s of each column', (count) => {
    for (const column of COLUMNS.slice(0, 8)) {
      const sorted = places(column)
        .slice(0, count)
        .toSorted((one, other) => one - other)
      const apart = Math.max(...sorted.map((place, i) => Math.abs(place / POINTS - (i + 0.5) / count)))
      // A random set of as many is off by about 0.6 over their root.
      expect(apart).toBeLessThan(0.6 / Math.sqrt(count))
    }
  })
})
