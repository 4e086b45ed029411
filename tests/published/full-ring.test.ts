// Pitch diameter of n touching balls of diameter 1, 1 / sin(180°/n): the chord table turned round, from memory and
// recomputed. Six balls and four are exact by plain geometry: a hexagon's side is its radius, a square's r √2.
// Tolerance: half the last printed digit; for the exact ones, what a double holds.
import { expect, test } from 'vitest'
import { closedPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'

test.each([
  [3, '1.154701'],
  [4, '1.414214'],
  [6, '2'],
  [8, '2.613126'],
  [10, '3.236068'],
  [12, '3.863703'],
  [16, '5.125831'],
  [20, '6.392453'],
  [24, '7.661298'],
])('%s balls of diameter 1 close on a pitch diameter of %s', (count, pitchDiameter) => {
  expect(2 * closedPitchRadius(mm(1), count)).toBeWithin(5e-7, Number(pitchDiameter))
})

test('six balls: the pitch radius is the ball diameter', () => {
  expect(closedPitchRadius(mm(19.05), 6)).toBeWithin(1e-14, 19.05)
})

test('four balls: the pitch radius is the ball radius times √2', () => {
  expect(closedPitchRadius(mm(19.05), 4)).toBeWithin(1e-14, (19.05 / 2) * Math.SQRT2)
})

test('ten balls: the golden section, R = φ Dw', () => {
  expect(closedPitchRadius(mm(1), 10)).toBeWithin(1e-15, (1 + Math.sqrt(5)) / 2)
})
