import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { grooveDepthForSeat, seatIn } from '#shared/geometry/seat.ts'
import { mm } from '#shared/units/length.ts'
import { distance, type Point } from '#tests/support/ball-centres.ts'
import { between, magnitude } from '#tests/support/inputs.ts'

/** Conformities below a half: the ball rides on the edges. */
const tight = between(0.05, 0.4999)
const round = between(0.5, 2)
const share = between(0.001, 1)
const ball = magnitude(0.001, 10_000)
const groove = (conformity: number, of: number, diameter: number) => ({
  radius: mm(conformity * diameter),
  depth: mm(conformity * of * diameter),
})

/** Least distance from a point to a circle round the x axis, by ever finer looks at the circle: no formula of seats. */
function distanceToCircle(from: Point, radius: number, x: number): number {
  let [best, centre, reach] = [Number.POSITIVE_INFINITY, 0, Math.PI]
  for (let look = 0; look < 30; look++) {
    let nearest = centre
    for (let i = -20; i <= 20; i++) {
      const turn = centre + (reach * i) / 20
      const far = distance(from, [x, radius * Math.cos(turn), radius * Math.sin(turn)])
      if (far < best) [best, nearest] = [far, turn]
    }
    centre = nearest
    reach /= 8
  }
  return best
}

describe('on the bottom', () => {
  test('a groove at least as round as the ball: as deep as the groove', () => {
    fc.assert(
      fc.property(round, share, ball, (conformity, of, diameter) => {
        const cut = groove(conformity, of, diameter)
        expect(seatIn(cut, mm(diameter))).toEqual({
          on: 'bottom',
          depth: cut.depth,
          perGrooveDepth: 1,
          perBallDiameter: 0,
        })
      }),
    )
  })

  test('equal within rounding counts as bottom, a thousandth less does not', () => {
    const seatAt = (radius: number) => seatIn({ radius: mm(radius), depth: mm(3) }, mm(16)).on
    expect(seatAt(8)).toBe('bottom')
    expect(seatAt(8 - 1e-9)).toBe('bottom')
    expect(seatAt(7.992)).toBe('edges')
  })

  test('no step where bottom turns into edges', () => {
    const depth = mm(3.2)
    expect(seatIn({ radius: mm(8 - 1e-7), depth }, mm(16)).depth).toBeWithin(1e-7, depth)
  })
})

describe('on the edges', () => {
  test('in space: a ball so deep in an outer ring touches the circles of both edges, and they alone hold it', () => {
    fc.assert(
      fc.property(tight, share, between(1.2, 40), (conformity, of, pitchRadius) => {
        const seat = seatIn(groove(conformity, of, 1), mm(1))
        const halfWidth = Math.sqrt(conformity ** 2 - (conformity * (1 - of)) ** 2)
        const landRadius = pitchRadius + 0.5 - seat.depth
        expect(distanceToCircle([0, pitchRadius, 0], landRadius, halfWidth)).toBeWithin(1e-7, 0.5)
        expect(distanceToCircle([0, pitchRadius, 0], landRadius, -halfWidth)).toBeWithin(1e-7, 0.5)
        // the bottom of the groove is farther out than the ball
        expect(landRadius + conformity * of).toBeGreaterThan(pitchRadius + 0.5)
      }),
    )
  })

  test('in space: the same on an inner ring', () => {
    fc.assert(
      fc.property(tight, share, between(1.2, 40), (conformity, of, pitchRadius) => {
        const seat = seatIn(groove(conformity, of, 1), mm(1))
        const halfWidth = Math.sqrt(conformity ** 2 - (conformity * (1 - of)) ** 2)
        expect(distanceToCircle([0, pitchRadius, 0], pitchRadius - 0.5 + seat.depth, halfWidth)).toBeWithin(1e-7, 0.5)
      }),
    )
  })

  test('shallower than the groove, and less than cut for cut', () => {
    fc.assert(
      fc.property(tight, share, ball, (conformity, of, diameter) => {
        const cut = groove(conformity, of, diameter)
        const seat = seatIn(cut, mm(diameter))
        expect(seat.on).toBe('edges')
        expect(seat.depth).toBeLessThan(cut.depth)
        expect(seat.perGrooveDepth).toBeLessThan(1)
        expect(seat.perBallDiameter).toBeLessThan(0)
      }),
    )
  })

  test('slopes against differences of seats', () => {
    fc.assert(
      fc.property(between(0.05, 0.49), between(0.01, 0.95), (conformity, of) => {
        const { radius, depth } = groove(conformity, of, 1)
        const step = 1e-6 * depth
        const seatAt = (cut: number, diameter: number) => seatIn({ radius, depth: mm(cut) }, mm(diameter)).depth
        const { perGrooveDepth, perBallDiameter } = seatIn({ radius, depth }, mm(1))
        expect(perGrooveDepth).toBeWithin(1e-5, (seatAt(depth + step, 1) - seatAt(depth - step, 1)) / (2 * step))
        expect(perBallDiameter).toBeWithin(1e-5, (seatAt(depth, 1 + 1e-6) - seatAt(depth, 1 - 1e-6)) / 2e-6)
      }),
    )
  })
})

describe('the depth of groove for a seat', () => {
  test('there and back, on the bottom and on the edges', () => {
    fc.assert(
      fc.property(between(0.05, 2), between(0.001, 0.95), ball, (conformity, of, diameter) => {
        const cut = groove(conformity, of, diameter)
        const depth = grooveDepthForSeat(seatIn(cut, mm(diameter)).depth, cut.radius, mm(diameter))
        expect(depth).toBeWithin(1e-11 * cut.depth, cut.depth)
      }),
    )
  })

  test('undefined where no depth of the groove lets the ball sit so deep', () => {
    expect(grooveDepthForSeat(mm(8.5), mm(8.48), mm(16))).toBeUndefined()
    // a half circle of 5 mm holds a 16 mm ball 8 − √(64 − 25) = 1.755 mm deep
    expect(grooveDepthForSeat(mm(1.75), mm(5), mm(16))).toBeWithin(0.2, 4.9)
    expect(grooveDepthForSeat(mm(1.76), mm(5), mm(16))).toBeUndefined()
    expect(grooveDepthForSeat(mm(14), mm(7.9), mm(16))).toBeUndefined()
  })
})

describe('refused, as a bug of ours', () => {
  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('a ball, or a seat, of %s', (size) => {
    expect(() => seatIn({ radius: mm(8), depth: mm(3) }, mm(size))).toThrow(RangeError)
    expect(() => grooveDepthForSeat(mm(size), mm(8), mm(16))).toThrow(RangeError)
  })
})
