import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  ballGapOnCircle,
  closingCircle,
  gapPerEachDiameterOnCircle,
  tightestCircle,
} from '#shared/geometry/balls-on-a-circle.ts'
import {
  ballGap,
  closedPitchRadius,
  gapPerBallDiameterAtPitchRadius,
  pitchRadiusForGap,
} from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'
import { distance, type Point } from '#tests/support/ball-centres.ts'
import { ballCount, between, magnitude } from '#tests/support/inputs.ts'

/** Balls up to a tenth off their size, in a groove that leaves them a gap. */
const lots = fc
  .record({ count: ballCount, diameter: magnitude(3, 60), gap: between(0.2, 0.8) })
  .chain(({ count, diameter, gap }) =>
    fc.array(between(0.99, 1.01), { minLength: count, maxLength: count }).map((parts) => ({
      radius: pitchRadiusForGap(mm(gap * diameter), mm(diameter), count),
      diameter,
      count,
      diameters: parts.map((part) => part * diameter),
    })),
  )

/**
 * Balls laid one by one on the bottom of a groove of circle R, each turned on until it touches the one before, found by
 * halving the turn: no formula of the ring is used.
 */
function laid(radius: number, diameters: readonly number[]): readonly Point[] {
  const at = (angle: number, ball: number): Point => [
    (diameters[ball] ?? 0) / 2,
    radius * Math.cos(angle),
    radius * Math.sin(angle),
  ]
  const points: Point[] = [at(0, 0)]
  let angle = 0
  for (let ball = 1; ball < diameters.length; ball++) {
    const before = points[ball - 1] ?? [0, 0, 0]
    const touching = ((diameters[ball - 1] ?? 0) + (diameters[ball] ?? 0)) / 2
    let [near, far] = [angle, angle + Math.PI]
    for (let halving = 0; halving < 60; halving++) {
      const middle = (near + far) / 2
      if (distance(before, at(middle, ball)) < touching) near = middle
      else far = middle
    }
    angle = (near + far) / 2
    points.push(at(angle, ball))
  }
  return points
}

test('balls laid in space leave that gap', () => {
  fc.assert(
    fc.property(lots, ({ radius, diameters }) => {
      fc.pre(radius > (2 * (diameters[0] ?? 0)) / 3)
      const points = laid(radius, diameters)
      const [first, last] = [points[0] ?? [0, 0, 0], points.at(-1) ?? [0, 0, 0]]
      const ends = ((diameters[0] ?? 0) + (diameters.at(-1) ?? 0)) / 2
      expect(distance(first as Point, last as Point) - ends).toBeWithin(
        1e-9 * radius,
        ballGapOnCircle(radius, diameters),
      )
    }),
    { numRuns: 60 },
  )
})

test('equal balls are the ring of any full ring', () => {
  fc.assert(
    fc.property(lots, ({ radius, diameter, count }) => {
      const equal = Array.from({ length: count }, () => diameter)
      expect(ballGapOnCircle(radius, equal)).toBeWithin(1e-10 * radius, ballGap(radius, mm(diameter), count))
    }),
  )
})

describe('the circle for a gap', () => {
  test('there and back; wider leaves more', () => {
    fc.assert(
      fc.property(lots, between(-0.3, 0.5), ({ diameters, diameter, count }, gap) => {
        fc.pre(count > 3 || gap < 0.3)
        const radius = closingCircle(diameters, mm(gap * diameter))
        expect(ballGapOnCircle(radius, diameters)).toBeWithin(1e-9 * radius, gap * diameter)
        expect(closingCircle(diameters, mm(gap * diameter + 1e-3 * diameter))).toBeGreaterThan(radius)
      }),
    )
  })

  test('for equal balls it is the pitch circle of any full ring', () => {
    fc.assert(
      fc.property(lots, ({ diameter, count }) => {
        const equal = Array.from({ length: count }, () => diameter)
        const closed = closedPitchRadius(mm(diameter), count)
        expect(closingCircle(equal)).toBeWithin(1e-9 * closed, closed)
      }),
    )
  })

  test('the tightest has two balls right across; less than it leaves, and as much as a straight row, is refused', () => {
    const balls = [16, 16, 15]
    const tightest = tightestCircle(balls)
    expect(tightest).toBe(8)
    expect(closingCircle(balls, ballGapOnCircle(tightest, balls))).toBe(tightest)
    expect(() => closingCircle(balls, mm(-60))).toThrow(/gap must be at least/)
    expect(() => closingCircle(balls, mm(40))).toThrow(/gap must be at least/)
  })
})

describe('slopes', () => {
  test('one ball after the other, against central differences', () => {
    fc.assert(
      fc.property(lots, fc.nat(), ({ radius, diameters, count }, which) => {
        const ball = which % count
        const step = 1e-5 * (diameters[ball] ?? 0)
        const moved = (by: number) =>
          ballGapOnCircle(
            radius,
            diameters.map((diameter, index) => (index === ball ? diameter + by : diameter)),
          )
        const slope = (moved(step) - moved(-step)) / (2 * step)
        expect(gapPerEachDiameterOnCircle(radius, diameters)[ball]).toBeWithin(1e-4 * count, slope)
      }),
    )
  })

  test('at exact closure one ball larger by 1 closes the gap by 1, all by Z: there is no half ball in it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 200 }), magnitude(3, 60), (count, diameter) => {
        const radius = closedPitchRadius(mm(diameter), count)
        const equal = Array.from({ length: count }, () => diameter)
        const slopes = gapPerEachDiameterOnCircle(radius, equal)
        for (const slope of slopes) expect(slope).toBeWithin(1e-6 * count, -1)
        expect(gapPerBallDiameterAtPitchRadius(radius, mm(diameter), count)).toBeWithin(1e-6 * count, -count)
      }),
    )
  })
})
