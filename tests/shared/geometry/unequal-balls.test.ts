import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  ballGap,
  closedPitchRadius,
  gapPerPitchRadius,
  leastPitchRadius,
  pitchRadiusForGap,
} from '#shared/geometry/ring-of-balls.ts'
import {
  closingRadius,
  gapPerBottomRadius,
  tightestBottomRadius,
  unequalBallGap,
} from '#shared/geometry/unequal-balls.ts'
import { mm } from '#shared/units/length.ts'
import { ballCount, between, magnitude } from '#tests/support/inputs.ts'

const equal = (count: number, diameter = 1): readonly number[] => Array.from({ length: count }, () => diameter)

/** Rings whose smallest ball is 2/3 of the largest at the least: as far as neighbours alone touch. */
const ring = ballCount.chain((count) =>
  fc.array(between(1, 1.5), { minLength: count, maxLength: count }).map((sizes): readonly number[] => sizes),
)
/** Rings as they are bought: a few percent from ball to ball. */
const bought = ballCount.chain((count) =>
  fc.array(between(0.97, 1.03), { minLength: count, maxLength: count }).map((sizes): readonly number[] => sizes),
)

type Point = readonly [x: number, y: number]

/**
 * Another road: centres laid one after another in the plane, each where the circle of its own radius round the ring's
 * centre meets the circle of touching round the one before. No angle, and no cosine law.
 */
function centresOf(bottomRadius: number, diameters: readonly number[]): readonly Point[] {
  const centres: Point[] = []
  diameters.forEach((diameter, ball) => {
    const own = bottomRadius - diameter / 2
    const before = centres[ball - 1]
    const touching = (diameter + (diameters[ball - 1] ?? Number.NaN)) / 2
    centres.push(before === undefined ? [own, 0] : meeting(before, own, touching))
  })
  return centres
}

function gapByCoordinates(bottomRadius: number, diameters: readonly number[]): number {
  const centres = centresOf(bottomRadius, diameters)
  const [x, y] = centres.at(-1) ?? [Number.NaN, Number.NaN]
  const [u, v] = centres[0] ?? [Number.NaN, Number.NaN]
  return Math.hypot(x - u, y - v) - ((diameters[0] ?? Number.NaN) + (diameters.at(-1) ?? Number.NaN)) / 2
}

/** Where a circle round the origin meets one round `centre`, on its left. */
function meeting([x, y]: Point, radius: number, touching: number): Point {
  const square = x * x + y * y
  const along = (square + radius * radius - touching * touching) / (2 * square)
  const across = Math.sqrt(Math.max(0, (radius * radius) / square - along * along))
  return [along * x - across * y, along * y + across * x]
}

describe('equal balls are the closed ring', () => {
  test('the same gap at every pitch radius at which it has one', () => {
    fc.assert(
      fc.property(magnitude(0.001, 10_000), ballCount, between(0, 1), (diameter, count, part) => {
        const least = leastPitchRadius(mm(diameter), count)
        const radius = least + part * (3 * closedPitchRadius(mm(diameter), count) - least)
        const gap = unequalBallGap(mm(radius + diameter / 2), equal(count, diameter))
        // where three balls fill the groove the gap moves by a root: the root of a rounding
        const uncertainty = count === 3 && part < 1e-3 ? 1e-7 : 1e-12
        expect(gap).toBeWithin(uncertainty * radius, ballGap(mm(radius), mm(diameter), count))
      }),
    )
  })

  test('closing in the same groove, for every count', () => {
    for (let count = 3; count <= 200; count++) {
      const closed = closedPitchRadius(mm(16), count) + 8
      expect(closingRadius(equal(count, 16))).toBeWithin(1e-13 * closed, closed)
    }
  })

  test('leaving a gap in the same groove, narrower ones too', () => {
    fc.assert(
      fc.property(ballCount, between(-0.9, 0.9), (count, gap) => {
        const radius = pitchRadiusForGap(mm(gap), mm(1), count) + 1 / 2
        expect(closingRadius(equal(count), mm(gap))).toBeWithin(1e-12 * radius, radius)
      }),
    )
  })

  test('with the slope that they have at closure: 2 Z sin(π/Z)', () => {
    for (let count = 3; count <= 200; count++) {
      const sine = Math.sin(Math.PI / count)
      const closed = mm(closedPitchRadius(mm(16), count) + 8)
      expect(gapPerBottomRadius(closed, equal(count, 16))).toBeWithin(1e-11 * count, 2 * count * sine)
    }
  })

  test('with the slope by pitch radius at every gap', () => {
    fc.assert(
      fc.property(ballCount, between(-0.9, 0.9), (count, gap) => {
        const radius = pitchRadiusForGap(mm(gap), mm(1), count)
        const slope = gapPerPitchRadius(radius, mm(1), count)
        expect(gapPerBottomRadius(mm(radius + 1 / 2), equal(count))).toBeWithin(1e-9 * slope * count, slope)
      }),
    )
  })
})

