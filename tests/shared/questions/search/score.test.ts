import fc from 'fast-check'
import { expect, test } from 'vitest'
import { resolveSearch } from '#shared/questions/search/input.ts'
import { boardFor, materialUsed } from '#shared/questions/search/material.ts'
import { loadMark, scoreOf, seatMark, wallMark } from '#shared/questions/search/score.ts'
import { mm } from '#shared/units/length.ts'
import { between } from '#tests/support/inputs.ts'

test('every mark runs from 0 to 1', () => {
  const any = between(-1e6, 1e6)
  fc.assert(
    fc.property(any, any, between(1, 50), (one, other, size) => {
      const marks = [
        wallMark(one, size),
        seatMark([{ onBottom: true, conformity: Math.abs(one) }]),
        loadMark(Math.abs(other)),
      ]
      for (const mark of marks) {
        expect(mark).toBeGreaterThanOrEqual(0)
        expect(mark).toBeLessThanOrEqual(1)
      }
    }),
  )
})

test('the ends: a wall of two thirds of a ball; a seat on edges; no working load, one just reached, and one of three times the load', () => {
  expect(wallMark(8, 12)).toBeWithin(1e-12, 1)
  expect(
    seatMark([
      { onBottom: true, conformity: 0.53 },
      { onBottom: false, conformity: 0.45 },
    ]),
  ).toBe(0.5)
  expect([0, 1, 3].map(loadMark)).toEqual([0, 0.5, 0.75])
})

const LIMITS = {
  units: 'mm',
  outsideDiameter: { max: mm(200) },
  bore: { min: mm(8), max: mm(8) },
  balls: [{ diameter: mm(16) }],
} as const

test('the score is the weighted mean of the marks that there are, less the deduction of a risk', () => {
  const search = resolveSearch(LIMITS)
  const marks = { running: 0.75, wall: 0.5, seat: 1, material: 0.5, nesting: 0 }
  const mean = (4 * 0.75 + 2 * 0.5 + 2 * 1 + 0.5 + 0) / 10
  expect(scoreOf(marks, search, false)).toBeWithin(1e-15, mean)
  expect(scoreOf(marks, search, true)).toBeWithin(1e-15, mean * 0.95)
  const loaded = resolveSearch({ ...LIMITS, load: { radialLoad: 10 } })
  expect(scoreOf(marks, loaded, false)).toBeWithin(1e-15, (10 * mean + 2) / 12)
  const none = { running: 0, wall: 0, seat: 0, material: 0, nesting: 0 }
  expect(scoreOf(marks, resolveSearch({ ...LIMITS, weights: none }), false)).toBe(0)
})

test('boards: the narrowest that will do, and what of it becomes rings', () => {
  const boards = [100, 140, 190].map(mm)
  expect(boardFor(100, boards)).toBe(100)
  expect(boardFor(101, boards)).toBe(140)
  expect(boardFor(191, boards)).toBeUndefined()
  expect(boardFor(73, [])).toBe(73)
  const discs = [
    { outside: 120, hole: 80 },
    { outside: 60, hole: 'bore' as const },
  ]
  const rings = (Math.PI / 4) * (120 * 120 - 80 * 80 + 60 * 60 - 20 * 20)
  expect(materialUsed(discs, 20, true, boards)).toBeWithin(1e-12, rings / (120 * 140))
  expect(materialUsed(discs, 20, false, boards)).toBeWithin(1e-12, rings / (120 * 140 + 60 * 100))
  expect(materialUsed([{ outside: 191, hole: 80 }], 20, true, boards)).toBeUndefined()
})
