import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  closedPitchRadius,
  gapPerBallDiameterAtPitchRadius,
  gapPerPitchRadius,
} from '#shared/geometry/ring-of-balls.ts'
import {
  closureMark,
  nestingMark,
  scoreOf,
  seatMark,
  sensitivityMark,
  wallMark,
} from '#shared/questions/search/score.ts'
import { boardFor, materialUsed } from '#shared/questions/search/stock.ts'
import { mm } from '#shared/units/length.ts'
import { between } from '#tests/support/inputs.ts'

test('every mark runs from 0 to 1', () => {
  const any = between(-1e6, 1e6)
  fc.assert(
    fc.property(any, any, between(1, 50), fc.integer({ min: 3, max: 200 }), (one, other, size, count) => {
      const marks = [
        closureMark(one, Math.abs(other)),
        wallMark(one, size),
        nestingMark(one, size),
        seatMark([{ onBottom: true, conformity: Math.abs(one) }]),
        sensitivityMark(count, size, Math.abs(other)),
      ]
      for (const mark of marks) {
        expect(mark).toBeGreaterThanOrEqual(0)
        expect(mark).toBeLessThanOrEqual(1)
      }
    }),
  )
})

test('the ends: a gap on its aim, half a band away; a wall of two thirds of a ball; a seat on edges', () => {
  expect(closureMark(0, 2)).toBe(1)
  expect(closureMark(-1, 2)).toBe(0)
  expect(closureMark(0, 0)).toBe(1)
  expect(closureMark(0.1, 0)).toBe(0)
  expect(wallMark(8, 12)).toBeWithin(1e-12, 1)
  expect(
    seatMark([
      { onBottom: true, conformity: 0.53 },
      { onBottom: false, conformity: 0.45 },
    ]),
  ).toBe(0.5)
})

test('the scatter of Z balls moves a ring that just closes as the slope of the gap says, over the root of Z', () => {
  for (const count of [3, 8, 40, 200]) {
    const closed = closedPitchRadius(mm(10), count)
    // in a groove of fixed bottom, where half of a ball's growth moves its centre inward
    const slope = gapPerBallDiameterAtPitchRadius(closed, mm(10), count) - gapPerPitchRadius(closed, mm(10), count) / 2
    const moves = (Math.abs(slope) / Math.sqrt(count)) * 0.05
    expect(sensitivityMark(count, 10, 0.05)).toBeWithin(1e-9, 1 / (1 + (moves / 0.625) ** 2))
  }
})

test('the score is the weighted mean of the marks', () => {
  const marks = { closure: 1, wall: 0.5, nesting: 0, seat: 1, sensitivity: 0.25, material: 0.5 }
  expect(scoreOf(marks, { closure: 3, wall: 2, nesting: 1, seat: 2, sensitivity: 2, material: 1 })).toBeWithin(
    1e-15,
    7 / 11,
  )
  expect(scoreOf(marks, { closure: 0, wall: 0, nesting: 0, seat: 0, sensitivity: 0, material: 0 })).toBe(0)
})

test('boards: the narrowest that will do, and what of it becomes rings', () => {
  const boards = [100, 140, 190].map(mm)
  expect(boardFor(100, boards)).toBe(100)
  expect(boardFor(101, boards)).toBe(140)
  expect(boardFor(191, boards)).toBeUndefined()
  expect(boardFor(73, [])).toBe(73)
  const blanks = { outsideDiameter: 120, outerLandDiameter: 80, innerLandDiameter: 60, bore: 20 }
  const rings = (Math.PI / 4) * (120 * 120 - 80 * 80 + 60 * 60 - 20 * 20)
  expect(materialUsed(blanks, true, boards)).toBeWithin(1e-12, rings / (120 * 140))
  expect(materialUsed(blanks, false, boards)).toBeWithin(1e-12, rings / (120 * 140 + 60 * 100))
  expect(materialUsed({ ...blanks, outsideDiameter: 191 }, true, boards)).toBeUndefined()
})
