import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { meanRise, plateAtRest, restByOrder } from '#shared/geometry/plate-on-balls.ts'
import { mm } from '#shared/units/length.ts'
import { normals, uniforms } from '#tests/support/chance.ts'
import { ballCount, between } from '#tests/support/inputs.ts'

const heights = ballCount.chain((count) => fc.array(between(15, 17), { minLength: count, maxLength: count }))

/** Of a ball's place on a circle of radius 1. */
const place = (ball: number, count: number) => {
  const turn = (2 * Math.PI * ball) / count
  return [Math.cos(turn), Math.sin(turn)] as const
}

test('the plate lies on three balls, none stands out of it, and their shares hold up a load over the middle', () => {
  fc.assert(
    fc.property(heights, (balls) => {
      const { carriers, shares, height, mostClearance } = plateAtRest(balls)
      const sums = [0, 0, 0, 0]
      carriers.forEach((ball, which) => {
        const share = shares[which] ?? Number.NaN
        const [x, y] = place(ball, balls.length)
        ;[1, x, y, balls[ball] ?? Number.NaN].forEach((part, sum) => {
          sums[sum] = (sums[sum] ?? 0) + share * part
        })
        expect(share).toBeGreaterThanOrEqual(-1e-9)
        expect(share).toBeLessThanOrEqual(0.5 + 1e-9)
      })
      // forces and both moments; and the height over the middle is that of the three there
      expect(sums[0]).toBeWithin(1e-9, 1)
      expect(sums[1]).toBeWithin(1e-9, 0)
      expect(sums[2]).toBeWithin(1e-9, 0)
      expect(sums[3]).toBeWithin(1e-9, height)
      expect(mostClearance).toBeGreaterThanOrEqual(0)
      expect(mostClearance).toBeLessThanOrEqual(8)
    }),
  )
})

test('no three balls whose triangle holds the middle carry it higher: tried for all of them', () => {
  fc.assert(
    fc.property(fc.array(between(15, 17), { minLength: 3, maxLength: 9 }), (balls) => {
      const count = balls.length
      let highest = Number.NEGATIVE_INFINITY
      for (let one = 0; one < count; one++) {
        for (let two = one + 1; two < count; two++) {
          for (let three = two + 1; three < count; three++) {
            const [a, b, c] = [place(one, count), place(two, count), place(three, count)]
            const cross = (p: readonly [number, number], q: readonly [number, number]) => p[0] * q[1] - p[1] * q[0]
            const parts = [cross(b, c), cross(c, a), cross(a, b)]
            const whole = parts.reduce((sum, part) => sum + part, 0)
            if (!parts.every((part) => part / whole > -1e-12)) continue
            const over = [one, two, three].reduce(
              (sum, ball, which) => sum + ((balls[ball] ?? 0) * (parts[which] ?? 0)) / whole,
              0,
            )
            highest = Math.max(highest, over)
          }
        }
      }
      expect(plateAtRest(balls).height).toBeWithin(1e-9, highest)
    }),
  )
})

describe('by hand', () => {
  test('one ball of four that stands out by 1: it and the one opposite carry, and the plate rises by half of that over the middle', () => {
    const { height, shares, rise } = plateAtRest([17, 16, 16, 16])
    expect(height).toBeWithin(1e-12, 16.5)
    expect(shares.toSorted((one, other) => other - one)).toEqual(
      [0.5, 0.5, 0].map((share) => expect.closeTo(share, 12)),
    )
    expect(rise).toBeWithin(1e-12, Math.hypot(0.5, 0.5))
  })

  test('three balls carry it whatever their heights, a third each; equal ones leave it level', () => {
    const { shares, mostClearance } = plateAtRest([15, 16, 17])
    for (const share of shares) expect(share).toBeWithin(1e-12, 1 / 3)
    expect(mostClearance).toBeWithin(1e-12, 0)
    expect(plateAtRest([16, 16, 16, 16, 16]).rise).toBeWithin(1e-12, 0)
  })

  test('fewer than three carry nothing', () => {
    expect(() => plateAtRest([16, 16])).toThrow(/at least 3/)
  })
})

test.each([3, 4, 5, 6, 8, 12, 24, 60, 200])(
  'on %d balls that scatter it stands as much higher as trials have it',
  (count) => {
    const normal = normals(uniforms(count))
    const trials = 2000
    let rises = 0
    for (let trial = 0; trial < trials; trial++) {
      const balls = Array.from({ length: count }, () => normal())
      rises += plateAtRest(balls).height - balls.reduce((sum, height) => sum + height, 0) / count
    }
    // four standard errors of the trials come to 0.05, the estimate is within 0.1
    expect(meanRise(count, mm(1))).toBeWithin(0.15, rises / trials)
    expect(meanRise(3, mm(1))).toBeWithin(1e-12, 0)
  },
)

test('a rise is of three balls or more', () => {
  expect(() => meanRise(2, mm(1))).toThrow(RangeError)
  expect(() => meanRise(3, mm(-1))).toThrow(RangeError)
})

test('orders are judged as single rests are, and neither turning nor mirroring changes how a plate rises', () => {
  fc.assert(
    fc.property(fc.array(between(15, 17), { minLength: 3, maxLength: 12 }), fc.nat(11), (balls, shift) => {
      const count = balls.length
      const judge = restByOrder(balls)
      const order = [...balls.keys()]
      const turned = order.map((place) => (place + shift) % count)
      for (const each of [order, turned, turned.toReversed()]) {
        const { rise, height, shares } = plateAtRest(each.map((ball) => balls[ball] ?? Number.NaN))
        const judged = judge(each)
        expect(judged.rise).toBe(rise)
        expect(judged.height).toBe(height)
        expect(judged.shares).toEqual(shares)
        expect(rise).toBeWithin(1e-9, plateAtRest(balls).rise)
      }
    }),
  )
})

test('two opposite balls carry it: it tips to the steeper side until it meets a third', () => {
  // over the line of 0 and 3 it is 17 high; ball 1, at 60°, is met at 16.5, ball 4 and 5 at 16
  const { rise, mostClearance, shares } = plateAtRest([17, 16.5, 16, 17, 16, 16])
  expect(shares.toSorted((one, other) => one - other)).toEqual([0, 0.5, 0.5].map((share) => expect.closeTo(share, 12)))
  expect(rise).toBeWithin(1e-12, 1 / Math.sin(Math.PI / 3))
  // then balls 1 and 2, on the other side, are a whole 1 below the line and it is as far up there
  expect(mostClearance).toBeWithin(1e-12, 2)
})
