import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { type FullRingBearing, type FullRingInput, fullRingsOf } from '#shared/bearing/arrangements.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import { deeperRing, shoulder } from '#shared/bearing/ring-pair.ts'
import { ballGap } from '#shared/geometry/ring-of-balls.ts'
import { inches, mm } from '#shared/units/length.ts'
import { ballCentres, distance } from '#tests/support/ball-centres.ts'
import { ballCount, between, likelyInput, magnitude, PLAIN, ROLLERS } from '#tests/support/inputs.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'

/** The bearing of an input that must have one. */
function made(input: RadialInput): FullRingBearing {
  const result = fullRingsOf(input)
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.error)}`)
  return result.value
}

/** A law over all likely bearings that can be made. */
const overBearings = (law: (bearing: FullRingBearing, input: RadialInput) => void, numRuns = 400) =>
  fc.assert(
    fc.property(likelyInput, (input) => {
      const result = fullRingsOf(input)
      fc.pre(result.ok)
      if (result.ok) law(result.value, input)
    }),
    { numRuns },
  )

describe('the numbers of a bearing, put together again', () => {
  const asked = (value: number, size: number) => [1e-9 * size, value] as const

  test('the balls, laid by coordinates where the outer ring holds them, leave the ball gap that was asked for', () => {
    overBearings(({ outerRing, resolved }) => {
      const { count } = resolved.input.balls
      const pitchRadius = outerRing.landDiameter / 2 + outerRing.seatDepth - resolved.ballDiameter / 2
      const centres = ballCentres(pitchRadius, resolved.ballDiameter, count)
      const [first, last] = [centres[0], centres.at(-1)]
      const gap = first && last && distance(first, last) - resolved.ballDiameter
      expect(gap).toBeWithin(...asked(resolved.ballGap, resolved.ballDiameter * count))
    })
  })

  test('on both bottoms the play is what the groove bottoms and two balls leave', () => {
    overBearings(({ outerRing, innerRing, resolved, pitchRadius }) => {
      if (outerRing.seat !== 'bottom' || innerRing.seat !== 'bottom') return
      const play = outerRing.grooveBottomDiameter - innerRing.grooveBottomDiameter - 2 * resolved.ballDiameter
      expect(play).toBeWithin(...asked(resolved.radialInternalClearance, pitchRadius))
    })
  })

  test('whatever the seats: the play is twice what is between the circles on which the balls run', () => {
    overBearings(({ outerRing, innerRing, resolved, pitchRadius }) => {
      const out = outerRing.landDiameter / 2 + outerRing.seatDepth - resolved.ballDiameter / 2
      const inside = innerRing.landDiameter / 2 - innerRing.seatDepth + resolved.ballDiameter / 2
      expect(2 * (out - inside)).toBeWithin(...asked(resolved.radialInternalClearance, pitchRadius))
    })
  })

  test('each groove is as deep and as round as asked, and each wall and width is what is left', () => {
    overBearings(({ outerRing: outer, innerRing: inner, resolved, pitchRadius }) => {
      const { outerGroove, innerGroove } = resolved
      expect((outer.grooveBottomDiameter - outer.landDiameter) / 2).toBeWithin(...asked(outerGroove.depth, pitchRadius))
      expect((inner.landDiameter - inner.grooveBottomDiameter) / 2).toBeWithin(...asked(innerGroove.depth, pitchRadius))
      expect((outer.outsideDiameter - outer.grooveBottomDiameter) / 2).toBeWithin(...asked(outer.wall, pitchRadius))
      expect((inner.grooveBottomDiameter - inner.boreDiameter) / 2).toBeWithin(...asked(inner.wall, pitchRadius))
      expect((outer.landDiameter - inner.landDiameter) / 2).toBeWithin(
        1e-12 * pitchRadius,
        resolved.ballDiameter - outer.seatDepth - inner.seatDepth + resolved.radialInternalClearance / 2,
      )
      expect(outer.grooveRadius).toBe(outerGroove.radius)
      expect(inner.grooveRadius).toBe(innerGroove.radius)
      expect([outer.width, inner.width]).toEqual([resolved.width, resolved.width])
    })
  })

  test('the wall that was asked for is there: exactly, or more by less than one step of the rounding', () => {
    overBearings(({ outerRing: { wall, outsideDiameter }, resolved, pitchRadius }) => {
      const { wall: least = mm(0), roundOutsideDiameterTo: step } = resolved.input.outerRing ?? {}
      if (step === null || step === undefined) expect(wall).toBeWithin(...asked(least, pitchRadius))
      else {
        expect(wall).toBeGreaterThan(least - 1e-9 * pitchRadius)
        expect(wall).toBeLessThan(least + step / 2 + 1e-9 * pitchRadius)
        expect(outsideDiameter / step).toBeWithin(1e-9, Math.round(outsideDiameter / step))
      }
    })
  })

  test('engagement is groove depth over ball diameter', () => {
    const { outerRing, innerRing } = made({
      ...PLAIN,
      outerRing: { engagement: 0.22 },
      innerRing: { engagement: 0.38 },
    })
    expect(outerRing.grooveDepth).toBeWithin(1e-12, 0.22 * 16)
    expect(innerRing.grooveDepth).toBeWithin(1e-12, 0.38 * 16)
  })

  test('the plug is the circle inside the balls, and less the play the inner groove bottom', () => {
    overBearings(({ gauge, pitchRadius, resolved, innerRing }) => {
      expect(gauge.nominalDiameter).toBeWithin(1e-12 * pitchRadius, 2 * (pitchRadius - resolved.ballDiameter / 2))
      if (innerRing.seat !== 'bottom') return
      const bottom = gauge.nominalDiameter - resolved.radialInternalClearance
      expect(innerRing.grooveBottomDiameter).toBeWithin(...asked(bottom, pitchRadius))
    })
  })

  test('shoulders and groove are the width', () => {
    overBearings((bearing) => {
      for (const ring of ['outerRing', 'innerRing'] as const) {
        expect(2 * shoulder(bearing, ring) + bearing[ring].grooveWidth).toBeWithin(1e-9, bearing.resolved.width)
      }
    })
  })
})

describe('slopes at the design point', () => {
  const closedRing = (count: number, outerRing: RadialInput['outerRing'] = {}) =>
    made({
      units: 'mm',
      balls: { count, diameter: mm(16) },
      bore: mm(0.5),
      ballGap: mm(0),
      innerRing: { engagement: 0.2 },
      outerRing: { engagement: 0.1, ...outerRing },
    })

  test('at exact closure: 2 Z sin(π/Z), −Z (1 + sin(π/Z)), and at a fixed plug −Z (1 − sin(π/Z))', () => {
    for (let count = 5; count <= 200; count++) {
      const { gapPerPitchRadius, gapPerGrooveDepth, gapPerBallDiameter, gauge } = closedRing(count)
      const sine = Math.sin(Math.PI / count)
      expect(gapPerPitchRadius).toBeWithin(1e-11, 2 * count * sine)
      expect(gapPerGrooveDepth).toBe(gapPerPitchRadius)
      expect(gapPerBallDiameter).toBeWithin(1e-10, -count * (1 + sine))
      expect(gauge.gapPerBallDiameterAtPlug).toBeWithin(1e-10, -count * (1 - sine))
    }
  })

  test('by groove depth and by ball diameter, on the bottom and on the edges: against differences', () => {
    overBearings(({ resolved, outerRing, gapPerGrooveDepth, gapPerBallDiameter }) => {
      const { outerGroove, ballDiameter, input } = resolved
      const { count } = input.balls
      const landRadius = outerRing.landDiameter / 2
      // Where the balls would run in this ring, its groove cut so deep or its balls so large: by the plane figure.
      const gapWith = (depth: number, ball: number): number => {
        const halfWidth = Math.sqrt(depth * (2 * outerGroove.radius - depth))
        const fits = outerGroove.radius >= ballDiameter / 2 - 1e-9 * ballDiameter
        const pitchRadius = fits
          ? landRadius + depth - ball / 2
          : landRadius - Math.sqrt(ball ** 2 / 4 - halfWidth ** 2)
        return ballGap(mm(pitchRadius), mm(ball), count)
      }
      const step = 1e-6 * outerGroove.depth
      const byDepth =
        (gapWith(outerGroove.depth + step, ballDiameter) - gapWith(outerGroove.depth - step, ballDiameter)) / (2 * step)
      expect(gapPerGrooveDepth).toBeWithin(1e-3, byDepth)
      const grown = (1e-6 * ballDiameter) / count
      const byBalls =
        (gapWith(outerGroove.depth, ballDiameter + grown) - gapWith(outerGroove.depth, ballDiameter - grown)) /
        (2 * grown)
      expect(gapPerBallDiameter).toBeWithin(1e-4 * count ** 2 + 1e-3, byBalls)
    }, 300)
  })

  test('on the edges a cut opens the gap less than on the bottom', () => {
    const { gapPerGrooveDepth, gapPerPitchRadius, outerRing } = closedRing(12, { groove: { conformity: 0.45 } })
    expect(outerRing.seat).toBe('edges')
    expect(gapPerGrooveDepth).toBeLessThan(gapPerPitchRadius)
  })
})

describe('one bearing, however it is said', () => {
  const LENGTHLESS =
    /gapPer|insidePer|tilt|mostBalls|Filling\/limit|\/count|[eE]ngagement|conformity|shopDenominator|perGroove|perBall/

  test('every length twice as large, every length of the answer twice as large, the slopes and angles the same', () => {
    fc.assert(
      fc.property(ballCount, between(0.45, 0.6), magnitude(1e-3, 1e3), (count, conformity, scale) => {
        const sized = (by: number): RadialInput => ({
          units: 'mm',
          balls: { count, diameter: mm(16 * by), standardDeviation: mm(0.1 * by) },
          bore: mm(0.3 * by),
          groove: { conformity },
          outerRing: { roundOutsideDiameterTo: null, wall: mm(11 * by), grooveDepth: mm(3 * by) },
          innerRing: { engagement: 0.3 },
          ballGap: mm(0.9 * by),
          maxBallGap: mm(2 * by),
          width: mm(24 * by),
          radialInternalClearance: mm(0.4 * by),
          finishAllowance: mm(0.05 * by),
        })
        const small = fullRingsOf(sized(1))
        fc.pre(small.ok)
        const large = new Map(numberLeaves(made(sized(scale))))
        for (const [path, value] of numberLeaves(small.ok && small.value)) {
          const expected = LENGTHLESS.test(path) ? value : value * scale
          expect(large.get(path), path).toBeWithin(
            1e-8 * Math.max(Math.abs(expected), LENGTHLESS.test(path) ? 1 : scale),
            expected,
          )
        }
      }),
      { numRuns: 200 },
    )
  })

  test('inches and millimetres give the same bearing, bit for bit', () => {
    overBearings(({ resolved }) => {
      // Defaults are rounded in the units of the answer: the law is one of whole inputs.
      const input: RadialInput = { ...resolved.input, arrangement: 'radial' }
      const bearing = made(input)
      const other = made({ ...input, units: input.units === 'in' ? 'mm' : 'in' })
      const { resolved: _, ...figures } = bearing
      const { resolved: __, ...otherFigures } = other
      expect(otherFigures).toEqual(figures)
    })
  })

  test('figures of a rule in inches are those figures in millimetres', () => {
    const common = { outerRing: { roundOutsideDiameterTo: mm(6.35) }, ballGap: mm(1), maxBallGap: mm(3) }
    const { resolved: _, ...rule } = made({
      ...common,
      units: 'in',
      balls: { count: 10, diameter: inches(3 / 4) },
      bore: inches(1 / 2),
    })
    const { resolved: __, ...metric } = made({
      ...common,
      units: 'mm',
      balls: { count: 10, diameter: mm(19.05) },
      bore: mm(12.7),
    })
    expect(rule).toEqual(metric)
  })

  test('a depth or an engagement, a radius, a cutter or a conformity', () => {
    const { resolved: _, ...byRatio } = made({
      ...PLAIN,
      outerRing: { engagement: 0.25 },
      groove: { conformity: 0.5625 },
    })
    const same: readonly RadialInput[] = [
      { ...PLAIN, outerRing: { grooveDepth: mm(4) }, groove: { grooveRadius: mm(9) } },
      { ...PLAIN, outerRing: { grooveDepth: mm(4) }, groove: { cutterDiameter: mm(18) } },
      {
        ...PLAIN,
        outerRing: { engagement: 0.25, groove: { grooveRadius: mm(9) } },
        innerRing: { groove: { conformity: 0.5625 } },
      },
    ]
    for (const input of same) {
      const { resolved: __, ...figures } = made(input)
      expect(figures).toEqual(byRatio)
    }
  })

  test('measured balls: their mean closes the ring, not the nominal diameter', () => {
    const diameters = [15.9, 16.1, 16.2, 16, 16.3, 15.8, 16, 16.1, 16.2, 16.1, 16, 15.9, 16.2].map(mm)
    const mean = diameters.reduce((sum, each) => sum + each, 0) / 13
    const bearing = made({ ...PLAIN, balls: { count: 12, diameter: mm(16), diameters } })
    expect(bearing.resolved.ballDiameter).toBeWithin(1e-12, mean)
    expect(bearing.closedPitchRadius).toBeWithin(1e-12, mean / (2 * Math.sin(Math.PI / 12)))
  })
})

describe('the ring that holds deeper', () => {
  test('is the one to make shallower', () => {
    expect(deeperRing(made(PLAIN))).toBe('innerRing')
    expect(deeperRing(made({ ...PLAIN, outerRing: { engagement: 0.4 }, innerRing: { engagement: 0.2 } }))).toBe(
      'outerRing',
    )
  })
})

type OfPlates = 'plate-cut-through' | 'plates-meet'
type OfCages = 'pockets-meet' | 'no-room-for-cage' | 'cage-misses-middle' | 'pocket-cuts-cage'

/** A row for every code of rings: a new refusal does not compile without one; those of plates and cages stand in tests of their own. What can be asked at all is the design's and the edge's to say. */
const REFUSED: Readonly<
  Record<
    Exclude<Refusal['code'], 'beyond-bounds' | 'not-answered' | 'not-of-arrangement' | OfPlates | OfCages>,
    readonly [path: string, input: FullRingInput]
  >
> = {
  'bore-meets-groove': ['/bore', { ...PLAIN, bore: mm(50) }],
  'no-room-inside': [
    '/balls/count',
    {
      ...PLAIN,
      balls: { count: 3, diameter: mm(16) },
      innerRing: { engagement: 0.6 },
      groove: { conformity: 0.7 },
      ballGap: mm(0),
      radialInternalClearance: mm(5),
      outerRing: { engagement: 0.2 },
    },
  ],
  'wall-below-zero': ['/outerRing/outsideDiameter', { ...PLAIN, outerRing: { outsideDiameter: mm(70) } }],
  'groove-undercut': ['/outerRing/engagement', { ...PLAIN, outerRing: { engagement: 0.54 } }],
  'lands-overlap': [
    '/innerRing/engagement',
    { ...PLAIN, outerRing: { engagement: 0.5 }, innerRing: { engagement: 0.53 } },
  ],
  'gap-takes-another-ball': ['/ballGap', { ...PLAIN, ballGap: mm(15.3) }],
  'gap-band-reversed': ['/minBallGap', { ...PLAIN, minBallGap: mm(3), maxBallGap: mm(2) }],
  'gap-outside-band': ['/ballGap', { ...PLAIN, ballGap: mm(3), maxBallGap: mm(2) }],
  'play-lets-balls-out': ['/radialInternalClearance', { ...PLAIN, radialInternalClearance: mm(6.4) }],
  'finish-fills-groove': ['/finishAllowance', { ...PLAIN, finishAllowance: mm(3.2) }],
  'finish-leaves-no-wood': ['/finishAllowance', { ...PLAIN, width: mm(4), finishAllowance: mm(2.5) }],
  'roller-longer-than-ring': [
    '/balls/length',
    { ...ROLLERS, balls: { ...ROLLERS.balls, length: mm(30) }, width: mm(30) },
  ],
  'play-lets-rollers-climb': ['/radialInternalClearance', { ...ROLLERS, radialInternalClearance: mm(8) }],
  'other-balls-measured': [
    '/balls/diameters',
    { ...PLAIN, balls: { count: 3, diameter: mm(16), diameters: [mm(14), mm(14.2), mm(14.1)] } },
  ],
  'too-few-measured': [
    '/balls/diameters',
    { ...PLAIN, balls: { count: 12, diameter: mm(16), diameters: [mm(16), mm(15.9)] } },
  ],
}

describe('refused', () => {
  const refusalsOf = (input: FullRingInput): readonly Refusal[] => {
    const result = fullRingsOf(input)
    return result.ok ? [] : result.error
  }

  test.each(Object.entries(REFUSED))('%s, at %o', (code, [path, input]) => {
    expect(refusalsOf(input).map((refusal) => [refusal.code, refusal.path])).toContainEqual([code, path])
    for (const [at, number] of numberLeaves(refusalsOf(input))) expect(Number.isFinite(number), at).toBe(true)
  })

  test('every reason at once', () => {
    const codes = (input: RadialInput) => refusalsOf(input).map(({ code }) => code)
    expect(
      codes({
        ...PLAIN,
        bore: mm(60),
        outerRing: { outsideDiameter: mm(10) },
        radialInternalClearance: mm(8),
        finishAllowance: mm(4),
      }),
    ).toEqual(['play-lets-balls-out', 'finish-fills-groove', 'wall-below-zero', 'bore-meets-groove'])
    expect(
      codes({
        ...PLAIN,
        balls: { count: 12, diameter: mm(16), diameters: [mm(16)] },
        groove: { conformity: 0.3 },
        outerRing: { engagement: 0.5 },
      }),
    ).toEqual(['too-few-measured', 'groove-undercut', 'groove-undercut'])
    expect(codes({ ...PLAIN, ballGap: mm(16), maxBallGap: mm(20) })).toEqual([
      'gap-takes-another-ball',
      'gap-takes-another-ball',
    ])
  })

  test.each([
    ['/bore', { ...PLAIN, bore: mm(50) }, 'bore', 'below'],
    ['/radialInternalClearance', { ...PLAIN, radialInternalClearance: mm(9) }, 'radialInternalClearance', 'below'],
    ['/finishAllowance', { ...PLAIN, finishAllowance: mm(9) }, 'finishAllowance', 'below'],
    ['/ballGap', { ...PLAIN, ballGap: mm(16) }, 'ballGap', 'below'],
  ] as const)('%s: a little less than the bound that is named is let through', (path, input, name, bound) => {
    const [refusal] = refusalsOf(input).filter((one) => one.path === path)
    const limit =
      refusal !== undefined && bound in refusal ? Object.getOwnPropertyDescriptor(refusal, bound)?.value : Number.NaN
    expect(refusalsOf({ ...input, [name]: mm(limit) }).some((one) => one.path === path)).toBe(true)
    expect(refusalsOf({ ...input, [name]: mm(limit * 0.9999) }).some((one) => one.path === path)).toBe(false)
  })

  test('a wall of nothing is named as the wall, where it was given as one', () => {
    const outerRing = { wall: mm(0), roundOutsideDiameterTo: null }
    expect(refusalsOf({ ...PLAIN, outerRing }).map(({ path }) => path)).toEqual(['/outerRing/wall'])
  })

  // 8.48 against 0.53 × 16 = 8.480000000000002: a half circle by its numbers, an undercut by a rounding, once a throw.
  test.each([
    { units: 'mm', grooveDepth: mm(0.53 * 16), grooveRadius: mm(8.48) },
    { units: 'mm', grooveDepth: mm(8.48), grooveRadius: mm(0.53 * 16) },
    { units: 'mm', grooveDepth: mm(8.48 * (1 + 5e-13)), grooveRadius: mm(8.48) },
  ] as const)('a half circle is none of them, whichever way the rounding went: %o', ({ grooveDepth, grooveRadius }) => {
    const shallow = { engagement: 0.2 }
    expect(refusalsOf({ ...PLAIN, outerRing: { grooveDepth, groove: { grooveRadius } }, innerRing: shallow })).toEqual(
      [],
    )
    expect(refusalsOf({ ...PLAIN, innerRing: { grooveDepth, groove: { grooveRadius } }, outerRing: shallow })).toEqual(
      [],
    )
  })

  // A default of ours was once what a design was refused for.
  test.each([
    ['a gap of nearly a ball, with the largest gap left open', { ballGap: mm(15) }],
    ['a smallest gap of more than half a ball, with the aim left open', { minBallGap: mm(10) }],
    ['a largest gap below what the last ball needs', { maxBallGap: mm(0.1) }],
    ['no largest gap at all', { maxBallGap: mm(0) }],
  ])('not %s', (_, gaps) => {
    expect(refusalsOf({ ...PLAIN, ...gaps })).toEqual([])
  })

  test.each([
    [{ ballGap: mm(1), minBallGap: mm(3) }, 'gap-outside-band', '/ballGap'],
    [{ minBallGap: mm(15.5) }, 'gap-takes-another-ball', '/minBallGap'],
    [{ maxBallGap: mm(16) }, 'gap-takes-another-ball', '/maxBallGap'],
    [{ minBallGap: mm(3), maxBallGap: mm(2) }, 'gap-band-reversed', '/minBallGap'],
  ])('%o: the fault is found in what was given', (gaps, code, path) => {
    expect(refusalsOf({ ...PLAIN, ...gaps }).map((refusal) => [refusal.code, refusal.path])).toEqual([[code, path]])
  })
})
