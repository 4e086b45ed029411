// Rule of woodturners: diameter [in] times turns a minute between 6000 and 9000 (a woodturners' forum), and the most for a
// diameter, rounded, as lathesong.com prints it. Tolerance: half a turn. 9000 is 12.0 m/s at the rim.
import { expect, test } from 'vitest'
import { resolveMaking } from '#shared/making/defaults.ts'
import { turningOf } from '#shared/making/work-holding.ts'
import { inches, mm } from '#shared/units/length.ts'

const turning = (diameter: number) => {
  const [circle, hole] = [inches(diameter), mm(10)]
  const finish = { finishCircle: circle, finishHole: hole, cutCircle: circle, cutHole: hole }
  return turningOf({ ...finish, roughCircle: circle, thickness: mm(20), pieces: 1 }, resolveMaking({}, 'in'))
}

test.each([
  [4, 2250],
  [6, 1500],
  [8, 1125],
  [10, 900],
  [12, 750],
  [14, 643],
  [16, 563],
  [18, 500],
  [20, 450],
])('%s in: %s turns a minute at the most, two thirds of it at the least', (diameter, most) => {
  const { speed, rimSpeed } = turning(diameter)
  expect(speed.max).toBeWithin(0.5, most)
  expect(speed.min / speed.max).toBeWithin(1e-12, 6000 / 9000)
  expect(rimSpeed).toBeWithin(0.05, 12)
})
