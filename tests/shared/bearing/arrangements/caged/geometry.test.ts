import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type CagedBearing, cagedBearingOf } from '#shared/bearing/arrangements/caged/geometry.ts'
import type { CagedInput } from '#shared/bearing/arrangements/caged/input.ts'
import { mm } from '#shared/units/length.ts'
import { cagedDesigned } from '#tests/support/designed.ts'
import { CAGED, likelyCaged } from '#tests/support/inputs.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'
import { taking } from '#tests/support/taking.ts'

function made(input: CagedInput): CagedBearing {
  const result = cagedBearingOf(input)
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

/** Those of the likely ones that can be. */
const bearings: fc.Arbitrary<CagedBearing> = likelyCaged
  .map(cagedBearingOf)
  .filter((result) => result.ok)
  .map(({ value }) => value)

const codesOf = (input: CagedInput) => cagedDesigned(input).warnings.map(({ facts }) => facts.code)

describe('by coordinates: balls at even angles on the pitch circle', () => {
  test('each touches the outer groove, and the inner one half the play further in; the cage stands clear between the lands', () => {
    fc.assert(
      fc.property(bearings, ({ resolved, pitchRadius, outerRing, innerRing, cage, ballSpacing, plugDiameter }) => {
        const { ballDiameter, radialInternalClearance: play, landClearance } = resolved
        const within = 1e-9 * pitchRadius
        const centres = Array.from({ length: resolved.input.balls.count }, (_, index) => {
          const angle = (2 * Math.PI * index) / resolved.input.balls.count
          return [pitchRadius * Math.cos(angle), pitchRadius * Math.sin(angle)] as const
        })
        const [first = [0, 0], second = [0, 0]] = centres
        expect(Math.hypot(second[0] - first[0], second[1] - first[1])).toBeWithin(within, ballDiameter + ballSpacing)
        if (outerRing.seat === 'bottom') {
          expect(pitchRadius + ballDiameter / 2).toBeWithin(within, outerRing.grooveBottomDiameter / 2)
        }
        if (innerRing.seat === 'bottom') {
          expect(pitchRadius - ballDiameter / 2 - play / 2).toBeWithin(within, innerRing.grooveBottomDiameter / 2)
        }
        expect(plugDiameter / 2 + ballDiameter).toBeWithin(within, pitchRadius + ballDiameter / 2)
        expect(cage.outsideDiameter / 2 + landClearance).toBeWithin(within, outerRing.landDiameter / 2)
        expect(cage.boreDiameter / 2 - landClearance).toBeWithin(within, innerRing.landDiameter / 2)
        expect(cage.web).toBeGreaterThan(0)
        expect(cage.boreDiameter / 2).toBeLessThan(pitchRadius)
        expect(cage.outsideDiameter / 2).toBeGreaterThan(pitchRadius)
      }),
    )
  })

  test('said by its web or by its pitch diameter, it is the same cage', () => {
    fc.assert(
      fc.property(bearings, ({ resolved, cage, pitchRadius }) => {
        const { web: _w, pitchDiameter: _p, ...rest } = resolved.input.cage ?? {}
        const byWeb = made({ ...resolved.input, cage: { ...rest, web: cage.web } })
        const byPitch = made({ ...resolved.input, cage: { ...rest, pitchDiameter: mm(2 * pitchRadius) } })
        expect(byWeb.pitchRadius).toBeWithin(1e-9 * pitchRadius, pitchRadius)
        expect(byPitch.cage.web).toBeWithin(1e-9 * pitchRadius, cage.web)
      }),
    )
  })
})

/** Whether the inner ring, pushed so far aside, overlaps a ball at an angle from the way it leaves open. */
const isClear = ({ pitchRadius, resolved }: CagedBearing, aside: number, angle: number): boolean => {
  const toBall = Math.hypot(pitchRadius * Math.cos(angle) + aside, pitchRadius * Math.sin(angle))
  return toBall >= pitchRadius - resolved.radialInternalClearance / 2 - 1e-9 * pitchRadius
}

describe('eccentric filling of rings of one piece', () => {
  test('by default every count goes in: at the widest place a ball passes, and no ball stands in the way of the ring', () => {
    for (let count = 3; count <= 200; count += 1) {
      const bearing = made({ ...CAGED, balls: { count, diameter: mm(16) } })
      const { landGap, resolved, fillingAngle, eccentricFilling } = bearing
      expect(fillingAngle).toBeLessThanOrEqual(180 + 1e-6)
      expect(eccentricFilling.mostBalls).toBeGreaterThanOrEqual(count)
      const aside = resolved.ballDiameter - landGap
      // The lands do not overlap on the other side, and leave a ball's width on this one.
      expect(aside).toBeLessThanOrEqual(landGap)
      const end = (fillingAngle / 2) * (Math.PI / 180)
      for (const part of [0, 0.5, 1]) {
        for (const angle of [0, end / 2, end]) expect(isClear(bearing, part * aside, angle)).toBe(true)
      }
    }
  })

  test('more than a half turn of balls is warned of, and so are lands too near; the number that is offered lets them in', () => {
    const near: CagedInput = { ...CAGED, cage: { web: mm(4) } }
    expect(codesOf(near)).toContain('cannot-assemble')
    const deep: CagedInput = { ...CAGED, innerRing: { engagement: 0.35 } }
    expect(codesOf(deep)).toContain('cannot-assemble')
    for (const input of [near, deep]) {
      const warning = cagedDesigned(input).warnings.find(({ facts }) => facts.code === 'cannot-assemble')
      if (warning?.suggestion === undefined) throw new Error('no suggestion')
      expect(codesOf(taking(input, warning.suggestion))).not.toContain('cannot-assemble')
    }
    // Side by side nine balls of 16 fill a half turn on a circle of 16 / sin(π / 16) = 82.01.
    expect(cagedDesigned(near).warnings.find(({ facts }) => facts.code === 'cannot-assemble')?.suggestion?.path).toBe(
      '/cage/web',
    )
    const { split } = made({ ...near, split: 'inner-ring' }).resolved
    expect(split).toBe('inner-ring')
  })

  test('a split ring needs no half turn: the usual web is a quarter of a ball, and the cage one piece', () => {
    const { cage } = made({ ...CAGED, split: 'inner-ring' })
    expect(cage.web).toBeWithin(1e-9, 4)
    expect(cage.pieces).toBe(1)
    expect(made(CAGED).cage.pieces).toBe(2)
  })
})

test('its whole input asked again gives the same design, and every figure is finite', () => {
  fc.assert(
    fc.property(bearings, ({ resolved: { input } }) => {
      const { bearing, ...rest } = cagedDesigned(input)
      const { bearing: again, ...restAgain } = cagedDesigned(bearing.resolved.input)
      expect(restAgain).toEqual(rest)
      expect(again.resolved).toEqual({ ...bearing.resolved, assumed: [] })
      for (const [path, figure] of numberLeaves({ ...bearing })) expect(Number.isFinite(figure), path).toBe(true)
    }),
    { numRuns: 60 },
  )
})

test('twice as large is twice as large', () => {
  const scaled = (by: number) =>
    made({
      ...CAGED,
      balls: { count: 9, diameter: mm(16 * by) },
      bore: mm(12 * by),
      // With the usual play the web fills the half turn, and is rounded.
      radialInternalClearance: mm(0.32 * by),
    })
  const [one, two] = [scaled(1), scaled(2)]
  for (const key of ['boreDiameter', 'outsideDiameter', 'web', 'rim', 'pocketDiameter'] as const) {
    expect(two.cage[key]).toBeWithin(1e-9, 2 * one.cage[key])
  }
})

test('every suggestion clears its warning', () => {
  fc.assert(
    fc.property(bearings, ({ resolved }) => {
      for (const { facts, suggestion } of cagedDesigned(resolved.input).warnings) {
        if (suggestion === undefined) continue
        const left = cagedDesigned(taking(resolved.input, suggestion)).warnings
        expect(left.filter((each) => each.facts.code === facts.code && !('ring' in facts))).toEqual([])
      }
    }),
    { numRuns: 60 },
  )
})

describe('warned of, with the number that clears it', () => {
  test.each([
    ['web-thin', { split: 'inner-ring', cage: { web: mm(1) } }, '/cage/web'],
    ['web-thin', { split: 'inner-ring', cage: { pitchDiameter: mm(58) } }, '/cage/pitchDiameter'],
    ['cage-rim-thin', { cage: { width: mm(18) } }, '/cage/width'],
    // However small the balls, 1.5 mm of wood: 5.25 of pocket and twice that
    ['cage-rim-thin', { balls: { count: 9, diameter: mm(5) }, bore: mm(6), cage: { width: mm(8.2) } }, '/cage/width'],
    ['web-thin', { balls: { count: 9, diameter: mm(5) }, bore: mm(4), split: 'inner-ring' }, '/cage/web'],
    ['cage-stands-out', { cage: { width: mm(30) } }, '/cage/width'],
    ['cage-rubs', { cage: { landClearance: mm(0.1) } }, '/cage/landClearance'],
    ['cage-thin', { innerRing: { engagement: 0.4 }, outerRing: { engagement: 0.3 } }, '/cage/landClearance'],
    ['no-play', { radialInternalClearance: mm(0) }, '/radialInternalClearance'],
    ['few-balls', { balls: { count: 5, diameter: mm(16) } }, '/balls/count'],
  ] as const)('%s: %o', (code, change, path) => {
    const input: CagedInput = { ...CAGED, ...change }
    const warning = cagedDesigned(input).warnings.find(({ facts }) => facts.code === code)
    expect(warning?.path).toBe(path)
    if (warning?.suggestion === undefined) throw new Error('no suggestion')
    expect(codesOf(taking(input, warning.suggestion))).not.toContain(code)
  })
})

describe('refused', () => {
  const refused = (input: CagedInput) => {
    const result = cagedBearingOf(input)
    return result.ok ? [] : result.error.map(({ code, path }) => [code, path])
  }

  test.each([
    ['pockets-meet', { cage: { pitchDiameter: mm(50) } }, '/cage/pitchDiameter'],
    ['no-room-for-cage', { cage: { landClearance: mm(5) } }, '/cage/landClearance'],
    ['cage-misses-middle', { outerRing: { engagement: 0.47 }, groove: { conformity: 0.6 } }, '/outerRing/engagement'],
    ['cage-misses-middle', { innerRing: { engagement: 0.49 }, groove: { conformity: 0.6 } }, '/innerRing/engagement'],
    ['pocket-cuts-cage', { cage: { width: mm(16) } }, '/cage/width'],
    ['wall-below-zero', { outerRing: { outsideDiameter: mm(90) } }, '/outerRing/outsideDiameter'],
    ['bore-meets-groove', { bore: mm(70) }, '/bore'],
  ] as const)('%s: %o', (code, change, path) => {
    expect(refused({ ...CAGED, ...change })).toContainEqual([code, path])
  })
})
