import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { RollerInput } from '#shared/bearing/arrangements/roller/input.ts'
import type { ThrustInput } from '#shared/bearing/arrangements/thrust/input.ts'
import { arrangementOf, type RadialInput } from '#shared/bearing/arrangements.ts'
import { type BallRing, plugGaps } from '#shared/bearing/ball-ring.ts'
import { SPLITS } from '#shared/bearing/fields.ts'
import { ballGap } from '#shared/geometry/ring-of-balls.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { anyDesigned } from '#tests/support/designed.ts'
import { ballCount, between, magnitude, PLAIN, PLATES, ROLLERS } from '#tests/support/inputs.ts'

type FullRingOfAny = RadialInput | RollerInput | ThrustInput
const KINDS = ['radial', 'roller', 'thrust'] as const

/** The ring of balls of an input, whether or not a bore or rings fit round it. */
function ringOf(input: FullRingOfAny): BallRing {
  const made = arrangementOf(input).bearingOf(input)
  if (!made.ok) throw new Error(JSON.stringify(made.error))
  return made.value as BallRing
}

/** Bearings whose gaps are left to the service: any balls, both units, every arrangement with a ball gap. */
const inputs = (diameters: fc.Arbitrary<number>): fc.Arbitrary<FullRingOfAny> =>
  fc
    .record({
      kind: fc.constantFrom(...KINDS),
      units: fc.constantFrom('mm', 'in'),
      count: ballCount,
      diameter: diameters,
      engagement: between(0.05, 0.45),
      split: fc.constantFrom(...SPLITS),
    })
    .map(({ kind, units, count, diameter, engagement, split }): FullRingOfAny => {
      const shared = { units, balls: { count, diameter: mm(diameter) }, bore: mm(0.01 * diameter) }
      if (kind === 'roller') return { ...shared, arrangement: kind }
      if (kind === 'thrust') return { ...shared, arrangement: kind, plates: { engagement } }
      return { ...shared, arrangement: kind, outerRing: { engagement }, innerRing: { engagement: 0.3 }, split }
    })
    .filter((input) => arrangementOf(input).bearingOf(input).ok)

/** A default is rounded up to what an answer states: 1e-6 mm or 1e-7 in. */
const STEP = 2.6e-6
function expectRoundedUp(value: Mm, exact: number): void {
  expect(value).toBeGreaterThanOrEqual(exact - 1e-9 * exact - 1e-9)
  expect(value).toBeLessThan(exact + STEP)
}

