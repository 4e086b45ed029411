import { describe, expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import type { FullRingInput } from '#shared/bearing/arrangements.ts'
import type { Suggestion } from '#shared/bearing/suggestion.ts'
import type { Severity, WarningCode } from '#shared/bearing/warning.ts'
import { pitchRadiusForGap } from '#shared/geometry/ring-of-balls.ts'
import { inches, mm } from '#shared/units/length.ts'
import { ballCentres } from '#tests/support/ball-centres.ts'
import { designed } from '#tests/support/designed.ts'
import { PLAIN, ROLLERS } from '#tests/support/inputs.ts'
import { MeridianPlane } from '#tests/support/meridian-plane.ts'
import { taking } from '#tests/support/taking.ts'

interface Case {
  readonly input: FullRingInput
  readonly severity: Severity
  readonly path: string
  /** Undefined where no single number helps. */
  readonly suggestion: Suggestion | undefined
}

const number = (path: string, value: number): Suggestion => ({ path, kind: 'number', value })
const length = (path: string, value: number): Suggestion => ({ path, kind: 'length', value: mm(value) })

/*
 * A row for every code: a new warning does not compile without one. The numbers by hand, for twelve balls of 16 mm
 * with a gap of 0.8 mm, R = 31.04: groove bottoms 78.08 and 45.76, with walls of 5 1/3 an outside of 88.8 and a bore of
 * 35, with 11.4046 for screws a bore of 22.9; groove widths 13.27 and 16.44, with shoulders of 1.6 a width of 19.7; and for
 * a seat of 2.4 on the edges of a 6 mm arc w² = 2.4 × 13.6 and h = w² / (6 + √(36 − w²)) = 4.17.
 */
type OfPlates = 'plate-thin' | 'plates-nearly-meet'
type OfCages = 'web-thin' | 'cage-rim-thin' | 'cage-thin' | 'cage-rubs' | 'cage-stands-out'
const WARNED: Readonly<Record<Exclude<WarningCode, OfPlates | OfCages>, readonly Case[]>> = {
  'lands-touch': [
    {
      input: {
        ...PLAIN,
        outerRing: { engagement: 0.5 },
        innerRing: { engagement: 0.5 },
        radialInternalClearance: mm(2),
      },
      severity: 'fault',
      path: '/innerRing/engagement',
      suggestion: number('/innerRing/engagement', 0.45),
    },
  ],
  'lands-nearly-touch': [
    {
      input: { ...PLAIN, outerRing: { grooveDepth: mm(7) }, innerRing: { grooveDepth: mm(8.4) } },
      severity: 'risk',
      path: '/innerRing/grooveDepth',
      suggestion: length('/innerRing/grooveDepth', 8.2),
    },
  ],
  'outer-wall-thin': [
    {
      input: { ...PLAIN, outerRing: { wall: mm(3), roundOutsideDiameterTo: null } },
      severity: 'risk',
      path: '/outerRing/wall',
      suggestion: length('/outerRing/wall', 5.4),
    },
    {
      input: { ...PLAIN, outerRing: { outsideDiameter: mm(82) } },
      severity: 'risk',
      path: '/outerRing/outsideDiameter',
      suggestion: length('/outerRing/outsideDiameter', 88.8),
    },
  ],
  'inner-wall-thin': [
    {
      input: { ...PLAIN, ballGap: mm(0.8), bore: mm(40) },
      severity: 'risk',
      path: '/bore',
      suggestion: length('/bore', 35),
    },
    {
      input: { ...PLAIN, balls: { count: 4, diameter: mm(16) }, bore: mm(5) },
      severity: 'risk',
      path: '/bore',
      suggestion: number('/balls/count', 6),
    },
  ],
  'no-room-for-screws': [
    {
      input: { ...PLAIN, ballGap: mm(0.8), bore: mm(30) },
      severity: 'risk',
      path: '/bore',
      suggestion: length('/bore', 22.4),
    },
  ],
  'groove-wider-than-ring': [
    { input: { ...PLAIN, width: mm(12) }, severity: 'fault', path: '/width', suggestion: length('/width', 19.7) },
  ],
  'shoulders-thin': [
    { input: { ...PLAIN, width: mm(18) }, severity: 'risk', path: '/width', suggestion: length('/width', 19.7) },
  ],
  'shallow-engagement': [
    {
      input: { ...PLAIN, outerRing: { engagement: 0.1 } },
      severity: 'risk',
      path: '/outerRing/engagement',
      suggestion: number('/outerRing/engagement', 0.15),
    },
    {
      input: { ...PLAIN, outerRing: { grooveDepth: mm(2), groove: { grooveRadius: mm(6) } } },
      severity: 'risk',
      path: '/outerRing/grooveDepth',
      suggestion: length('/outerRing/grooveDepth', 4.2),
    },
    {
      // a half circle of 4 mm holds a 16 mm ball 1.07 mm deep and no depth more
      input: { ...PLAIN, outerRing: { grooveDepth: mm(2), groove: { grooveRadius: mm(4) } } },
      severity: 'risk',
      path: '/outerRing/grooveDepth',
      suggestion: undefined,
    },
  ],
  'groove-past-middle': [
    {
      input: { ...PLAIN, innerRing: { engagement: 0.52 } },
      severity: 'fault',
      path: '/innerRing/engagement',
      suggestion: number('/innerRing/engagement', 0.4),
    },
  ],
  'rides-on-edges': [
    {
      input: { ...PLAIN, groove: { conformity: 0.45 } },
      severity: 'risk',
      path: '/groove/conformity',
      suggestion: number('/groove/conformity', 0.53),
    },
    {
      input: { ...PLAIN, innerRing: { groove: { cutterDiameter: mm(15) } } },
      severity: 'risk',
      path: '/innerRing/groove/cutterDiameter',
      suggestion: length('/innerRing/groove/cutterDiameter', 17),
    },
    {
      input: { ...PLAIN, groove: { grooveRadius: mm(7.5) } },
      severity: 'risk',
      path: '/groove/grooveRadius',
      suggestion: length('/groove/grooveRadius', 8.5),
    },
  ],
  'ball-wanders': [
    {
      input: { ...PLAIN, outerRing: { groove: { conformity: 0.7 } } },
      severity: 'risk',
      path: '/outerRing/groove/conformity',
      suggestion: number('/outerRing/groove/conformity', 0.53),
    },
  ],
  'rollers-turn-askew': [
    {
      input: { ...ROLLERS, balls: { ...ROLLERS.balls, length: mm(12) } },
      severity: 'risk',
      path: '/balls/length',
      suggestion: length('/balls/length', 16),
    },
  ],
  'few-balls': [
    {
      input: { ...PLAIN, balls: { count: 5, diameter: mm(16) }, bore: mm(3) },
      severity: 'risk',
      path: '/balls/count',
      suggestion: number('/balls/count', 6),
    },
  ],
  'cannot-assemble': [
    {
      input: { ...PLAIN, split: 'none' },
      severity: 'fault',
      path: '/split',
      suggestion: { path: '/split', kind: 'choice', value: 'inner-ring' },
    },
  ],
  'gap-below-assembly-gap': [
    {
      input: {
        ...PLAIN,
        balls: { count: 8, diameter: mm(16) },
        outerRing: { engagement: 0.4 },
        bore: mm(5),
        ballGap: mm(0),
      },
      severity: 'risk',
      path: '/ballGap',
      suggestion: length('/ballGap', 2),
    },
  ],
  'band-below-assembly-gap': [
    {
      input: {
        ...PLAIN,
        balls: { count: 8, diameter: mm(16) },
        outerRing: { engagement: 0.4 },
        bore: mm(5),
        ballGap: mm(0),
        maxBallGap: mm(1),
      },
      severity: 'risk',
      path: '/maxBallGap',
      suggestion: length('/maxBallGap', 4),
    },
  ],
  'no-play': [
    {
      input: { ...PLAIN, radialInternalClearance: mm(0) },
      severity: 'risk',
      path: '/radialInternalClearance',
      suggestion: length('/radialInternalClearance', 0.4),
    },
  ],
  'plugs-cannot-tell': [
    { input: { ...PLAIN }, severity: 'note', path: '/balls/standardDeviation', suggestion: undefined },
    {
      input: { ...PLAIN, balls: { count: 40, diameter: mm(10), standardDeviation: mm(0.1) } },
      severity: 'risk',
      path: '/balls/standardDeviation',
      suggestion: undefined,
    },
  ],
  'shop-rounding-spoils-gap': [
    {
      input: {
        units: 'in',
        balls: { count: 12, diameter: inches(5 / 8) },
        bore: inches(1 / 2),
        ballGap: inches(0.03),
        minBallGap: inches(0.02),
        maxBallGap: inches(0.04),
        shopDenominator: 16,
      },
      severity: 'risk',
      path: '/ballGap',
      suggestion: number('/shopDenominator', 128),
    },
  ],
}

const withCode = (input: FullRingInput, code: string) =>
  designed(input).warnings.filter(({ facts }) => facts.code === code)

const ROWS = Object.entries(WARNED).flatMap(([code, cases]) => cases.map((row, index) => ({ code, index, ...row })))

describe.each(ROWS)('$code, case $index', ({ code, input, severity, path, suggestion }) => {
  test('is warned of, with its severity, its place and the one number that clears it', () => {
    const [warning] = withCode(input, code)
    expect(warning).toMatchObject({ severity, path })
    expect(warning?.suggestion).toEqual(
      suggestion && 'value' in suggestion && typeof suggestion.value === 'number'
        ? { ...suggestion, value: expect.closeTo(suggestion.value, 9) }
        : suggestion,
    )
  })

  test('is gone once the number is taken', () => {
    const [warning] = withCode(input, code)
    const left = warning?.suggestion === undefined ? undefined : withCode(taking(input, warning.suggestion), code)
    expect(left).toEqual(suggestion === undefined ? undefined : [])
  })
})

describe('a limit', () => {
  const codesOf = (input: RadialInput) => designed(input).warnings.map(({ facts }) => facts.code)

  test.each([
    [
      'outer-wall-thin',
      (wall: number): RadialInput => ({ ...PLAIN, outerRing: { wall: mm(wall), roundOutsideDiameterTo: null } }),
      16 / 3,
    ],
    ['shallow-engagement', (depth: number): RadialInput => ({ ...PLAIN, outerRing: { grooveDepth: mm(depth) } }), 2.4],
    ['no-play', (play: number): RadialInput => ({ ...PLAIN, radialInternalClearance: mm(play) }), 0.08],
  ] as const)('%s: a size on it is clear of it, a little less is not', (code, at, limit) => {
    expect(codesOf(at(limit))).not.toContain(code)
    expect(codesOf(at(limit * (1 - 1e-12)))).not.toContain(code)
    expect(codesOf(at(limit * 0.999))).toContain(code)
  })

  test.each([
    ['ball-wanders', (conformity: number): RadialInput => ({ ...PLAIN, groove: { conformity } }), 0.65],
  ] as const)('%s: a size on it is clear of it, a little more is not', (code, at, limit) => {
    expect(codesOf(at(limit))).not.toContain(code)
    expect(codesOf(at(limit * 1.001))).toContain(code)
  })

  test('a groove that just reaches the middle of the ball passes it', () => {
    const at = (grooveDepth: number) =>
      codesOf({ ...PLAIN, innerRing: { grooveDepth: mm(grooveDepth) }, outerRing: { engagement: 0.15 } })
    expect(at(8)).toContain('groove-past-middle')
    expect(at(7.99)).not.toContain('groove-past-middle')
  })

  test('six balls are enough, and an equal radius is round enough', () => {
    expect(codesOf({ ...PLAIN, balls: { count: 6, diameter: mm(16) }, bore: mm(3) })).not.toContain('few-balls')
    expect(codesOf({ ...PLAIN, groove: { conformity: 0.5 } })).not.toContain('rides-on-edges')
  })
})

describe('assembly', () => {
  test('the gap that is proposed is the first tenth at which the last ball, rolled in by coordinates, goes in', () => {
    const roomAt = (gap: number) => {
      const pitchRadius = pitchRadiusForGap(mm(gap / 16), mm(1), 8)
      const others = ballCentres(pitchRadius, 1, 7)
      return new MeridianPlane({ conformity: 0.53, engagement: 0.4, pitchRadius, others }).leastRoomRolling()
    }
    expect(roomAt(2)).toBeGreaterThan(-1e-9)
    expect(roomAt(1.9)).toBeLessThan(-1e-4)
  })

  test('a one-piece outer ring with a gap for the last ball, a split one with none', () => {
    const tight: RadialInput = {
      ...PLAIN,
      balls: { count: 8, diameter: mm(16) },
      outerRing: { engagement: 0.4 },
      bore: mm(5),
      ballGap: mm(0),
    }
    expect(withCode(tight, 'gap-below-assembly-gap')).toHaveLength(1)
    expect(withCode({ ...tight, split: 'outer-ring' }, 'gap-below-assembly-gap')).toHaveLength(0)
  })

  test('the default gap lets the last ball in, whatever the count', () => {
    for (let count = 3; count <= 200; count++) {
      expect(withCode({ ...PLAIN, balls: { count, diameter: mm(16) }, bore: mm(2) }, 'gap-below-assembly-gap')).toEqual(
        [],
      )
    }
  })

  test('screws are asked after only where they hold the inner ring together', () => {
    const thin: RadialInput = { ...PLAIN, bore: mm(30) }
    expect(withCode(thin, 'no-room-for-screws')).toHaveLength(1)
    expect(withCode({ ...thin, split: 'outer-ring' }, 'no-room-for-screws')).toHaveLength(0)
  })

  test('three balls with half a ball of gap reach hardly past a half turn: these two rings need no split', () => {
    const three: RadialInput = {
      units: 'mm',
      balls: { count: 3, diameter: mm(30) },
      bore: mm(1),
      split: 'none',
      ballGap: mm(14),
      outerRing: { engagement: 0.2 },
      innerRing: { engagement: 0.2 },
    }
    expect(designed(three).bearing.eccentricFilling).toMatchObject({ mostBalls: 3, roomBetweenLands: true })
    expect(withCode(three, 'cannot-assemble')).toEqual([])
    expect(withCode({ ...three, innerRing: { engagement: 0.35 } }, 'cannot-assemble')).toHaveLength(1)
    expect(withCode({ ...three, ballGap: mm(2) }, 'cannot-assemble')).toHaveLength(1)
  })
})

describe('the rule', () => {
  const half: RadialInput = {
    ...PLAIN,
    units: 'in',
    balls: { count: 12, diameter: inches(5 / 8) },
    bore: inches(1 / 2),
  }

  test('a rule coarser than the balls: the gap there is given as −Dw, and nothing is thrown', () => {
    const tiny: RadialInput = { units: 'mm', balls: { count: 20, diameter: mm(0.005) }, bore: mm(0.01), split: 'none' }
    expect(
      withCode(tiny, 'shop-rounding-spoils-gap').map(({ facts }) => 'gapThere' in facts && facts.gapThere),
    ).toContain(-0.005)
    expect(
      designed(tiny).dimensions.some((row) => row.gapPerUnit !== undefined && row.gapChangeAtShop === undefined),
    ).toBe(true)
  })

  test('on the edges the groove bottom moves the gap less than the gauge does', () => {
    const { warnings } = designed({
      ...half,
      groove: { conformity: 0.45 },
      outerRing: { engagement: 0.4 },
      shopDenominator: 8,
      minBallGap: inches(0.03),
      maxBallGap: inches(0.032),
      ballGap: inches(0.031),
    })
    const spoilt = warnings.flatMap(({ facts }) => (facts.code === 'shop-rounding-spoils-gap' ? [facts] : []))
    const perError = (dimension: string) =>
      spoilt
        .filter((facts) => facts.dimension === dimension)
        .map(({ gapThere, shopError }) => (gapThere - inches(0.031)) / shopError)[0] ?? Number.NaN
    expect(perError('grooveBottomDiameter')).toBeLessThan(0.9 * perError('gaugeDiameter'))
  })

  test('a figure at which the last ball stays out is no figure to work to, even with a smallest gap of 0', () => {
    // 0.1 mm of diameter is 0.31 mm of gap
    const spoilt = [15.98, 15.99, 16, 16.01, 16.02].flatMap((diameter) => {
      const balls = { count: 12, diameter: mm(diameter) }
      const { assemblyGap } = designed({ ...PLAIN, balls }).bearing.assembly
      const input: RadialInput = { ...PLAIN, balls, ballGap: mm(assemblyGap + 0.05), minBallGap: mm(0) }
      return withCode(input, 'shop-rounding-spoils-gap').flatMap(({ facts }) =>
        facts.code === 'shop-rounding-spoils-gap' ? [{ ...facts, assemblyGap }] : [],
      )
    })
    expect(spoilt.length).toBeGreaterThan(0)
    for (const { gapThere, least, assemblyGap } of spoilt) {
      expect(least).toBe(assemblyGap)
      expect(gapThere).toBeGreaterThan(0)
      expect(gapThere).toBeLessThan(least)
    }
  })

  test('in millimetres a gap that lands on the rule is proposed', () => {
    // 0.1 mm of diameter is 0.31 mm of gap: in a band that wide one gap lands on the rule, wherever the aim was
    const spoilt = [0.66, 0.7, 0.74, 0.86, 0.9, 0.94].flatMap((gap) => {
      const input: RadialInput = { ...PLAIN, ballGap: mm(gap), minBallGap: mm(0.64), maxBallGap: mm(0.96) }
      return withCode(input, 'shop-rounding-spoils-gap').map(({ suggestion }) => ({ input, suggestion }))
    })
    expect(spoilt.length).toBeGreaterThan(1)
    for (const { input, suggestion } of spoilt) {
      expect(suggestion?.path).toBe('/ballGap')
      const { bearing, dimensions } = designed(suggestion === undefined ? input : taking(input, suggestion))
      expect(bearing.resolved.ballGap).toBeWithin(0.16, 0.8)
      for (const key of ['outerRing.grooveBottomDiameter', 'gauge.nominalDiameter']) {
        expect(dimensions.find((row) => row.key === key)?.shop.error).toBeWithin(1e-6, 0)
      }
    }
  })
})

test('two codes for one trouble: clearing the worse into the less bad is no remedy', () => {
  const [fault] = withCode({ ...PLAIN, width: mm(12) }, 'groove-wider-than-ring')
  const width = fault?.suggestion?.kind === 'length' ? fault.suggestion.value : mm(0)
  expect(withCode({ ...PLAIN, width }, 'shoulders-thin')).toEqual([])
})
