import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { gapOnPath, type Lobes } from '#shared/geometry/balls-on-a-path.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { closingRadius, tightestBottomRadius, unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { mm } from '#shared/units/length.ts'
import { ballCount, between } from '#tests/support/inputs.ts'

const gapOf = (balls: readonly number[], centre: (diameter: number) => number, lobes?: Lobes) =>
  gapOnPath(
    balls.length,
    (ball) => centre(balls[ball] ?? 0),
    (ball) => (balls[ball] ?? 0) / 2,
    lobes,
  )

test('on the bottom of a round groove it is the gap of unequal balls, too tight ones and all', () => {
  fc.assert(
    fc.property(
      ballCount.chain((count) => fc.array(between(1, 1.4), { minLength: count, maxLength: count })),
      between(0.5, 1.5),
      (balls, part) => {
        const bottom = Math.max(1.001 * tightestBottomRadius(balls), part * closingRadius(balls))
        expect(gapOf(balls, (diameter) => bottom - diameter / 2)).toBeWithin(
          1e-12 * balls.length * bottom,
          unequalBallGap(mm(bottom), balls),
        )
      },
    ),
  )
})

test('balls on the edges of a groove stand where the seat says', () => {
  const groove = { radius: mm(7), depth: mm(3) }
  const balls = [16, 16.1, 15.9, 16, 15.95, 16.05]
  const land = 24
  const gap = gapOf(balls, (diameter) => land + seatIn(groove, mm(diameter)).depth - diameter / 2)
  // The mean ball's bottom, 16 mm: what is left is how much deeper smaller balls sit, some thousandths of a millimetre.
  const bottom = land + seatIn(groove, mm(16)).depth
  expect(gap).toBeWithin(0.2, unequalBallGap(mm(bottom), balls))
  expect(gap).not.toBeWithin(1e-4, unequalBallGap(mm(bottom), balls))
})

/** Another road: each ball walked along the path, by halving, until it touches the one before. Angles and cosines. */
function walked(count: number, radius: number, centre: number, amplitude: number, direction: number): number {
  const out = (angle: number) => centre + amplitude * Math.cos(2 * (angle - direction))
  const distance = (one: number, other: number) =>
    Math.hypot(
      out(one) * Math.cos(one) - out(other) * Math.cos(other),
      out(one) * Math.sin(one) - out(other) * Math.sin(other),
    )
  let at = 0
  for (let ball = 1; ball < count; ball++) {
    let [near, far] = [at, at + (3 * radius) / centre]
    for (let halving = 0; halving < 60; halving++) {
      const middle = (near + far) / 2
      if (distance(at, middle) < 2 * radius) near = middle
      else far = middle
    }
    at = near
  }
  return distance(0, at) - 2 * radius
}

describe('a groove out of round by two lobes', () => {
  const [COUNT, RADIUS, CENTRE] = [12, 8, 31.05]
  const balls = Array.from({ length: COUNT }, () => 2 * RADIUS)
  const lobed = (amplitude: number, direction: number) =>
    gapOf(balls, () => CENTRE, { amplitude, cosine: Math.cos(2 * direction), sine: Math.sin(2 * direction) })

  test('the gap is that of balls walked along the path one after another', () => {
    for (const amplitude of [0.05, 0.2, -0.3]) {
      for (const direction of [0, 0.4, 1.1, 2.5]) {
        expect(lobed(amplitude, direction)).toBeWithin(1e-9, walked(COUNT, RADIUS, CENTRE, amplitude, direction))
      }
    }
  })

  test('which hardly moves: with the square of the amplitude, on the mean over all directions', () => {
    const round = lobed(0, 0)
    const mean = (amplitude: number) => {
      const directions = Array.from({ length: 64 }, (_, index) => (index * Math.PI) / 64)
      return directions.reduce((sum, direction) => sum + lobed(amplitude, direction), 0) / 64 - round
    }
    const [little, twice] = [mean(0.1), mean(0.2)]
    expect(Math.abs(little)).toBeLessThan(0.01)
    expect(twice / little).toBeWithin(0.05, 4)
  })
})
