import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  ballGap,
  closedPitchRadius,
  gapPerBallDiameterAtPitchRadius,
  gapPerPitchRadius,
  leastPitchRadius,
  pitchRadiusForGap,
} from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'
import { ballCentres, distance } from '#tests/support/ball-centres.ts'
import { ballCount, between, magnitude } from '#tests/support/inputs.ts'

const diameter = magnitude(0.001, 10_000)
/** Pitch radii from where the balls but one just go in to three times the closed ring, in parts of the way. */
const openness = between(0, 1)
const radiusAt = (part: number, ball: number, count: number) => {
  const [least, most] = [leastPitchRadius(mm(ball), count), 3 * closedPitchRadius(mm(ball), count)]
  return mm(least + part * (most - least))
}
/** Gaps that a design may have: up to a whole ball, and with three balls up to where they no longer move. */
const gapOf = (part: number, ball: number, count: number) => mm((count === 3 ? 0.9 : 1) * part * ball)

describe('the closed ring', () => {
  test('leaves no gap, whatever the balls', () => {
    fc.assert(
      fc.property(diameter, ballCount, (ball, count) => {
        const closed = closedPitchRadius(mm(ball), count)
        expect(ballGap(closed, mm(ball), count)).toBeWithin(4 * count * ball * Number.EPSILON, 0)
      }),
    )
  })

  test('six balls stand at their own diameter, four at half a diagonal', () => {
    expect(closedPitchRadius(mm(16), 6)).toBeWithin(1e-14, 16)
    expect(closedPitchRadius(mm(16), 4)).toBeWithin(1e-14, 8 * Math.SQRT2)
  })

  test('every ball of it, by coordinates, touches the next and the last the first', () => {
    for (let count = 3; count <= 200; count++) {
      const centres = ballCentres(closedPitchRadius(mm(1), count), 1, count)
      centres.forEach((centre, ball) => {
        const next = centres[(ball + 1) % count] ?? centre
        expect(distance(centre, next)).toBeWithin(1e-12 * count, 1)
      })
    }
  })

  test('one ball left out, is open by Dw (2 cos(π/Z) − 1), not by a ball: by coordinates and by formula', () => {
    for (let count = 4; count <= 200; count++) {
      const closed = closedPitchRadius(mm(1), count)
      const centres = ballCentres(closed, 1, count - 1)
      const opening = 2 * Math.cos(Math.PI / count) - 1
      const [first, last] = [centres[0], centres.at(-1)]
      expect(first && last && distance(first, last) - 1).toBeWithin(1e-12 * count, opening)
      expect(ballGap(closed, mm(1), count - 1)).toBeWithin(1e-13 * count, opening)
    }
  })
})

describe('the ball gap', () => {
  test('is the distance between the first and the last of balls laid in coordinates', () => {
    fc.assert(
      fc.property(openness, ballCount, (part, count) => {
        const radius = radiusAt(part, 1, count)
        const centres = ballCentres(radius, 1, count)
        const [first, last] = [centres[0], centres.at(-1)]
        expect(ballGap(radius, mm(1), count)).toBeWithin(
          1e-11 * count,
          (first && last && distance(first, last) - 1) ?? Number.NaN,
        )
      }),
    )
  })

  test('grows with the radius all the way', () => {
    fc.assert(
      fc.property(openness, openness, ballCount, (one, other, count) => {
        fc.pre(Math.abs(one - other) > 1e-9)
        const near = radiusAt(Math.min(one, other), 16, count)
        const far = radiusAt(Math.max(one, other), 16, count)
        expect(ballGap(far, mm(16), count)).toBeGreaterThan(ballGap(near, mm(16), count))
        expect(gapPerPitchRadius(far, mm(16), count)).toBeGreaterThan(0)
      }),
    )
  })

  test('is −Dw where the other balls alone close the ring', () => {
    fc.assert(
      fc.property(diameter, ballCount, (ball, count) => {
        expect(ballGap(leastPitchRadius(mm(ball), count), mm(ball), count)).toBeWithin(
          4 * count * ball * Number.EPSILON,
          -ball,
        )
      }),
    )
  })

  test('comes to all balls but two in a row where the ring is endlessly wide, to the last digits', () => {
    for (const count of [3, 12, 200]) {
      expect(ballGap(mm(1e9), mm(1), count)).toBeWithin(4 * count * Number.EPSILON + 1e-10, count - 2)
    }
  })

  test('scales with the balls', () => {
    fc.assert(
      fc.property(openness, ballCount, magnitude(1e-3, 1e3), (part, count, scale) => {
        const radius = radiusAt(part, 1, count)
        const scaled = ballGap(mm(radius * scale), mm(scale), count) / scale
        // nearly upright at the least radius of three balls: a rounding of the radius is a rounding's root of the gap
        expect(scaled).toBeWithin(count === 3 && part < 1e-3 ? 1e-7 : 1e-12 * count, ballGap(radius, mm(1), count))
      }),
    )
  })
})

