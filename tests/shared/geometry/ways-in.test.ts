import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { closedPitchRadius, pitchRadiusForGap } from '#shared/geometry/ring-of-balls.ts'
import { waysIn } from '#shared/geometry/ways-in.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { ballCentres, distance, type Point } from '#tests/support/ball-centres.ts'
import { ballCount, between, magnitude } from '#tests/support/inputs.ts'
import { CLEAR, MeridianPlane } from '#tests/support/meridian-plane.ts'

/** All of it for balls of 1 mm: a groove by conformity and depth, the depth at most the radius. */
type Cut = readonly [conformity: number, engagement: number]
const cut = fc
  .tuple(fc.oneof(between(0.4, 0.7), between(0.3, 2)), between(0.01, 0.9))
  .map(([conformity, engagement]): Cut => [conformity, Math.min(conformity, engagement)])

const waysFor = ([conformity, engagement]: Cut, count: number, ball = 1) =>
  waysIn({
    groove: { radius: mm(conformity * ball), depth: mm(engagement * ball) },
    ballDiameter: mm(ball),
    ballCount: count,
  })

/** The other balls, laid by coordinates in a ring with that gap, and the plane in which the last ball comes in. */
const planeAt = (gap: number, [conformity, engagement]: Cut, count: number): MeridianPlane => {
  const pitchRadius = pitchRadiusForGap(mm(gap), mm(1), count)
  return new MeridianPlane({ conformity, engagement, pitchRadius, others: ballCentres(pitchRadius, 1, count - 1) })
}

describe('from inside', () => {
  const least = (from: Point, balls: readonly Point[]) => Math.min(...balls.map((ball) => distance(from, ball)))
  const straightOut = (pitchRadius: Mm, count: number): number => {
    const others = ballCentres(pitchRadius, 1, count - 1)
    const from = Math.max(0, pitchRadius - 2)
    return Math.min(
      ...Array.from({ length: 2001 }, (_, i) => least([0, from + ((pitchRadius - from) * i) / 2000, 0], others)),
    )
  }

  test('the ball that goes straight out from the middle just passes, by coordinates, and not in a closer ring', () => {
    for (const count of [3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 16, 20, 24, 30, 40, 60, 100, 150, 200]) {
      const { fromInside } = waysFor([0.53, 0.2], count)
      // the looks at the way stand 0.001 apart, so that the narrowest place may fall between two
      expect(straightOut(pitchRadiusForGap(fromInside, mm(1), count), count)).toBeWithin(3e-7, 1)
      // three to five balls meet in the middle, more between the neighbours
      const closer = pitchRadiusForGap(mm(fromInside * 0.99), mm(1), count)
      expect(straightOut(closer, count)).toBeLessThan(1 - 3e-7)
    }
  })

  test('rigid balls cannot be put in at closure', () => {
    for (let count = 3; count <= 200; count++) expect(waysFor([0.53, 0.2], count).fromInside).toBeGreaterThan(0)
  })

  test('the more balls, the smaller the gap that it takes', () => {
    for (let count = 6; count < 200; count++) {
      expect(waysFor([0.53, 0.2], count + 1).fromInside).toBeLessThan(waysFor([0.53, 0.2], count).fromInside)
    }
  })
})