describe('the gap between unequal balls', () => {
  test('is the distance in the plane of the first and the last, laid one after another', () => {
    fc.assert(
      fc.property(ring, between(0, 1), (balls, part) => {
        const closed = closingRadius(balls)
        const bottom = Math.max(tightestBottomRadius(balls), closed * (0.98 + part))
        const gap = unequalBallGap(mm(bottom), balls)
        fc.pre(gap > -0.9)
        expect(gap).toBeWithin(
          balls.length === 3 ? 1e-7 : 1e-11 * bottom * balls.length,
          gapByCoordinates(bottom, balls),
        )
      }),
    )
  })

  test('opens with the groove all the way, from where neighbours just fit until another ball would', () => {
    fc.assert(
      fc.property(ring, between(0, 1), between(0, 1), (balls, one, other) => {
        fc.pre(Math.abs(one - other) > 1e-9)
        const [tight, wide] = [tightestBottomRadius(balls), closingRadius(balls, mm(0.9))]
        const at = (part: number) => mm(tight + part * (wide - tight))
        const [near, far] = [at(Math.min(one, other)), at(Math.max(one, other))]
        expect(unequalBallGap(far, balls)).toBeGreaterThan(unequalBallGap(near, balls))
        expect(gapPerBottomRadius(far, balls)).toBeGreaterThan(0)
      }),
    )
  })

  test('closes as any ball grows', () => {
    fc.assert(
      fc.property(bought, between(-0.9, 0.3), (balls, gap) => {
        const bottom = closingRadius(balls, mm(gap))
        balls.forEach((_, moved) => {
          const grown = balls.map((ball, place) => (place === moved ? ball * 1.0001 : ball))
          expect(unequalBallGap(bottom, grown)).toBeLessThan(unequalBallGap(bottom, balls))
        })
      }),
    )
  })

  test('is the same seen from the other side', () => {
    fc.assert(
      fc.property(ring, between(0.7, 3), (balls, part) => {
        const bottom = mm(Math.max(tightestBottomRadius(balls), part * closingRadius(balls)))
        const gap = unequalBallGap(bottom, balls)
        expect(unequalBallGap(bottom, balls.toReversed())).toBeWithin(balls.length === 3 ? 1e-7 : 1e-12 * bottom, gap)
      }),
    )
  })

  test('scales with the balls', () => {
    fc.assert(
      fc.property(ring, between(0.9, 2), magnitude(1e-3, 1e3), (balls, part, scale) => {
        const bottom = Math.max(1.0001 * tightestBottomRadius(balls), part * closingRadius(balls))
        const scaled = unequalBallGap(
          mm(bottom * scale),
          balls.map((ball) => ball * scale),
        )
        expect(scaled / scale).toBeWithin(1e-10 * bottom, unequalBallGap(mm(bottom), balls))
      }),
    )
  })

  test('comes to a straight row in a groove without end', () => {
    const [small, large] = [1, 1.3]
    const along = 2 * (2 * Math.sqrt(small * large)) * (1 / 2)
    expect(unequalBallGap(mm(1e9), [large, small, large])).toBeWithin(1e-6, along - large)
  })

  test('goes on falling, without a step, where even the others overlap', () => {
    fc.assert(
      fc.property(ring, (balls) => {
        fc.pre(balls.length > 4)
        const ends = Math.min(balls[0] ?? 0, balls.at(-1) ?? 0)
        const tight = tightestBottomRadius(balls)
        // the others fill the ring: the gap is that of the first and the last laid one upon the other
        const full = closingRadius(balls, mm(-ends))
        const gaps = [1 + 1e-9, 1, 1 - 1e-9].map((part) => unequalBallGap(mm(full * part), balls))
        expect(gaps[0]).toBeWithin(1e-3, -ends)
        expect(gaps[2]).toBeWithin(1e-3, -ends)
        let before = unequalBallGap(mm(tight), balls)
        for (let part = 0.05; part <= 1; part += 0.05) {
          const gap = unequalBallGap(mm(tight + part * (full - tight)), balls)
          expect(gap).toBeGreaterThan(before)
          before = gap
        }
      }),
    )
  })

  test('supposes that neighbours alone touch: down to 2/3 no two balls meet over the one between them', () => {
    const size = between(1, 1.5)
    fc.assert(
      fc.property(size, size, size, between(0, 1), (one, middle, other, part) => {
        const tight = Math.max(one + middle, middle + other, one + other) / 2
        const bottom = mm(tight * (1 + 30 * part * part * part))
        const across = centresOf(bottom, [one, middle, other]).at(-1)?.[1]
        // past half a turn the first and the third meet on the other side
        expect(across !== undefined && across < 0 ? 0 : unequalBallGap(bottom, [one, middle, other])).toBeGreaterThan(
          -1e-7,
        )
      }),
    )
    expect(unequalBallGap(mm(1), [1, 0.6, 1])).toBeLessThan(-0.01)
  })
})

