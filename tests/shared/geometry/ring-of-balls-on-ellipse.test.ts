import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Ellipse, sharpestRadius } from '#shared/geometry/ellipse.ts'
import { ballGap, closedPitchRadius, gapPerPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { gapOnEllipse, gapRangeOnEllipse } from '#shared/geometry/ring-of-balls-on-ellipse.ts'
import { mm } from '#shared/units/length.ts'
import { gapByPoints, perimeter, perimeterByRamanujan } from '#tests/support/ellipse-by-points.ts'
import { between } from '#tests/support/inputs.ts'

const ellipse = (along: number, across: number): Ellipse => ({ along: mm(along), across: mm(across) })
const count = fc.integer({ min: 3, max: 60 })

/** A groove bottom in which so many balls leave about that gap. */
const bottomFor = (balls: number, gap: number): number => {
  const closed = closedPitchRadius(mm(10), balls)
  return closed + gap / gapPerPitchRadius(closed, mm(10), balls) + 5
}

test('a circle is the limit: the gap of the round ring, wherever the first ball lies', () => {
  fc.assert(
    fc.property(count, between(0, 4), between(0, 7), (balls, gap, start) => {
      const radius = bottomFor(balls, gap)
      const ring = { bottom: ellipse(radius, radius), ballDiameter: mm(10), ballCount: balls }
      const round = ballGap(mm(radius - 5), mm(10), balls)
      expect(gapOnEllipse(ring, start)).toBeWithin(1e-9 * balls, round)
      expect(gapRangeOnEllipse(ring).least).toBeWithin(1e-9 * balls, round)
      expect(gapRangeOnEllipse(ring).most).toBeWithin(1e-9 * balls, round)
    }),
    { numRuns: 60 },
  )
})

describe('by coordinates', () => {
  test.each([
    [12, 1.02, 0.7],
    [7, 0.97, 2.1],
    [3, 1.05, 0.4],
    [10, 1.01, 1.3],
    [5, 0.9, 3],
  ])('%s balls, stretched %s across, first ball at %s', (balls, stretch, direction) => {
    const [a, b] = [bottomFor(balls, 2), bottomFor(balls, 2) * stretch]
    const found = gapByPoints(a, b, 10, balls, direction)
    // The same ball lies at another eccentric angle: that of its point of touch. The range must hold what was found.
    const { least, most } = gapRangeOnEllipse({ bottom: ellipse(a, b), ballDiameter: mm(10), ballCount: balls })
    expect(found).toBeGreaterThanOrEqual(least - 1e-5)
    expect(found).toBeLessThanOrEqual(most + 1e-5)
  })

  test.each([
    [6, 1.03],
    [9, 0.95],
  ])('%s balls, stretched %s across: laid on the axes, the very same gap', (balls, stretch) => {
    // On an axis the point of touch and the centre lie in one direction.
    const [a, b] = [bottomFor(balls, 1), bottomFor(balls, 1) * stretch]
    const ring = { bottom: ellipse(a, b), ballDiameter: mm(10), ballCount: balls }
    expect(gapOnEllipse(ring, 0)).toBeWithin(1e-5, gapByPoints(a, b, 10, balls, 0))
    expect(gapOnEllipse(ring, Math.PI / 2)).toBeWithin(1e-5, gapByPoints(a, b, 10, balls, Math.PI / 2))
  })
})

test('no place of the first ball leaves less than the least or more than the most', () => {
  fc.assert(
    fc.property(fc.integer({ min: 3, max: 16 }), between(0, 3), between(0.9, 1.1), (balls, gap, stretch) => {
      const radius = bottomFor(balls, gap) + 1
      const ring = { bottom: ellipse(radius, radius * stretch), ballDiameter: mm(10), ballCount: balls }
      const { least, most } = gapRangeOnEllipse(ring)
      for (let start = 0; start < 2 * Math.PI; start += 0.017) {
        expect(gapOnEllipse(ring, start)).toBeGreaterThanOrEqual(least - 1e-7)
        expect(gapOnEllipse(ring, start)).toBeLessThanOrEqual(most + 1e-7)
      }
    }),
    { numRuns: 25 },
  )
})

test('half a turn on, and turned by a right angle, it is the same ring', () => {
  fc.assert(
    fc.property(count, between(0.93, 1.07), between(0, 3), (balls, stretch, start) => {
      const radius = bottomFor(balls, 3)
      const of = (along: number, across: number) => ({
        bottom: ellipse(along, across),
        ballDiameter: mm(10),
        ballCount: balls,
      })
      const one = gapOnEllipse(of(radius, radius * stretch), start)
      expect(gapOnEllipse(of(radius, radius * stretch), start + Math.PI)).toBeWithin(1e-9 * balls, one)
      expect(gapOnEllipse(of(radius * stretch, radius), start + Math.PI / 2)).toBeWithin(1e-9 * balls, one)
    }),
  )
})

test('to the first order it is the ring as long as its curve of centres: the perimeter of the ellipse less 2 pi r', () => {
  // Many balls, so that chords are arcs: the inner parallel curve of an ellipse is shorter by 2 pi r (Steiner).
  for (const stretch of [0.97, 0.99, 1.01, 1.03]) {
    const radius = bottomFor(120, 2)
    const [along, across] = [radius / Math.sqrt(stretch), radius * Math.sqrt(stretch)]
    const ring = { bottom: ellipse(along, across), ballDiameter: mm(10), ballCount: 120 }
    const asRound = mm((perimeter(along, across) - 2 * Math.PI * 5) / (2 * Math.PI))
    const expected = ballGap(asRound, mm(10), 120)
    expect(gapRangeOnEllipse(ring).least).toBeWithin(0.03, expected)
    expect(gapRangeOnEllipse(ring).most).toBeWithin(0.03, expected)
  }
})

test('the perimeter that this is held against: exact, and by Ramanujan', () => {
  expect(perimeter(1, 1)).toBeWithin(1e-14, 2 * Math.PI)
  // DLMF 19.6.1 and a table of E(k): the half axes 1 and 1/2 have a perimeter of 4.84422411027.
  expect(perimeter(1, 0.5)).toBeWithin(1e-10, 4.84422411027)
  for (const b of [0.9, 0.95, 0.99]) expect(perimeterByRamanujan(1, b)).toBeWithin(1e-11, perimeter(1, b))
})

test('a groove that is too narrow for all balls but one counts as a whole ball short', () => {
  const ring = { bottom: ellipse(11, 10.2), ballDiameter: mm(10), ballCount: 5 }
  expect(gapRangeOnEllipse(ring).least).toBe(-10)
})

test('below 0 the ring does not close, and the gap goes on falling', () => {
  const radius = bottomFor(12, 0)
  const gapAt = (off: number): number =>
    gapOnEllipse({ bottom: ellipse(radius - off, radius - off + 0.3), ballDiameter: mm(10), ballCount: 12 }, 0)
  const gaps = [0.2, 0.4, 0.8, 1.2, 1.6].map(gapAt)
  expect([...gaps].sort((a, b) => b - a)).toEqual(gaps)
  expect(gaps[1]).toBeLessThan(0)
})

test('a ball that is too large to touch the bottom at the sharp ends is a bug of ours', () => {
  const bottom = ellipse(40, 20)
  expect(sharpestRadius(bottom)).toBe(10)
  expect(() => gapOnEllipse({ bottom, ballDiameter: mm(21), ballCount: 3 }, 0)).toThrow(RangeError)
  expect(() => gapOnEllipse({ bottom, ballDiameter: mm(10), ballCount: 2 }, 0)).toThrow(RangeError)
  expect(() => sharpestRadius(ellipse(Number.NaN, 20))).toThrow(RangeError)
})
