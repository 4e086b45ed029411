import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { BallPlaces } from '#shared/geometry/unequal-ball-places.ts'
import { closingRadius, unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { mm } from '#shared/units/length.ts'
import { distanceToEllipse } from '#tests/support/ellipse-by-points.ts'
import { ballCount, between } from '#tests/support/inputs.ts'
import { placesOnCircle, placesOnEllipse } from '#tests/support/play-among-balls.ts'

const balls = ballCount.chain((count) => fc.array(between(0.97, 1.03), { minLength: count, maxLength: count }))

const at = (row: Float64Array, ball: number): number => row.at(ball) ?? Number.NaN

/** Straight-line gap between two balls. */
const gapOf = ({ x, y, radius }: BallPlaces, one: number, other: number): number =>
  Math.hypot(at(x, one) - at(x, other), at(y, one) - at(y, other)) - at(radius, one) - at(radius, other)

describe('balls on a round groove', () => {
  test('each lies on the bottom, neighbours touch, and the last leaves the ball gap', () => {
    fc.assert(
      fc.property(balls, between(0, 0.05), (diameters, wider) => {
        const bottom = mm(closingRadius(diameters) * (1 + wider))
        const places = placesOnCircle(bottom, diameters, 'whole')
        diameters.forEach((diameter, ball) => {
          const away = Math.hypot(at(places.x, ball), at(places.y, ball))
          expect(away).toBeWithin(1e-13 * bottom, bottom - diameter / 2)
          if (ball > 0) expect(gapOf(places, ball - 1, ball)).toBeWithin(1e-12 * bottom, 0)
        })
        expect(gapOf(places, -1, 0)).toBeWithin(2e-10 * bottom, unequalBallGap(bottom, diameters))
      }),
    )
  })

  test('spread, the gap is an equal angle between all neighbours; of equal balls they stand evenly', () => {
    fc.assert(
      fc.property(balls, between(-0.01, 0.05), (diameters, wider) => {
        const bottom = mm(Math.max(closingRadius(diameters) * (1 + wider), 1.03))
        const [spread, whole] = (['spread', 'whole'] as const).map((gap) => placesOnCircle(bottom, diameters, gap))
        if (spread === undefined || whole === undefined) throw new Error('two places')
        const angle = ({ x, y }: BallPlaces, ball: number): number =>
          Math.atan2(
            at(x, ball - 1) * at(y, ball) - at(y, ball - 1) * at(x, ball),
            at(x, ball - 1) * at(x, ball) + at(y, ball - 1) * at(y, ball),
          )
        const share = angle(spread, 1) - angle(whole, 1)
        for (let ball = 2; ball < diameters.length; ball++) {
          expect(angle(spread, ball) - angle(whole, ball)).toBeWithin(1e-11, share)
        }
      }),
    )
    const { x, y } = placesOnCircle(
      mm(40),
      Array.from({ length: 8 }, () => 16),
      'spread',
    )
    for (let ball = 0; ball < 8; ball++) {
      expect(at(x, ball)).toBeWithin(1e-13 * 40, 32 * Math.cos((ball * Math.PI) / 4))
      expect(at(y, ball)).toBeWithin(1e-13 * 40, 32 * Math.sin((ball * Math.PI) / 4))
    }
  })

  test('a groove in which two balls find no room, and lists that are no rings, are refused', () => {
    expect(() => placesOnCircle(mm(0.9), [1, 1, 1], 'whole')).toThrow(RangeError)
    expect(() => placesOnCircle(mm(3), [1, 1], 'whole')).toThrow(RangeError)
    expect(() => placesOnCircle(mm(3), [1, -1, 1], 'whole')).toThrow(RangeError)
    expect(() => placesOnCircle(mm(Number.NaN), [1, 1, 1], 'whole')).toThrow(RangeError)
  })
})

describe('balls on an elliptic groove', () => {
  test('each touches the bottom, and neighbours one another', () => {
    fc.assert(
      fc.property(
        fc.array(between(0.97, 1.03), { minLength: 6, maxLength: 14 }),
        between(0.96, 1.04),
        between(0, 6),
        (diameters, stretch, start) => {
          const bottom = {
            along: mm(closingRadius(diameters) * 1.06),
            across: mm(closingRadius(diameters) * 1.06 * stretch),
          }
          const places = placesOnEllipse(bottom, diameters, start)
          if (places === undefined) throw new Error('there is room')
          diameters.forEach((diameter, ball) => {
            const centre = [at(places.x, ball), at(places.y, ball)] as const
            expect(distanceToEllipse(centre, bottom.along, bottom.across)).toBeWithin(1e-9, diameter / 2)
            if (ball > 0) expect(gapOf(places, ball - 1, ball)).toBeWithin(1e-9, 0)
          })
        },
      ),
      { numRuns: 40 },
    )
  })

  test('a round one is the circle; a groove too tight has no room', () => {
    const diameters = [16, 15.9, 16.2, 16.1, 15.8, 16, 16]
    const round = placesOnEllipse({ along: mm(30), across: mm(30) }, diameters, 0)
    const circle = placesOnCircle(mm(30), diameters, 'whole')
    for (let ball = 0; ball < 7; ball++) {
      expect(at(round?.x ?? circle.radius, ball)).toBeWithin(1e-10, at(circle.x, ball))
      expect(at(round?.y ?? circle.radius, ball)).toBeWithin(1e-10, at(circle.y, ball))
    }
    expect(placesOnEllipse({ along: mm(22), across: mm(22) }, diameters, 0)).toBeUndefined()
    expect(() => placesOnEllipse({ along: mm(30), across: mm(9) }, diameters, 0)).toThrow(RangeError)
  })
})