describe('the defaults, from their formulas', () => {
  test('the aim is 1/20 of a ball, or 0.4 mm more than the last ball needs', () => {
    fc.assert(
      fc.property(inputs(magnitude(3, 100)), (input) => {
        const { assembly, ballGap: aim } = ringOf(input).resolved
        const diameter = input.balls.diameter
        const exact = Math.max(0.05 * diameter, assembly.assemblyGap + 0.4)
        fc.pre(exact < (7 / 8) * diameter)
        expectRoundedUp(aim, exact)
      }),
      { numRuns: 500 },
    )
  })

  test('the largest gap is 1/8 of a ball, 1/16 above the aim, or 2 mm more than the last ball needs', () => {
    fc.assert(
      fc.property(inputs(magnitude(3, 100)), (input) => {
        const { assembly, ballGap: aim, minBallGap, maxBallGap } = ringOf(input).resolved
        const diameter = input.balls.diameter
        const exact = Math.max(diameter / 8, aim + diameter / 16, assembly.assemblyGap + 2)
        fc.pre(exact < (15 / 16) * diameter)
        expectRoundedUp(maxBallGap, exact)
        expect(minBallGap).toBe(0)
      }),
      { numRuns: 500 },
    )
  })

  test('balls so small, or so few, that this were a whole ball: the aim and the band stay below one', () => {
    fc.assert(
      fc.property(inputs(magnitude(0.026, 3)), (input) => {
        const { ballGap: aim, maxBallGap } = ringOf(input).resolved
        const diameter = input.balls.diameter
        expect(aim).toBeLessThanOrEqual((7 / 8) * diameter + 1e-12)
        expect(maxBallGap).toBeLessThanOrEqual((15 / 16) * diameter + 1e-12)
        expect(aim).toBeLessThan(maxBallGap)
      }),
      { numRuns: 500 },
    )
  })

  test('go is the plug at which the last ball goes in, no-go the one at the largest gap', () => {
    fc.assert(
      fc.property(inputs(magnitude(0.026, 100)), between(0, 0.5), fc.boolean(), (bare, share, isStated) => {
        const input = isStated ? { ...bare, minBallGap: mm(share * bare.balls.diameter) } : bare
        const { gauge, resolved } = ringOf(input)
        const { ballDiameter, minBallGap, maxBallGap, assembly } = resolved
        const { count } = input.balls
        const gapAt = (plug: Mm): Mm => ballGap(mm((plug + ballDiameter) / 2), ballDiameter, count)
        const within = 1e-10 * count * ballDiameter
        expect(plugGaps(resolved)).toEqual({ go: Math.max(minBallGap, assembly.assemblyGap), noGo: maxBallGap })
        expect(gapAt(gauge.goDiameter)).toBeWithin(within, Math.max(minBallGap, assembly.assemblyGap))
        expect(gapAt(gauge.noGoDiameter)).toBeWithin(within, maxBallGap)
      }),
      { numRuns: 500 },
    )
  })

  test('sent again, they give the same bearing', () => {
    fc.assert(
      fc.property(inputs(magnitude(0.026, 100)), (input) => {
        const bearing = ringOf(input)
        const again = ringOf(bearing.resolved.input as FullRingOfAny)
        expect(again).toEqual({ ...bearing, resolved: { ...bearing.resolved, assumed: [] } })
      }),
      { numRuns: 300 },
    )
  })

  test('rollers and the balls of plates go in at any gap; so do balls into a split outer ring', () => {
    for (const input of [ROLLERS, PLATES, { ...PLAIN, split: 'outer-ring' } as const]) {
      expect(ringOf(input).resolved).toMatchObject({ ballGap: 0.8, maxBallGap: 2, assembly: { assemblyGap: 0 } })
    }
    const small = { ...PLATES, balls: { count: 30, diameter: mm(5) } }
    expect(ringOf(small).resolved).toMatchObject({ ballGap: 0.4, maxBallGap: 2 })
  })

  test('no default is warned of: neither the aim nor the band is below what the last ball needs', () => {
    fc.assert(
      fc.property(inputs(magnitude(3, 100)), (input) => {
        fc.pre(ringOf(input).resolved.assembly.assemblyGap < (7 / 8) * input.balls.diameter)
        const codes = anyDesigned(input).warnings.map(({ facts }) => facts.code)
        expect(codes).not.toContain('gap-below-assembly-gap')
        expect(codes).not.toContain('band-below-assembly-gap')
      }),
      { numRuns: 100 },
    )
  })
})

describe('what is left open keeps to what is stated', () => {
  // 16 mm balls into a split outer ring need no gap: 0.8, and at least 2.
  const band = (gaps: Partial<RadialInput>) => {
    const { ballGap: aim, minBallGap, maxBallGap } = ringOf({ ...PLAIN, split: 'outer-ring', ...gaps }).resolved
    return [minBallGap, aim, maxBallGap]
  }

  test('the aim lies within stated limits, the limits lie round a stated aim', () => {
    expect(band({})).toEqual([0, 0.8, 2])
    expect(band({ maxBallGap: mm(0.5) })).toEqual([0, 0.5, 0.5])
    expect(band({ minBallGap: mm(1.5) })).toEqual([1.5, 1.5, 2.5])
    expect(band({ minBallGap: mm(10) })).toEqual([10, 10, 11])
    expect(band({ ballGap: mm(3) })).toEqual([0, 3, 4])
    expect(band({ ballGap: mm(15) })[2]).toBeWithin(1e-12, (15 + 0.95 * 16) / 2)
  })
})
