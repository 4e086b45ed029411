import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { eccentricFilling, fillingAngle } from '#shared/geometry/eccentric-filling.ts'
import { closedPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'
import { ballCentres } from '#tests/support/ball-centres.ts'
import { ballCount, between, magnitude } from '#tests/support/inputs.ts'

describe('the filling angle', () => {
  test('is the angle between the first and the last of balls laid side by side, by coordinates', () => {
    fc.assert(
      fc.property(between(0.52, 50), fc.integer({ min: 2, max: 40 }), (pitchRadius, laid) => {
        const centres = ballCentres(pitchRadius, 1, laid)
        let turned = 0
        for (let ball = 1; ball < laid; ball++) {
          const [, a, b] = centres[ball - 1] ?? [0, 0, 0]
          const [, c, d] = centres[ball] ?? [0, 0, 0]
          turned += Math.abs(Math.atan2(a * d - b * c, a * c + b * d))
        }
        expect(fillingAngle(laid, mm(1), mm(2 * pitchRadius))).toBeWithin(1e-6, (turned * 180) / Math.PI)
      }),
    )
  })

  test('one ball fills nothing, two balls as large as the pitch circle a half turn', () => {
    expect(fillingAngle(1, mm(16), mm(60))).toBe(0)
    expect(fillingAngle(2, mm(16), mm(16))).toBe(180)
  })

  test('a closed ring lacks one step of the whole turn', () => {
    fc.assert(
      fc.property(ballCount, magnitude(0.01, 1000), (count, ball) => {
        const pitchDiameter = mm(2 * closedPitchRadius(mm(ball), count))
        expect(fillingAngle(count, mm(ball), pitchDiameter)).toBeWithin(1e-9, 360 - 360 / count)
      }),
    )
  })

  test.each([
    [0, 16, 60],
    [2.5, 16, 60],
    [9, 0, 60],
    [9, 16, 15.9],
    [9, 16, Number.NaN],
  ])('%s balls of %s on %s: refused, as a bug of ours', (count, ball, pitch) => {
    expect(() => fillingAngle(count, mm(ball), mm(pitch))).toThrow(RangeError)
  })
})

const filling = (ballDiameter: number, pitchDiameter: number, landGap: number, play = 0) =>
  eccentricFilling({
    ballDiameter: mm(ballDiameter),
    pitchDiameter: mm(pitchDiameter),
    landGap: mm(landGap),
    play: mm(play),
  })

describe('eccentric filling', () => {
  test('without play the most balls fill a half turn at the most, and one more would fill more', () => {
    fc.assert(
      fc.property(between(1.01, 60), (pitchDiameter) => {
        const { mostBalls } = filling(1, pitchDiameter, 0.4)
        expect(fillingAngle(mostBalls, mm(1), mm(pitchDiameter))).toBeLessThanOrEqual(180 + 1e-6)
        expect(fillingAngle(mostBalls + 1, mm(1), mm(pitchDiameter))).toBeGreaterThan(180)
      }),
    )
  })

  test('half of a closed ring and one ball: a half turn within rounding is a half turn', () => {
    for (let count = 4; count <= 200; count++) {
      const pitchDiameter = mm(2 * closedPitchRadius(mm(12.7), count))
      expect(filling(12.7, pitchDiameter, 7).mostBalls).toBe(1 + Math.floor(count / 2))
    }
  })

  test('a ball passes where the lands stand two land gaps apart: groove depths of half a ball in sum', () => {
    const roomFor = (landGap: number) => filling(16, 60, landGap).roomBetweenLands
    expect(roomFor(8)).toBe(true)
    expect(roomFor(16 * (1 - 0.2 - 0.3))).toBe(true)
    expect(roomFor(7.99)).toBe(false)
  })

  test('and by coordinates: the widest place between two circles, the inner one moved till they touch', () => {
    fc.assert(
      fc.property(between(5, 50), between(0.1, 4), (innerRadius, landGap) => {
        const outerRadius = innerRadius + landGap
        const widest = Math.max(
          ...Array.from({ length: 361 }, (_, degree) => {
            const turn = (degree * Math.PI) / 180
            // from a point of the outer circle to the inner one, whose centre stands a land gap aside
            return Math.hypot(outerRadius * Math.cos(turn) + landGap, outerRadius * Math.sin(turn)) - innerRadius
          }),
        )
        expect(filling(widest * 0.999, 20, landGap).roomBetweenLands).toBe(true)
        expect(filling(widest * 1.001, 20, landGap).roomBetweenLands).toBe(false)
      }),
    )
  })

  test('with play: by coordinates, the inner ring comes back past balls that reach to the limit, and past no more', () => {
    fc.assert(
      fc.property(between(20, 100), between(0.5, 0.9), between(0.001, 0.04), (radius, share, loose) => {
        const ball = 12
        const [landGap, play] = [share * ball, loose * ball]
        const { limit } = filling(ball, 2 * radius, landGap, play)
        // The least that a ball at so many degrees from the wide side is clear of the inner ring, all the way to the middle.
        const clearAt = (degrees: number): number => {
          const [x, y] = [radius * Math.cos((degrees * Math.PI) / 180), radius * Math.sin((degrees * Math.PI) / 180)]
          const aside = ball - landGap
          const steps = Array.from({ length: 4001 }, (_, step) => (aside * step) / 4000)
          return Math.min(...steps.map((by) => Math.hypot(x + by, y) - (radius - play / 2)))
        }
        expect(clearAt(limit / 2 - 0.01)).toBeGreaterThan(0)
        expect(clearAt(limit / 2 + 0.05)).toBeLessThan(0)
      }),
      { numRuns: 50 },
    )
  })

  test('lands a ball apart: as many go in as there are in the ring', () => {
    expect(filling(16, 2 * closedPitchRadius(mm(16), 9), 16)).toMatchObject({ limit: 360, mostBalls: 9 })
  })
})
