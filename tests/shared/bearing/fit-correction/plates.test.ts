import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { thrustBearingOf } from '#shared/bearing/arrangements/thrust/geometry.ts'
import type { ThrustInput } from '#shared/bearing/arrangements/thrust/input.ts'
import type { Reading } from '#shared/bearing/fit-correction/input.ts'
import { plateGroove } from '#shared/bearing/fit-correction/plate-groove.ts'
import { ballGap, pitchRadiusForGap } from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'
import { fitted } from '#tests/support/fitted.ts'
import { between, PLATES } from '#tests/support/inputs.ts'

const DESIGN: ThrustInput = {
  ...PLATES,
  balls: { count: 12, diameter: mm(16), standardDeviation: mm(0.05) },
  ballGap: mm(0.8),
}
/** A rule in tenths, read by a steady hand. */
const ERROR = { graduation: mm(0.1), standardUncertainty: mm(0.03) }

const gapRead = (value: number): Reading => ({
  kind: 'ball-gap',
  value: mm(value),
  error: ERROR,
})
const rowRead = (diameter: number): Reading => ({
  kind: 'ball-row',
  count: 12,
  value: mm(12 * diameter),
  error: ERROR,
})
const read = (...readings: Reading[]) => fitted({ design: DESIGN, ring: 'plate', readings })

describe('from the gap and the row of balls', () => {
  test('the circle and the balls as they are are found, and what comes off brings the gap to its aim', () => {
    fc.assert(
      fc.property(between(0.05, 1.5), between(15.95, 16.05), (gap, diameter) => {
        const radius = pitchRadiusForGap(mm(gap), mm(diameter), 12)
        const { pitchRadius, ballDiameter, remaining, figure } = read(gapRead(gap), rowRead(diameter))
        expect(figure.value).toBeWithin(0.1, gap)
        expect(ballDiameter?.value).toBeWithin(0.01, diameter)
        expect(pitchRadius?.value).toBeWithin(0.03, radius)
        expect(ballGap(mm(radius + remaining), mm(diameter), 12)).toBeWithin(0.2, 0.8)
      }),
      { numRuns: 12 },
    )
  })

  test('balls that run larger ask for a larger circle, by Z / 2π of what each has more, with no half ball in it', () => {
    const [small, large] = [read(gapRead(0.8), rowRead(16)), read(gapRead(0.8), rowRead(16.04))]
    const further = (large.pitchRadius?.value ?? 0) - (small.pitchRadius?.value ?? 0)
    expect(further).toBeWithin(0.01, (0.04 * 12) / (2 * Math.PI))
  })
})

test('a film does not move the circle: what is still to come of finish asks for no more room', () => {
  const asked = { design: DESIGN, ring: 'plate', readings: [gapRead(0.2)] } as const
  const bare = fitted({ ...asked, target: { finishAllowance: mm(0) } })
  expect(fitted({ ...asked, target: { finishAllowance: mm(0.2) } }).remaining).toBeWithin(1e-12, bare.remaining)
})

describe('a circle too far out', () => {
  const rescue = fitted({
    design: DESIGN,
    ring: 'plate',
    readings: [gapRead(4)],
    ballsOnHand: [{ diameter: mm(16.3), quantity: 12 }],
  })
  const option = (name: string) => rescue.rescue?.find((each) => each.option === name)

  test('is too deep in the words of the state, and has its ways out, but no lining', () => {
    expect(rescue.state).toBe('too-deep')
    expect(rescue.rescue?.map((each) => each.option)).toEqual([
      'accept',
      'better-balls',
      'larger-balls',
      'mixed-balls',
      'spacers',
      'one-ball-more',
      'new-blank',
    ])
  })

  test('larger balls close it to the aim', () => {
    const { diameter = mm(0) } = option('larger-balls')?.lengths ?? {}
    const radius = rescue.pitchRadius?.value ?? mm(0)
    expect(ballGap(mm(radius), diameter, 12)).toBeWithin(0.05, 0.8)
    expect(option('larger-balls')?.possible).toBe(true)
  })

  test('one ball more stands on the circle of thirteen', () => {
    const { grooveCircleDiameter, deeper } = option('one-ball-more')?.lengths ?? {}
    expect(option('one-ball-more')?.possible).toBe(true)
    const wanted = pitchRadiusForGap(mm(0.8), rescue.ballDiameter?.value as never, 13)
    expect(grooveCircleDiameter).toBeWithin(1e-6, 2 * wanted)
    expect(deeper).toBeWithin(1e-6, wanted - (rescue.pitchRadius?.value ?? 0))
  })
})

test('unequal balls are closed on the circle, and equal ones as any ring', () => {
  const made = thrustBearingOf(DESIGN)
  if (!made.ok) throw new Error('there must be such a bearing')
  const groove = plateGroove(made.value)
  const equal = Array.from({ length: 12 }, () => 16)
  expect(groove.unequalGap(groove.x, equal)).toBeWithin(1e-9, 0.8)
  expect(groove.tightest(equal)).toBeWithin(1e-12, 8)
})
