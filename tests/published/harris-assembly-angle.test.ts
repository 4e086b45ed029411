// Harris, Rolling Bearing Analysis, assembly angle: φ = 2 (Z − 1) D / dm for small angles, 2 (Z − 1) asin(D / dm) exactly.
// Nine balls of 12.7 mm on 65 mm: 179.12° and 180.28°. The formulas were seen in a thread on eng-tips.com that quotes
// them, the figures are computed from both. Tolerance: half the last printed digit.
import { expect, test } from 'vitest'
import { eccentricFilling, fillingAngle } from '#shared/geometry/eccentric-filling.ts'
import { mm } from '#shared/units/length.ts'

test('Harris: 9 balls of 12.7 mm on 65 mm fill 180.28°', () => {
  expect(fillingAngle(9, mm(12.7), mm(65))).toBeWithin(0.005, 180.28)
})

test('Harris: by the small-angle form, which is that of ever smaller balls, 179.12°', () => {
  const SMALLER = 1e6
  expect(fillingAngle(9, mm(12.7 / SMALLER), mm(65)) * SMALLER).toBeWithin(0.005, 179.12)
})

test('Harris: by a half turn exactly, that bearing takes eight balls; with the least play nine, as its makers put in', () => {
  const rings = { ballDiameter: mm(12.7), pitchDiameter: mm(65), landGap: mm(7) }
  expect(eccentricFilling({ ...rings, play: mm(0) })).toMatchObject({ limit: 180, mostBalls: 8 })
  expect(eccentricFilling({ ...rings, play: mm(0.001) }).mostBalls).toBe(9)
})
