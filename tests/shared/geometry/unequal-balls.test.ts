import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ballGap, closedPitchRadius, pitchRadiusForGap } from '#shared/geometry/ring-of-balls.ts'
import { closingRadius, unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { mm } from '#shared/units/length.ts'

const count = fc.integer({ min: 3, max: 40 })
const share = fc.double({ min: 0, max: 0.6, noNaN: true })

test('equal balls are the closed ring: the same gap at every radius', () => {
  fc.assert(
    fc.property(count, share, (balls, gap) => {
      const radius = pitchRadiusForGap(mm(16 * gap), mm(16), balls)
      const equal = Array.from({ length: balls }, () => 16)
      expect(unequalBallGap(mm(radius + 8), equal)).toBeWithin(1e-10, ballGap(radius, mm(16), balls))
    }),
  )
})

test('equal balls close where the closed ring does', () => {
  expect(closingRadius(Array.from({ length: 12 }, () => 16))).toBeWithin(1e-10, closedPitchRadius(mm(16), 12) + 8)
})

test('the radius for a gap leaves that gap, whatever the balls', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 14, max: 18, noNaN: true }), { minLength: 5, maxLength: 40 }),
      share,
      (balls, gap) => {
        expect(unequalBallGap(closingRadius(balls, mm(16 * gap)), balls)).toBeWithin(1e-8, 16 * gap)
      },
    ),
  )
})

test('a second road: centres placed one after another by coordinates', () => {
  const balls = [16, 15.7, 16.3, 15.9, 16.1, 16.2, 15.8, 16, 15.6, 16.4, 16, 16.1]
  const bottom = 39.4
  let angle = 0
  const at = (diameter: number, turned: number) =>
    [(bottom - diameter / 2) * Math.cos(turned), (bottom - diameter / 2) * Math.sin(turned)] as const
  const [x0, y0] = at(balls[0] ?? 0, 0)
  for (let i = 1; i < balls.length; i++) {
    const [a, b] = [bottom - (balls[i - 1] ?? 0) / 2, bottom - (balls[i] ?? 0) / 2]
    const apart = ((balls[i - 1] ?? 0) + (balls[i] ?? 0)) / 2
    angle += Math.acos((a * a + b * b - apart * apart) / (2 * a * b))
  }
  const [x, y] = at(balls.at(-1) ?? 0, angle)
  const gap = Math.hypot(x - x0, y - y0) - ((balls[0] ?? 0) + (balls.at(-1) ?? 0)) / 2
  expect(unequalBallGap(mm(bottom), balls)).toBeWithin(1e-10, gap)
})

test('the order turned round is the same ring', () => {
  const balls = [16, 15.7, 16.3, 15.9, 16.1, 16.2, 15.8, 16]
  expect(unequalBallGap(mm(30), balls)).toBeWithin(1e-12, unequalBallGap(mm(30), balls.toReversed()))
})

test('a size that is none is refused', () => {
  expect(() => unequalBallGap(mm(30), [16, 0, 16])).toThrow(RangeError)
  expect(() => unequalBallGap(mm(30), [16, Number.NaN, 16])).toThrow(RangeError)
})
