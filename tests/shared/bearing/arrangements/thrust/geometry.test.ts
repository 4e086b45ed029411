import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type ThrustBearing, thrustBearingOf } from '#shared/bearing/arrangements/thrust/geometry.ts'
import type { ThrustInput } from '#shared/bearing/arrangements/thrust/input.ts'
import { mm } from '#shared/units/length.ts'
import { ballCentres, distance } from '#tests/support/ball-centres.ts'
import { thrustDesigned } from '#tests/support/designed.ts'
import { ballCount, between, magnitude, PLATES } from '#tests/support/inputs.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'
import { taking } from '#tests/support/taking.ts'

function made(input: ThrustInput): ThrustBearing {
  const result = thrustBearingOf(input)
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

const turntables: fc.Arbitrary<ThrustInput> = fc
  .record({
    count: ballCount.filter((count) => count > 4),
    diameter: magnitude(3, 60),
    gap: between(0, 0.4),
    engagement: between(0.1, 0.4),
    conformity: between(0.42, 0.7),
    thickness: between(0.6, 3),
  })
  .map(({ count, diameter, gap, engagement, conformity, thickness }) => ({
    units: 'mm',
    arrangement: 'thrust',
    balls: { count, diameter: mm(diameter) },
    bore: mm(0.02 * diameter),
    ballGap: mm(gap * diameter),
    plates: { engagement: Math.min(engagement, conformity), thickness: mm(thickness * diameter) },
    groove: { conformity },
  }))

describe('by coordinates: x up, the lower plate with its face at 0', () => {
  test('every ball touches both grooves and its neighbours, and the gap is the one asked', () => {
    fc.assert(
      fc.property(turntables, (input) => {
        const { plate, pitchRadius, plateGap, ballGap, resolved } = made(input)
        const { ballDiameter, groove } = resolved
        const ballRadius = ballDiameter / 2
        // The height of a centre over the lower face, by what the ball rests on: the arc's bottom or both edges.
        const halfWidth = plate.grooveWidth / 2
        const onArc = plate.seat === 'bottom'
        const height = onArc ? ballRadius - groove.depth : Math.sqrt(ballRadius ** 2 - halfWidth ** 2)
        // Below the face in the lower groove, as deep below it in the upper: centres lie midway between the faces.
        expect(height).toBeWithin(1e-9 * ballDiameter, plateGap / 2)
        const nearest = onArc ? height + groove.depth : Math.hypot(halfWidth, height)
        expect(nearest).toBeWithin(1e-9 * ballDiameter, ballRadius)
        const centres = ballCentres(pitchRadius, ballDiameter, input.balls.count)
        for (const [index, centre] of centres.entries()) {
          expect(distance(centre, [0, 0, 0])).toBeWithin(1e-9 * pitchRadius, plate.grooveCircleDiameter / 2)
          const after = centres[index + 1]
          if (after !== undefined) expect(distance(centre, after)).toBeWithin(1e-9 * pitchRadius, ballDiameter)
        }
        const [first = centres[0], last = centres.at(-1)] = []
        if (first !== undefined && last !== undefined) {
          expect(distance(first, last) - ballDiameter).toBeWithin(1e-8 * pitchRadius, ballGap)
        }
      }),
    )
  })

  test('the wood adds up: across from bore to outside, and upward through plates and gap', () => {
    fc.assert(
      fc.property(turntables, (input) => {
        const { plate, plateGap, height, resolved } = made(input)
        const across = plate.boreDiameter / 2 + plate.innerWall + plate.grooveWidth + plate.wall
        expect(across).toBeWithin(1e-9 * across, plate.outsideDiameter / 2)
        expect(height).toBeWithin(1e-9 * height, 2 * plate.thickness + resolved.ballDiameter - 2 * plate.seatDepth)
        expect(plate.floor + plate.grooveDepth).toBeWithin(1e-9 * height, plate.thickness)
        expect(plateGap).toBeGreaterThan(0)
      }),
    )
  })
})

test('the last ball comes straight down: on its way it is never nearer to its neighbours than at the end', () => {
  const { pitchRadius, resolved } = made({ ...PLATES, ballGap: mm(0) })
  const centres = ballCentres(pitchRadius, resolved.ballDiameter, 12)
  const [, last = [0, 0, 0]] = [centres[0], centres.at(-1)]
  const before = centres.at(-2) ?? [0, 0, 0]
  for (const above of [0, 0.1, 1, 5, 16]) {
    const way = distance([last[0] + above, last[1], last[2]], [before[0], before[1], before[2]])
    expect(way).toBeGreaterThanOrEqual(resolved.ballDiameter * (1 - 1e-12))
  }
})

test('neither depth nor arc of the groove moves the balls: the gap follows the circle alone', () => {
  const plain = made(PLATES)
  for (const change of [
    { plates: { engagement: 0.2 } },
    { groove: { conformity: 0.6 } },
    { groove: { conformity: 0.45 } },
  ]) {
    expect(made({ ...PLATES, ...change }).pitchRadius).toBe(plain.pitchRadius)
  }
})

test('its whole input asked again gives the same design', () => {
  fc.assert(
    fc.property(turntables, (input) => {
      const { bearing, ...rest } = thrustDesigned(input)
      const { bearing: again, ...restAgain } = thrustDesigned(bearing.resolved.input)
      expect(restAgain).toEqual(rest)
      expect(again.resolved).toEqual({ ...bearing.resolved, assumed: [] })
      for (const [path, figure] of numberLeaves({ ...bearing })) expect(Number.isFinite(figure), path).toBe(true)
    }),
    { numRuns: 50 },
  )
})

describe('warned of, with the number that clears it', () => {
  test.each([
    ['plate-thin', { plates: { thickness: mm(8) } }, '/plates/thickness'],
    ['plates-nearly-meet', { plates: { engagement: 0.48 } }, '/plates/engagement'],
    ['shallow-engagement', { plates: { grooveDepth: mm(1) } }, '/plates/grooveDepth'],
    ['outer-wall-thin', { plates: { outsideDiameter: mm(82) } }, '/plates/outsideDiameter'],
    ['inner-wall-thin', { bore: mm(44) }, '/bore'],
    ['inner-wall-thin', { balls: { count: 3, diameter: mm(16) }, bore: mm(3) }, '/bore'],
    ['rides-on-edges', { groove: { conformity: 0.45 } }, '/groove/conformity'],
    ['ball-wanders', { groove: { grooveRadius: mm(12) } }, '/groove/grooveRadius'],
    ['few-balls', { balls: { count: 5, diameter: mm(16) }, bore: mm(3) }, '/balls/count'],
  ] as const)('%s', (code, change, path) => {
    const input: ThrustInput = { ...PLATES, ...change }
    const warning = thrustDesigned(input).warnings.find(({ facts }) => facts.code === code)
    expect(warning?.path).toBe(path)
    if (warning?.suggestion === undefined) throw new Error('no suggestion')
    const left = thrustDesigned(taking(input, warning.suggestion)).warnings.map(({ facts }) => facts.code)
    expect(left).not.toContain(code)
  })
})

describe('refused', () => {
  test.each([
    ['plate-cut-through', { plates: { thickness: mm(4) } }, '/plates/thickness'],
    ['plates-meet', { plates: { engagement: 0.5 }, groove: { conformity: 0.6 } }, '/plates/engagement'],
    ['wall-below-zero', { plates: { outsideDiameter: mm(70) } }, '/plates/outsideDiameter'],
    ['bore-meets-groove', { bore: mm(48) }, '/bore'],
    ['groove-undercut', { plates: { engagement: 0.6 } }, '/plates/engagement'],
    [
      'no-room-inside',
      {
        balls: { count: 3, diameter: mm(16) },
        plates: { engagement: 0.49 },
        groove: { conformity: 0.9 },
        ballGap: mm(0),
      },
      '/balls/count',
    ],
    ['finish-fills-groove', { finishAllowance: mm(5) }, '/finishAllowance'],
    ['finish-leaves-no-wood', { plates: { thickness: mm(6) }, finishAllowance: mm(1) }, '/finishAllowance'],
  ] as const)('%s, at %o', (code, change, path) => {
    const result = thrustBearingOf({ ...PLATES, ...change })
    expect(result.ok ? [] : result.error.map((refusal) => [refusal.code, refusal.path])).toContainEqual([code, path])
  })
})
