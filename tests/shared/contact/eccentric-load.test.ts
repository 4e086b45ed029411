import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { farthestHeld, mostOnOne, sharedBeside } from '#shared/contact/eccentric-load.ts'
import { ballCount, between } from '#tests/support/inputs.ts'

const phases = fc.constantFrom<0 | 0.5>(0, 0.5)
const cosineOf = (ball: number, phase: number, count: number) => Math.cos((2 * Math.PI * (ball + phase)) / count)

test('forces and moment hold the load up, no ball pulls, and the two sides of the load carry alike', () => {
  fc.assert(
    fc.property(ballCount, between(1, 2), between(0, 1), phases, (count, exponent, part, phase) => {
      const beside = part * farthestHeld(count)
      const { shares } = sharedBeside(count, exponent, beside, phase)
      let [force, moment] = [0, 0]
      shares.forEach((share, ball) => {
        force += share
        moment += share * cosineOf(ball, phase, count)
        expect(share).toBeGreaterThanOrEqual(0)
        const other = phase === 0 ? (count - ball) % count : count - 1 - ball
        expect(share).toBeWithin(1e-9, shares[other] ?? Number.NaN)
      })
      expect(force).toBeWithin(1e-9, 1)
      expect(moment).toBeWithin(1e-9, beside)
    }),
  )
})

describe('in closed form', () => {
  test('as long as no ball is free a straight law shares as F/Z (1 + 2 cos ψ e/R) does', () => {
    fc.assert(
      fc.property(ballCount, between(0, 0.49), phases, (count, beside, phase) => {
        fc.pre(beside < farthestHeld(count))
        sharedBeside(count, 1, beside, phase).shares.forEach((share, ball) => {
          expect(share * count).toBeWithin(1e-9 * count, 1 + 2 * beside * cosineOf(ball, phase, count))
        })
      }),
    )
  })

  test('three balls carry as a stool with three legs does, whatever the wood: F/3 (1 + 2 cos ψ e/R)', () => {
    fc.assert(
      fc.property(between(1, 2), between(0, 1), phases, (exponent, part, phase) => {
        const beside = part * farthestHeld(3)
        sharedBeside(3, exponent, beside, phase).shares.forEach((share, ball) => {
          expect(share).toBeWithin(1e-9, (1 + 2 * beside * cosineOf(ball, phase, 3)) / 3)
        })
      }),
    )
  })

  test('over the middle each carries the same; so little beside it that no digit tells, too', () => {
    for (const beside of [0, 1e-300, 1e-18, 1e-13]) {
      for (const share of sharedBeside(24, 1.5, beside, 0).shares) expect(share).toBeWithin(1e-12, 1 / 24)
    }
  })

  test('a little beside the middle any law is the straight one, to first order', () => {
    const { shares } = sharedBeside(24, 1.5, 0.01, 0)
    expect(((shares[0] ?? Number.NaN) * 24 - 1) / 0.02).toBeWithin(0.01, 1)
  })
})

test('the farther out, the more the nearest carries, to all of it on the line between two', () => {
  const nearest = (beside: number) => sharedBeside(12, 1.5, beside, 0.5).shares[0] ?? Number.NaN
  const places = Array.from({ length: 21 }, (_, step) => (step / 20) * farthestHeld(12))
  const carried = places.map(nearest)
  carried.slice(1).forEach((share, step) => {
    expect(share).toBeGreaterThan(carried[step] ?? Number.NaN)
  })
  expect(carried.at(-1)).toBeWithin(1e-3, 0.5)
})

test.each([
  [2, 1.5, 0],
  [12, 0.5, 0],
  [12, 1.5, -0.1],
  [12, 1.5, 0.97],
  [12, 1.5, Number.NaN],
])('%s balls, exponent %s, a load at %s are refused', (count, exponent, beside) => {
  expect(() => sharedBeside(count, exponent, beside, 0)).toThrow(RangeError)
})

describe('the most that one ball of three can carry', () => {
  type Place = readonly [x: number, y: number]
  const twiceArea = ([x1, y1]: Place, [x2, y2]: Place, [x3, y3]: Place) => (x2 - x1) * (y3 - y1) - (x3 - x1) * (y2 - y1)

  /** By statics: with any three of the balls under the load, on any side of the axis, what the first of them carries. */
  function mostOfAllThrees(count: number, beside: number): number {
    const places = Array.from({ length: count }, (_, ball): Place => {
      const angle = (2 * Math.PI * ball) / count
      return [Math.cos(angle), Math.sin(angle)]
    })
    const [first = [1, 0], ...others] = places
    let most = 0
    for (let side = 0; side < 360; side++) {
      const load: Place = [beside * Math.cos((side * Math.PI) / 180), beside * Math.sin((side * Math.PI) / 180)]
      for (const second of others) {
        for (const third of others) {
          const whole = twiceArea(first, second, third)
          if (!(whole > 1e-9)) continue
          const [one, two, three] = [
            twiceArea(load, second, third) / whole,
            twiceArea(first, load, third) / whole,
            twiceArea(first, second, load) / whole,
          ]
          if (Math.min(one, two, three) >= -1e-12) most = Math.max(most, one)
        }
      }
    }
    return most
  }

  test.each([3, 4, 5, 6, 7, 8, 11])('of %d balls none of any three carries more, and one comes to it', (count) => {
    for (const part of [0, 0.1, 0.4, 0.7, 0.99]) {
      const beside = part * farthestHeld(count)
      expect(mostOfAllThrees(count, beside)).toBeWithin(1e-9, mostOnOne(count, beside))
    }
  })

  test('equal balls never load one as much', () => {
    fc.assert(
      fc.property(ballCount, between(1, 2), between(0, 1), phases, (count, exponent, part, phase) => {
        const beside = part * farthestHeld(count)
        const { shares } = sharedBeside(count, exponent, beside, phase)
        expect(Math.max(...shares)).toBeLessThanOrEqual(mostOnOne(count, beside) + 1e-9)
      }),
    )
  })
})
