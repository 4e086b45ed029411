import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { type FullRingBearing, type FullRingInput, fullRingsOf } from '#shared/bearing/arrangements.ts'
import {
  BY_CALIPER,
  DIMENSION_SYMBOLS,
  type Dimension,
  type DimensionKey,
  isByCaliper,
  ruleText,
} from '#shared/bearing/dimensions.ts'
import { ballGap } from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'
import { shopFigure } from '#shared/units/shop-figure.ts'
import { anyDesigned, designed, fullRingDesign } from '#tests/support/designed.ts'
import { CAGED, likelyInput, PLAIN, PLATES, ROLLERS } from '#tests/support/inputs.ts'

/** In the order in which parts are made and then checked. */
const KEYS: readonly DimensionKey[] = [
  'pitchDiameter',
  'outerRing.outsideDiameter',
  'plates.outsideDiameter',
  'plates.boreDiameter',
  'plates.grooveDepth',
  'plates.grooveRadius',
  'plates.grooveWidth',
  'plates.wall',
  'plates.innerWall',
  'plates.floor',
  'plates.thickness',
  'outerRing.trackDiameter',
  'outerRing.landDiameter',
  'outerRing.grooveBottomDiameter',
  'outerRing.grooveDepth',
  'outerRing.grooveRadius',
  'outerRing.grooveWidth',
  'outerRing.wall',
  'outerRing.width',
  'innerRing.boreDiameter',
  'innerRing.trackDiameter',
  'innerRing.landDiameter',
  'innerRing.grooveBottomDiameter',
  'innerRing.grooveDepth',
  'innerRing.grooveRadius',
  'innerRing.grooveWidth',
  'innerRing.wall',
  'innerRing.width',
  'rollerLength',
  'cheeks.outsideDiameter',
  'cheeks.holeDiameter',
  'cheeks.thickness',
  'cage.boreDiameter',
  'cage.outsideDiameter',
  'cage.thickness',
  'cage.width',
  'cage.pocketDiameter',
  'cage.web',
  'cage.rim',
  'gauge.nominalDiameter',
  'plugDiameter',
  'gauge.goDiameter',
  'gauge.noGoDiameter',
  'ballSpacing',
  'ballGap',
  'assemblyGap',
  'plateGap',
  'height',
  'landGap',
  'radialInternalClearance',
  'axialPlay',
]

