import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { CONTACT_WOODS } from '#shared/data/contact-woods.ts'
import { TURNING_RINGS } from '#shared/questions/load/fields.ts'
import type { LoadCheckInput } from '#shared/questions/load/input.ts'
import type { LoadCheck } from '#shared/questions/load/load-check.ts'
import { loadCheck } from '#shared/questions/load/load-check.ts'
import { mm } from '#shared/units/length.ts'
import { anyInput, likelyInput, magnitude, PLAIN } from '#tests/support/inputs.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'

/** Twelve steel balls of 16 mm between rings of sugar maple, under 50 N. */
const STEEL: LoadCheckInput & { readonly design: RadialInput } = {
  design: { ...PLAIN, balls: { ...PLAIN.balls, material: 'steel' } },
  radialLoad: 50,
  speed: 200,
}

function checked(input: LoadCheckInput): LoadCheck {
  const made = loadCheck(input)
  if (!made.ok) throw new Error(JSON.stringify(made.error))
  return made.value
}

const codes = ({ warnings }: LoadCheck): readonly string[] => warnings.map(({ facts }) => facts.code)

const extras = fc.record(
  {
    wood: fc.constantFrom(...CONTACT_WOODS),
    ballWood: fc.constantFrom(...CONTACT_WOODS),
    dentFraction: magnitude(0.0001, 0.05),
    turning: fc.constantFrom(...TURNING_RINGS),
    speed: magnitude(0.001, 100_000),
  },
  { requiredKeys: [] },
)