describe('over the land', () => {
  test('a ball rolled along groove, edge and land is clear of its neighbours, and not with 0.0001 less of a gap', () => {
    fc.assert(
      fc.property(ballCount, cut, (count, groove) => {
        const { overLand } = waysFor(groove, count)
        expect(planeAt(overLand, groove, count).leastRoomRolling()).toBeGreaterThan(-1e-6)
        if (overLand > 2e-4) expect(planeAt(overLand - 1e-4, groove, count).leastRoomRolling()).toBeLessThan(-1e-6)
      }),
      { numRuns: 400 },
    )
  })

  test('every count from 3 to 200 with the usual groove', () => {
    for (let count = 3; count <= 200; count++) {
      const { overLand } = waysFor([0.53, 0.2], count)
      expect(planeAt(overLand, [0.53, 0.2], count).leastRoomRolling()).toBeGreaterThan(-1e-7)
      // from 105 balls on the groove is wide enough for a closed ring
      expect(overLand > 0).toBe(count < 105)
      if (overLand > 0) expect(planeAt(overLand * 0.9, [0.53, 0.2], count).leastRoomRolling()).toBeLessThan(-1e-9)
    }
  })

  const SEARCHED: readonly (readonly [count: number, ...Cut])[] = [
    [3, 0.53, 0.2],
    [4, 0.53, 0.2],
    [5, 0.53, 0.2],
    [6, 0.53, 0.2],
    [8, 0.53, 0.2],
    [12, 0.53, 0.2],
    [30, 0.53, 0.2],
    [3, 0.53, 0.5],
    [4, 0.6, 0.45],
    [12, 0.53, 0.05],
    [12, 0.53, 0.4],
    [12, 0.55, 0.55],
    [12, 0.7, 0.6],
    [10, 0.7, 0.1],
    [9, 2, 0.9],
    [9, 1.2, 0.05],
    [12, 0.49, 0.2],
    [12, 0.45, 0.45],
    [12, 0.4, 0.1],
    [6, 0.4, 0.4],
    [3, 0.45, 0.2],
    [20, 0.42, 0.3],
    [60, 0.8, 0.1],
  ]
  test.each(SEARCHED)(
    '%s balls, conformity %s, engagement %s: a search for any path finds the same gap',
    (count, ...groove) => {
      expectSearchToAgree(count, groove)
    },
  )

  test('the same for fifteen bearings taken at random', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 60 }), cut, (count, groove) => {
        // else the ring's own hole is narrower than a ball: see the docstring
        fc.pre(groove[1] <= closedPitchRadius(mm(1), count))
        expectSearchToAgree(count, groove)
      }),
      { numRuns: 15 },
    )
  })

  /**
   * Whether a way leads from outside to the seat, step by step through the whole plane: no claim where it is narrowest.
   * A step of the search blurs the least pitch radius by about as much, and the gap by some times that.
   */
  function expectSearchToAgree(count: number, groove: Cut): void {
    const BLUR = 0.02
    const { overLand, fromInside } = waysFor(groove, count)
    expect(planeAt(overLand + 1e-9, groove, count).hasPath()).toBe(true)
    if (overLand > BLUR) expect(planeAt(overLand - BLUR, groove, count).hasPath()).toBe(false)
    expect(overLand).toBeLessThanOrEqual(fromInside)
  }

  test('never harder than from inside, whatever the groove', () => {
    fc.assert(
      fc.property(ballCount, cut, (count, groove) => {
        const { overLand, fromInside } = waysFor(groove, count)
        expect(overLand).toBeGreaterThanOrEqual(0)
        expect(overLand).toBeLessThanOrEqual(fromInside)
      }),
      { numRuns: 1000 },
    )
  })

  test('a wider ring stays open once it is: no gap above the least closes the way again', () => {
    fc.assert(
      fc.property(ballCount, cut, between(0, 1), (count, groove, more) => {
        const { overLand } = waysFor(groove, count)
        expect(planeAt(overLand + more * (0.95 - overLand), groove, count).leastRoomRolling()).toBeGreaterThan(-1e-6)
      }),
      { numRuns: 200 },
    )
  })

  test('off the middle plane a ball comes nearer to one of its neighbours: no other way is easier', () => {
    fc.assert(
      fc.property(
        ballCount,
        between(0, 0.5),
        between(0.1, 1),
        between(-1, 1),
        between(-1, 1),
        (count, gap, height, x, turn) => {
          const pitchRadius = pitchRadiusForGap(mm(gap), mm(1), count)
          const others = ballCentres(pitchRadius, 1, count - 1)
          const open = Math.PI - (count - 2) * Math.asin(0.5 / pitchRadius)
          const near = (angle: number) =>
            Math.min(
              ...others.map((ball) =>
                distance([x, height * pitchRadius * Math.cos(angle), height * pitchRadius * Math.sin(angle)], ball),
              ),
            )
          expect(near(turn * open)).toBeLessThanOrEqual(near(0) + 1e-12)
        },
      ),
    )
  })

  test('a groove wide and shallow enough lets the last ball into a closed ring', () => {
    // the centre of the arc lies below the point between the neighbours: r − rw > Dw sin(π/Z)
    for (const [count, conformity] of [
      [12, 0.76],
      [30, 0.61],
      [200, 0.52],
    ] as const) {
      expect(waysFor([conformity, 0.1], count).overLand).toBe(0)
      expect(waysFor([conformity - 0.02, 0.1], count).overLand).toBeGreaterThan(0)
    }
  })
})

test('both scale with the balls', () => {
  fc.assert(
    fc.property(ballCount, cut, magnitude(0.001, 10_000), (count, groove, ball) => {
      const [small, large] = [waysFor(groove, count), waysFor(groove, count, ball)]
      expect(large.fromInside / ball).toBeWithin(1e-11, small.fromInside)
      expect(large.overLand / ball).toBeWithin(1e-9, small.overLand)
    }),
  )
})

test('room in the plane is none at the seat, and none is made up', () => {
  const plane = planeAt(0.3, [0.53, 0.2], 12)
  expect(plane.room(0, plane.seatHeight)).toBeWithin(1e-9, 0)
  expect(plane.room(0, plane.seatHeight + 0.01)).toBeLessThan(-0.009)
  expect(plane.room(3, 0)).toBe(CLEAR)
})