function made(input: RadialInput): FullRingBearing {
  const result = fullRingsOf(input)
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.error)}`)
  return result.value
}
const tableOf = (input: FullRingInput): ReadonlyMap<DimensionKey, Dimension> =>
  new Map(designed(input).dimensions.map((row) => [row.key, row]))
const row = (input: RadialInput, key: DimensionKey): Dimension => {
  const found = tableOf(input).get(key)
  if (found === undefined) throw new Error(`no row for ${key}`)
  return found
}

test.each([PLAIN, ROLLERS, PLATES, CAGED])('$arrangement: rows in the order of making, none twice', (input) => {
  const keys = anyDesigned(input).dimensions.map(({ key }): DimensionKey => key)
  expect(keys).toEqual(KEYS.filter((key) => keys.includes(key)))
})

test('each key has its row in one arrangement or another', () => {
  const keys = [PLAIN, ROLLERS, PLATES, CAGED].flatMap((input) =>
    anyDesigned(input).dimensions.map(({ key }): DimensionKey => key),
  )
  expect(new Set(keys)).toEqual(new Set(KEYS))
  expect(new Set(Object.keys(DIMENSION_SYMBOLS))).toEqual(new Set(KEYS))
})

test('every row has its shop figure in the units and to the denominator of the input', () => {
  fc.assert(
    fc.property(likelyInput, (input) => {
      const result = fullRingDesign(input)
      fc.pre(result.ok)
      if (!result.ok) return
      for (const { value, shop } of result.value.dimensions) {
        expect(shop).toEqual(shopFigure(value, input.units, input.shopDenominator))
        expect(shop.text.endsWith(` ${input.units}`)).toBe(true)
      }
    }),
    { numRuns: 100 },
  )
})

describe('the size to cut to', () => {
  const FINISH = 0.25
  const finished: RadialInput = { ...PLAIN, finishAllowance: mm(FINISH) }

  test.each([
    // holes larger by a film on either side, outsides smaller
    ['outerRing.landDiameter', 2],
    ['outerRing.grooveBottomDiameter', 2],
    ['innerRing.boreDiameter', 2],
    ['outerRing.outsideDiameter', -2],
    ['innerRing.landDiameter', -2],
    ['innerRing.grooveBottomDiameter', -2],
    ['outerRing.width', -2],
    ['innerRing.width', -2],
    // the film lies on the land as well as on the bottom, and makes the arc tighter
    ['outerRing.grooveDepth', 0],
    ['innerRing.grooveDepth', 0],
    ['outerRing.grooveRadius', 1],
    ['innerRing.grooveRadius', 1],
  ] as const)('%s: %s films', (key, films) => {
    const { value, cutTo } = row(finished, key)
    expect(cutTo).toBeWithin(1e-12, value + films * FINISH)
    expect(row(PLAIN, key).cutTo).toBe(row(PLAIN, key).value)
  })

  test('the grooves stay grooves of the same depth: land and bottom as turned differ by it', () => {
    const [land, bottom, depth] = (
      ['outerRing.landDiameter', 'outerRing.grooveBottomDiameter', 'outerRing.grooveDepth'] as const
    ).map((key) => row(finished, key).cutTo ?? Number.NaN)
    expect(((bottom ?? 0) - (land ?? 0)) / 2).toBeWithin(1e-12, depth ?? Number.NaN)
  })

  test('is left out where nothing is cut', () => {
    const uncut = designed(finished)
      .dimensions.filter(({ cutTo }) => cutTo === undefined)
      .map(({ key }) => key)
    expect(uncut).toEqual([
      'pitchDiameter',
      'outerRing.grooveWidth',
      'outerRing.wall',
      'innerRing.grooveWidth',
      'innerRing.wall',
      'gauge.nominalDiameter',
      'gauge.goDiameter',
      'gauge.noGoDiameter',
      'ballGap',
      'assemblyGap',
      'landGap',
      'radialInternalClearance',
      'axialPlay',
    ])
  })
})

describe('what a size does to the ball gap', () => {
  test('is said for what moves it and for nothing else', () => {
    const moving = designed(PLAIN)
      .dimensions.filter((one) => one.gapPerUnit !== undefined)
      .map(({ key }) => key)
    expect(moving).toEqual([
      'pitchDiameter',
      'outerRing.landDiameter',
      'outerRing.grooveBottomDiameter',
      'outerRing.grooveDepth',
      'gauge.nominalDiameter',
    ])
  })

  test('a diameter moves the pitch radius by half of itself, a depth by all of it', () => {
    const { gapPerPitchRadius } = made(PLAIN)
    expect(row(PLAIN, 'outerRing.grooveBottomDiameter').gapPerUnit).toBeWithin(1e-12, gapPerPitchRadius / 2)
    expect(row(PLAIN, 'outerRing.grooveDepth').gapPerUnit).toBeWithin(1e-12, gapPerPitchRadius)
    expect(row(PLAIN, 'gauge.nominalDiameter').gapPerUnit).toBeWithin(1e-12, gapPerPitchRadius / 2)
  })

  test('cut to the shop figure, the gap is that of the ring as cut, not its slope', () => {
    fc.assert(
      fc.property(likelyInput, (input) => {
        const result = fullRingDesign(input)
        fc.pre(result.ok && result.value.bearing.outerRing.seat === 'bottom')
        if (!result.ok) return
        const { pitchRadius, resolved, ballGap: gap } = result.value.bearing
        const { count } = resolved.input.balls
        for (const { key, shop, gapChangeAtShop } of result.value.dimensions) {
          const share = key === 'outerRing.grooveDepth' ? 1 : 1 / 2
          if (gapChangeAtShop === undefined) continue
          const there = ballGap(mm(pitchRadius + share * shop.error), resolved.ballDiameter, count)
          expect(gapChangeAtShop).toBeWithin(1e-10 * pitchRadius, there - gap)
        }
      }),
      { numRuns: 100 },
    )
  })

  test('no change where the size is on the rule', () => {
    const even = row({ ...PLAIN, outerRing: { grooveDepth: mm(3.2) } }, 'outerRing.grooveDepth')
    expect(even.shop).toEqual({ text: '3.2 mm', error: 0 })
    expect(even.gapChangeAtShop).toBeWithin(1e-13, 0)
  })
})

test.each([PLAIN, ROLLERS, PLATES, CAGED])(
  'a rule gives no figure for a size that a caliper is set to, of $arrangement',
  (input) => {
    const { bearing, dimensions } = anyDesigned({ ...input, finishAllowance: mm(0.05) })
    const { resolved } = bearing
    for (const row of dimensions) {
      const rule = (row.cutToShop ?? row.shop).text
      expect(ruleText(row, resolved), row.key).toBe(isByCaliper(row.key, resolved) ? undefined : rule)
    }
  },
)

test('whatever sets the gap, the play or the seat of the balls is measured by caliper', () => {
  for (const input of [PLAIN, ROLLERS, PLATES, CAGED])
    for (const { key } of anyDesigned(input).dimensions)
      if (
        /^(?:outerRing|innerRing|plates)\.(?:groove(?:Bottom|Depth|Radius)|track)|^gauge\.|^plugDiameter$|Clearance$/.test(
          key,
        )
      )
        expect(BY_CALIPER.has(key), key).toBe(true)
})

test('a seat that is planned is measured by caliper, and one that is not has a figure of a rule', () => {
  const seats = (input: Parameters<typeof anyDesigned>[0]): string[] => {
    const { bearing, dimensions } = anyDesigned(input)
    return dimensions.map(({ key }) => key).filter((key) => !BY_CALIPER.has(key) && isByCaliper(key, bearing.resolved))
  }
  for (const input of [PLAIN, ROLLERS, PLATES, CAGED]) expect(seats(input)).toEqual([])
  expect(seats({ ...PLAIN, making: {} }).sort()).toEqual(['innerRing.boreDiameter', 'outerRing.outsideDiameter'])
  expect(seats({ ...PLAIN, making: { mounting: { drive: 'crank' } } })).toEqual(['innerRing.boreDiameter'])
  expect(seats({ ...PLATES, making: {} })).toEqual(['plates.boreDiameter'])
})