describe('the pitch radius for a gap', () => {
  test('there and back: the gap is the one that was asked for, and the radius to 1e-12', () => {
    fc.assert(
      fc.property(diameter, ballCount, between(0, 1), (ball, count, part) => {
        const gap = gapOf(part, ball, count)
        const radius = pitchRadiusForGap(gap, mm(ball), count)
        expect(ballGap(radius, mm(ball), count)).toBeWithin(4 * count * ball * Number.EPSILON, gap)
        expect(pitchRadiusForGap(ballGap(radius, mm(ball), count), mm(ball), count)).toBeWithin(1e-12 * radius, radius)
      }),
    )
  })

  test('also for gaps below 0, which do not close', () => {
    fc.assert(
      fc.property(ballCount, between(0.001, 0.99), (count, part) => {
        const radius = pitchRadiusForGap(mm(-part), mm(1), count)
        expect(ballGap(radius, mm(1), count)).toBeWithin(1e-13 * count, -part)
        expect(radius).toBeLessThan(closedPitchRadius(mm(1), count))
      }),
    )
  })

  test.each([0, 5e-324, 1e-300, 1e-17, 1e-15])('a gap of %g closes the ring', (gap) => {
    for (let count = 3; count <= 200; count++) {
      const closed = closedPitchRadius(mm(16), count)
      expect(pitchRadiusForGap(mm(gap), mm(16), count)).toBeWithin(1e-14 * closed, closed)
    }
  })

  test('whole balls more: one ball less leaves a gap of a ball, wherever it closed', () => {
    for (let count = 6; count <= 200; count++) {
      const radius = pitchRadiusForGap(mm(1), mm(1), count - 1)
      const centres = ballCentres(radius, 1, count - 1)
      const [first, last] = [centres[0], centres.at(-1)]
      expect(first && last && distance(first, last)).toBeWithin(1e-11 * count, 2)
    }
  })

  test('right up to the widest gap that there is', () => {
    for (const count of [3, 4, 12, 200]) {
      const gap = mm((count - 2) * (1 - Number.EPSILON))
      expect(ballGap(pitchRadiusForGap(gap, mm(1), count), mm(1), count)).toBeWithin(4 * count * Number.EPSILON, gap)
    }
  })
})

describe('slopes', () => {
  const STEP = 1e-6

  test('by pitch radius: against a difference of gaps', () => {
    fc.assert(
      fc.property(between(0.01, 1), ballCount, (part, count) => {
        const radius = radiusAt(part, 1, count)
        const step = STEP * radius
        const difference =
          (ballGap(mm(radius + step), mm(1), count) - ballGap(mm(radius - step), mm(1), count)) / (2 * step)
        // three balls: the second derivative grows without end towards the least radius
        expect(gapPerPitchRadius(radius, mm(1), count)).toBeWithin(count === 3 ? 1e-5 : 1e-7, difference)
      }),
    )
  })

  test('by ball diameter on a given circle: against a difference of gaps', () => {
    fc.assert(
      fc.property(between(0.01, 1), ballCount, (part, count) => {
        const radius = radiusAt(part, 1, count)
        const step = STEP / count
        const difference = (ballGap(radius, mm(1 + step), count) - ballGap(radius, mm(1 - step), count)) / (2 * step)
        expect(gapPerBallDiameterAtPitchRadius(radius, mm(1), count)).toBeWithin(1e-6 * count * count, difference)
      }),
    )
  })

  test('at closure: 2 Z sin(π/Z) and −Z', () => {
    for (let count = 3; count <= 200; count++) {
      const closed = closedPitchRadius(mm(12.7), count)
      expect(gapPerPitchRadius(closed, mm(12.7), count)).toBeWithin(
        1e-12 * count,
        2 * count * Math.sin(Math.PI / count),
      )
      expect(gapPerBallDiameterAtPitchRadius(closed, mm(12.7), count)).toBeWithin(1e-12 * count, -count)
    }
  })

  test('the gap opens about 2π times as far as the radius grows: within a tenth from seven balls on', () => {
    for (let count = 7; count <= 200; count++) {
      expect(gapPerPitchRadius(closedPitchRadius(mm(1), count), mm(1), count)).toBeWithin(0.21, 2 * Math.PI)
    }
  })
})

describe('refused, as a bug of ours', () => {
  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('a ball of %s', (ball) => {
    expect(() => closedPitchRadius(mm(ball), 12)).toThrow(RangeError)
    expect(() => ballGap(mm(50), mm(ball), 12)).toThrow(RangeError)
    expect(() => pitchRadiusForGap(mm(0), mm(ball), 12)).toThrow(RangeError)
  })

  test.each([2, 0, -3, 3.5, Number.NaN, Number.POSITIVE_INFINITY])('%s balls', (count) => {
    expect(() => closedPitchRadius(mm(16), count)).toThrow(RangeError)
    expect(() => leastPitchRadius(mm(16), count)).toThrow(RangeError)
    expect(() => ballGap(mm(50), mm(16), count)).toThrow(RangeError)
    expect(() => pitchRadiusForGap(mm(0), mm(16), count)).toThrow(RangeError)
  })

  test.each([0, -40, 1, 26, Number.NaN, Number.POSITIVE_INFINITY])(
    'a pitch radius of %s round twelve balls of 16',
    (radius) => {
      expect(() => ballGap(mm(radius), mm(16), 12)).toThrow(/pitchRadius must be at least 28\.3/)
      expect(() => gapPerPitchRadius(mm(radius), mm(16), 12)).toThrow(RangeError)
      expect(() => gapPerBallDiameterAtPitchRadius(mm(radius), mm(16), 12)).toThrow(RangeError)
    },
  )

  test.each([-16, 160, 1e308, Number.NaN])('a gap of %s between twelve balls of 16', (gap) => {
    expect(() => pitchRadiusForGap(mm(gap), mm(16), 12)).toThrow(/gap must be above -16 and below 160 mm/)
  })
})