test.each([
  ['likely', likelyInput],
  ['any', anyInput],
] as const)('%s bearings, any load and speed: finite figures or a refusal with a place', (_, inputs) => {
  fc.assert(
    fc.property(inputs, magnitude(1e-3, 1e6), extras, (design, radialLoad, rest) => {
      const made = loadCheck({ design, radialLoad, ...rest })
      if (!made.ok) {
        for (const { path } of made.error) expect(path).toMatch(/^\//)
        return
      }
      const { bearing, ...figures } = made.value
      for (const [path, figure] of numberLeaves(figures)) expect(Number.isFinite(figure), path).toBe(true)
      expect(bearing.resolved.input.balls.count).toBe(figures.sharing.underBall.each.length)
    }),
    { numRuns: 400 },
  )
})

describe('what the limits mean', () => {
  test('at the load of the dent the dent is just so deep, and its warning is gone', () => {
    fc.assert(
      fc.property(likelyInput, magnitude(1, 1e5), extras, (design, radialLoad, rest) => {
        const made = loadCheck({ design, radialLoad, ...rest })
        if (!made.ok || !made.value.warnings.some(({ facts }) => facts.code === 'dents-deeper')) return
        const { dent } = made.value
        const there = checked({ design, ...rest, radialLoad: dent.load })
        expect((there[dent.part].dent ?? Number.NaN) / dent.depth).toBeWithin(1e-6, 1)
        expect(codes(there)).not.toContain('dents-deeper')
      }),
    )
  })

  test('at the first mark the pressure is 1.6 times the limit of compression: 16.2 MPa in sugar maple', () => {
    const { firstMark } = checked(STEEL)
    const there = checked({ ...STEEL, radialLoad: firstMark.load })
    expect(there[firstMark.part].maxPressure).toBeWithin(0.08, 1.6 * 10.1)
    expect(codes(there)).not.toContain('first-marked')
    expect(codes(checked({ ...STEEL, radialLoad: firstMark.load * 1.01 }))).toContain('first-marked')
  })

  test('at the lowest speed limit its own reason is met, and the warning is gone', () => {
    const fast = checked({ ...STEEL, speed: 90_000 })
    const [lowest] = fast.speedLimits
    expect(codes(fast)).toContain('too-fast')
    expect(codes(checked({ ...STEEL, speed: lowest.speed }))).not.toContain('too-fast')
    const dents = fast.speedLimits.find(({ reason }) => reason === 'balls-dent-groove')
    const there = checked({ ...STEEL, speed: dents?.speed ?? Number.NaN })
    expect((there.spun?.dent ?? Number.NaN) / there.dent.depth).toBeWithin(1e-6, 1)
  })
})

describe('order', () => {
  test('a softer wood dents earlier; a heavier load dents deeper; a larger dent takes more load', () => {
    const maple = checked(STEEL)
    expect(checked({ ...STEEL, wood: 'basswood-american' }).dent.load).toBeLessThan(maple.dent.load)
    expect(checked({ ...STEEL, radialLoad: 500 }).innerRing.dent).toBeGreaterThan(maple.innerRing.dent ?? Infinity)
    expect(checked({ ...STEEL, dentFraction: 0.02 }).dent.load).toBeGreaterThan(maple.dent.load)
  })

  test('the inner ring, which curves away from the ball, is marked first; a rounder groove is marked earlier', () => {
    expect(checked(STEEL).firstMark.part).toBe('innerRing')
    const rounder = checked({ ...STEEL, design: { ...STEEL.design, groove: { conformity: 0.6 } } })
    expect(rounder.firstMark.load).toBeLessThan(checked(STEEL).firstMark.load)
  })

  test('the same bearing twice as large, under four times the load, is pressed and dented alike', () => {
    // The default gap is a matter of millimetres: the law is one of bearings whose gap is given.
    const small = { ...STEEL, design: { ...STEEL.design, ballGap: mm(1) } }
    const balls = { ...small.design.balls, diameter: mm(32) }
    const design = { ...small.design, balls, bore: mm(24), ballGap: mm(2) }
    const [one, two] = [checked(small), checked({ ...small, radialLoad: 4 * small.radialLoad, design })]
    expect(two.innerRing.maxPressure / one.innerRing.maxPressure).toBeWithin(1e-9, 1)
    expect(two.dent.load / one.dent.load).toBeWithin(1e-9, 4)
    expect(two.sharing.byIntegral.loadZone).toBeWithin(1e-9, one.sharing.byIntegral.loadZone)
  })
})

describe('warnings', () => {
  test('a groove tighter than the ball crushes its edges at any load', () => {
    const tight = checked({ ...STEEL, design: { ...STEEL.design, groove: { conformity: 0.45 } } })
    expect(codes(tight).filter((code) => code === 'edges-crush').length).toBe(2)
    expect(tight.firstMark).toMatchObject({ load: 0, ballLoad: 0 })
    expect(tight.warnings.find(({ facts }) => facts.code === 'edges-crush')?.path).toBe('/design/groove/conformity')
    expect(tight.innerRing.dent).toBeGreaterThan(checked(STEEL).innerRing.dent ?? Infinity)
  })

  test('much play leaves nearly all to one ball; without play five share it', () => {
    const loose = checked({ ...STEEL, design: { ...STEEL.design, radialInternalClearance: mm(1) } })
    expect(codes(loose)).toContain('one-ball-carries')
    expect(loose.sharing.underBall.most).toBeGreaterThan(45)
    const snug = checked({ ...STEEL, design: { ...STEEL.design, radialInternalClearance: mm(0) } })
    expect(codes(snug)).not.toContain('one-ball-carries')
    expect((snug.sharing.underBall.most * 12) / 50).toBeWithin(0.0001, 4.3645)
    expect(snug.sharing.underBall.each.filter((force) => force > 1e-9).length).toBe(5)
  })

  test('balls of a softer wood than the rings are dented themselves', () => {
    const wooden = { ...STEEL, design: PLAIN }
    expect(codes(checked({ ...wooden, ballWood: 'basswood-american' }))).toContain('balls-softer')
    expect(codes(checked(wooden))).not.toContain('balls-softer')
    expect(codes(checked({ ...STEEL, ballWood: 'basswood-american' }))).not.toContain('balls-softer')
  })

  test('a load that buries the balls is a fault, with the load that dents as the way out', () => {
    const heavy = checked({ ...STEEL, radialLoad: 1e6 })
    expect(heavy.warnings[0]).toMatchObject({ severity: 'fault', facts: { code: 'ball-sinks-in' } })
    expect(heavy.innerRing.dent).toBeUndefined()
  })
})