describe('the groove in which they close', () => {
  test('there and back: the gap is the one asked for, and the groove to 1e-12', () => {
    fc.assert(
      fc.property(bought, between(-0.9, 0.5), (balls, gap) => {
        const bottom = closingRadius(balls, mm(gap))
        expect(unequalBallGap(bottom, balls)).toBeWithin(1e-12 * bottom * balls.length, gap)
        expect(closingRadius(balls, unequalBallGap(bottom, balls))).toBeWithin(1e-12 * bottom, bottom)
      }),
    )
  })

  test('is the same wherever in the ring the gap of 0 is', () => {
    fc.assert(
      fc.property(ring, fc.nat(199), (balls, turn) => {
        const from = turn % balls.length
        const turned = [...balls.slice(from), ...balls.slice(0, from)]
        const bottom = closingRadius(balls)
        expect(closingRadius(turned)).toBeWithin(1e-12 * bottom, bottom)
      }),
    )
  })

  test('is as much larger as the balls are', () => {
    fc.assert(
      fc.property(ring, between(0, 0.5), magnitude(1e-3, 1e3), (balls, gap, scale) => {
        const bottom = closingRadius(balls, mm(gap))
        const scaled = closingRadius(
          balls.map((ball) => ball * scale),
          mm(gap * scale),
        )
        expect(scaled / scale).toBeWithin(1e-11 * bottom, bottom)
      }),
    )
  })

  test('lies between those of equal rings of the smallest and the largest ball', () => {
    fc.assert(
      fc.property(ring, (balls) => {
        const bottom = closingRadius(balls)
        const of = (size: number) => closedPitchRadius(mm(size), balls.length) + size / 2
        expect(bottom).toBeGreaterThanOrEqual(of(Math.min(...balls)) * (1 - 1e-12))
        expect(bottom).toBeLessThanOrEqual(of(Math.max(...balls)) * (1 + 1e-12))
      }),
    )
  })
})

describe('slopes, against differences', () => {
  const STEP = 1e-6
  /** Rings that are not so tight that the slope itself changes within a step. */
  const resolved = fc
    .tuple(bought, between(-0.8, 0.6))
    .map(([balls, gap]) => ({ balls, bottom: closingRadius(balls, mm(gap)) }))

  test('by groove bottom', () => {
    fc.assert(
      fc.property(resolved, ({ balls, bottom }) => {
        const at = (by: number) => unequalBallGap(mm(bottom + by), balls)
        const slope = gapPerBottomRadius(bottom, balls)
        expect(slope).toBeWithin(1e-5 * slope, (at(STEP) - at(-STEP)) / (2 * STEP))
      }),
    )
  })

  test('also where the balls overlap all round', () => {
    const balls = [1.02, 0.99, 1, 1.01, 0.98, 1.03]
    const bottom = closingRadius(balls, mm(-1.6))
    const at = (by: number) => unequalBallGap(mm(bottom + by), balls)
    expect(unequalBallGap(bottom, balls)).toBeWithin(1e-12, -1.6)
    expect(gapPerBottomRadius(bottom, balls)).toBeWithin(1e-7, (at(STEP) - at(-STEP)) / (2 * STEP))
  })
})

describe('refused, as a bug of ours', () => {
  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('a ball of %s', (ball) => {
    expect(() => unequalBallGap(mm(30), [16, ball, 16])).toThrow(/each diameter must be above 0/)
    expect(() => closingRadius([16, ball, 16])).toThrow(RangeError)
    expect(() => gapPerBottomRadius(mm(30), [16, ball, 16])).toThrow(RangeError)
    expect(() => tightestBottomRadius([16, ball, 16])).toThrow(RangeError)
  })

  test.each([0, 1, 2])('%s balls', (count) => {
    expect(() => unequalBallGap(mm(30), equal(count))).toThrow(/number of balls must be whole and at least 3/)
    expect(() => closingRadius(equal(count))).toThrow(RangeError)
  })

  test.each([0, -40, 15.9, Number.NaN, Number.POSITIVE_INFINITY])(
    'a groove bottom of %s round balls of 16',
    (bottom) => {
      expect(() => unequalBallGap(mm(bottom), equal(12, 16))).toThrow(/bottomRadius must be at least 16 mm/)
      expect(() => gapPerBottomRadius(mm(bottom), equal(12, 16))).toThrow(RangeError)
    },
  )

  test.each([160, 1e308, -1e6, Number.NaN])('a gap of %s between twelve balls of 16', (gap) => {
    expect(() => closingRadius(equal(12, 16), mm(gap))).toThrow(/gap must be at least -.* and below 160 mm/)
  })

  test('a ring that leaves a gap even in the tightest groove: a third ball too small to reach both', () => {
    expect(() => closingRadius([1, 1, 0.5])).toThrow(/gap must be at least 0\.\d+/)
  })
})
