import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { RollerInput } from '#shared/bearing/arrangements/roller/input.ts'
import { ARRANGEMENTS, echoedBearingFor, type RollerBearing } from '#shared/bearing/arrangements.ts'
import { mm } from '#shared/units/length.ts'
import { ballCentres, distance, type Point } from '#tests/support/ball-centres.ts'
import { designed } from '#tests/support/designed.ts'
import { ballCount, between, magnitude, PLAIN, ROLLERS } from '#tests/support/inputs.ts'

function made(input: RollerInput): RollerBearing {
  const result = ARRANGEMENTS.roller.bearingOf(input)
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

/** Rings of dowels that someone might turn. */
const rollers: fc.Arbitrary<RollerInput> = fc
  .record({
    count: ballCount,
    diameter: magnitude(3, 60),
    gap: between(0, 0.4),
    play: between(0.001, 0.2),
    width: between(0.5, 4),
    bore: between(0.05, 0.5),
  })
  .map(({ count, diameter, gap, play, width, bore }) => ({
    units: 'mm',
    arrangement: 'roller',
    balls: { count, diameter: mm(diameter) },
    // Inside the rollers there is room for a circle of Dw (1 / sin(π/Z) − 1), less the play.
    bore: mm(0.7 * bore * diameter * (1 / Math.sin(Math.PI / count) - 1)),
    ballGap: mm(gap * diameter),
    radialInternalClearance: mm(0.1 * play * diameter),
    width: mm(width * diameter),
  }))

const AXIS: Point = [0, 0, 0]

describe('in section a ring of rollers is a ring of circles', () => {
  test('laid one by one they touch their neighbours and both tracks, and leave the gap and the play that were asked', () => {
    fc.assert(
      fc.property(rollers, (input) => {
        const { pitchRadius, ballGap, outerRing, innerRing, radialInternalClearance, resolved } = made(input)
        const { ballDiameter } = resolved
        const size = 1e-9 * pitchRadius
        const centres = ballCentres(pitchRadius, ballDiameter, input.balls.count)
        const [first = AXIS, last = AXIS] = [centres[0], centres.at(-1)]
        expect(distance(first, last) - ballDiameter).toBeWithin(10 * size, ballGap)
        for (const centre of centres) {
          const fromAxis = distance(centre, AXIS)
          expect(fromAxis + ballDiameter / 2).toBeWithin(size, outerRing.landDiameter / 2)
          // With the inner ring in the middle, half the play is between.
          const apart = fromAxis - ballDiameter / 2 - innerRing.landDiameter / 2
          expect(apart).toBeWithin(size, radialInternalClearance / 2)
        }
      }),
    )
  })

  test('its track is its land: no depth, no width of a groove, and the gap follows the track', () => {
    const { outerRing, innerRing, gapPerGrooveDepth, gapPerPitchRadius } = made(ROLLERS)
    for (const ring of [outerRing, innerRing]) {
      expect(ring).toMatchObject({ grooveDepth: 0, seatDepth: 0, grooveWidth: 0, seat: 'bottom' })
      expect(ring.landDiameter).toBe(ring.grooveBottomDiameter)
    }
    expect(gapPerGrooveDepth).toBe(gapPerPitchRadius)
  })

  test('the same gap asks for the same pitch circle and plug as a ring of balls', () => {
    const gap = { ballGap: mm(0.8) }
    const rolls = made({ ...ROLLERS, ...gap })
    // Into a split outer ring a ball goes as easily as a roller: whatever the gap.
    const { bearing: balls } = designed({ ...PLAIN, ...gap, split: 'outer-ring' })
    expect(rolls.pitchRadius).toBe(balls.pitchRadius)
    expect(rolls.gauge).toEqual(balls.gauge)
    expect(rolls.outerRing.grooveBottomDiameter).toBe(balls.outerRing.grooveBottomDiameter)
  })
})

describe('along the axis', () => {
  test('rollers and inner ring are shorter than the outer ring is wide, by what the cheeks leave them', () => {
    fc.assert(
      fc.property(rollers, (input) => {
        const { outerRing, innerRing, axialPlay, resolved, cheeks } = made(input)
        const length = resolved.rollerLength
        expect(resolved.input.balls.length).toBe(length)
        expect(length).toBeGreaterThan(0)
        expect(length).toBeLessThan(outerRing.width)
        expect(innerRing.width).toBe(length)
        expect(axialPlay).toBeWithin(1e-12 * outerRing.width, outerRing.width - length)
        expect(cheeks.outsideDiameter).toBe(outerRing.outsideDiameter)
        // A cheek reaches in over the rollers and over the side of the inner ring, and stays clear of the bore.
        expect(cheeks.holeDiameter).toBeLessThan(innerRing.landDiameter)
        expect(cheeks.holeDiameter).toBeGreaterThan(innerRing.boreDiameter)
      }),
    )
  })

  test('the lean is that of a bar on two ends of a roller, or between the cheeks, whichever stops it first', () => {
    const wide = made({ ...ROLLERS, radialInternalClearance: mm(0.1), balls: { ...ROLLERS.balls, length: mm(20) } })
    expect(wide.tilt).toBeWithin(1e-9, (Math.atan(0.1 / 20) * 180) / Math.PI)
    const loose = made({ ...ROLLERS, radialInternalClearance: mm(4) })
    expect(loose.tilt).toBeWithin(1e-9, (Math.atan(loose.axialPlay / (2 * loose.pitchRadius)) * 180) / Math.PI)
  })
})

test('nothing has to come apart: the last roller goes in at any gap', () => {
  const { assembly, resolved } = made({ ...ROLLERS, ballGap: mm(0) })
  expect(assembly).toMatchObject({ assemblyGap: 0, easiestWay: 'open-side' })
  expect(resolved.split).toBe('none')
  const codes = designed({ ...ROLLERS, ballGap: mm(0) }).warnings.map(({ facts }) => facts.code)
  expect(codes).not.toContain('gap-below-assembly-gap')
  expect(codes).not.toContain('cannot-assemble')
})

test('its whole input asked again gives the same design', () => {
  fc.assert(
    fc.property(rollers, (input) => {
      const { bearing, ...rest } = designed(input)
      const { bearing: again, ...restAgain } = designed(bearing.resolved.input)
      expect(restAgain).toEqual(rest)
      expect(again.resolved).toEqual({ ...bearing.resolved, assumed: [] })
    }),
    { numRuns: 50 },
  )
})

test('refused: a question that rollers have no answer to', () => {
  const question = { name: 'design-search', serves: ['radial'] } as const
  expect(echoedBearingFor(question, ROLLERS)).toEqual({
    ok: false,
    error: [{ code: 'not-answered', path: '/arrangement', arrangement: 'roller', question: 'design-search' }],
  })
  expect(echoedBearingFor(question, PLAIN).ok).toBe(true)
})
