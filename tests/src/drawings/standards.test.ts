import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { limitedSizes } from '#shared/bearing/gap-limits.ts'
import { inUnits, mm } from '#shared/units/length.ts'
import type { Drawing } from '#src/drawings/model.ts'
import { scaleUpTo } from '#src/drawings/scales.ts'
import { deviationText } from '#src/drawings/sheets/size-text.ts'
import { drawingOf } from '#src/drawings/views.ts'
import { LOOKS } from '#src/drawings/writers/looks.ts'
import { anyDesigned, designed, valid } from '#tests/support/designed.ts'
import { CAGED, likelyInput, PLAIN, PLATES, ROLLERS } from '#tests/support/inputs.ts'
import { textsOn } from '#tests/support/sheet-faults.ts'

const EVERY = [PLAIN, ROLLERS, PLATES, CAGED]
const wordsOn = (drawing: Drawing): readonly string[] => textsOn(drawing).map(({ text }) => text)

test('ISO 128-2: wide lines are twice as wide as narrow ones', () => {
  expect(LOOKS.outline.width).toBe(2 * LOOKS.dimension.width)
  expect(LOOKS.outline.width).toBe(2 * LOOKS.centre.width)
})

test('ISO 5455: every view has a scale of the series, written beside it', () => {
  for (const input of EVERY)
    for (const words of wordsOn(drawingOf('assembly', anyDesigned(input), 'a4'))) {
      const scale = /\((\d+):(\d+)\)$/.exec(words)
      if (scale === null) continue
      const [up, down] = [Number(scale[1]), Number(scale[2])]
      expect(scaleUpTo(up / down).text).toBe(`${up}:${down}`)
    }
})

describe('ISO 129-1', () => {
  test('sizes that follow from others stand in brackets, those with limits do not', () => {
    for (const input of EVERY) {
      const made = anyDesigned(input)
      const words = wordsOn(drawingOf('assembly', made, 'a4'))
      const limited = words.filter((text) => /[±−+]\d/.test(text) && /^\w+ (Ø|R)/.test(text))
      expect(limited).toHaveLength(Object.keys(limitedSizes(made)).length)
    }
    const words = wordsOn(drawingOf('assembly', designed(PLAIN), 'a4'))
    expect(words.filter((text) => /^\((Dpw|he|hi|s) /.test(text))).toHaveLength(4)
  })

  test('deviations on the sheet never pass the limits, whatever is rounded', () => {
    fc.assert(
      fc.property(valid(likelyInput), (made) => {
        const { units } = made.bearing.resolved.input
        const limits = limitedSizes(made)
        for (const { key, value } of made.dimensions) {
          const of = limits[key]
          if (of === undefined) continue
          const text = deviationText(made.bearing, value, of)
          const digits = /\.(\d+)/.exec(text)?.[1]?.length
          if (digits === undefined) continue
          const shown = Number(inUnits(value, units).toFixed(digits))
          const [upper = 0, lower = 0] = text.includes('±')
            ? [Number(text.replace(/[ ±]/g, '')), -Number(text.replace(/[ ±]/g, ''))]
            : text.split('/').map((part) => Number(part.replace('−', '-')))
          const rounding = 1e-5 * 10 ** -digits
          expect(shown + upper).toBeLessThanOrEqual(inUnits(of.max, units) + rounding)
          expect(shown + lower).toBeGreaterThanOrEqual(inUnits(of.min, units) - rounding)
        }
      }),
    )
  })
})

test('ISO 5456-2: from the small end of the cone both circles are seen, on the right in first angle and on the left in third', () => {
  for (const [units, side] of [
    ['mm', 1],
    ['in', -1],
  ] as const) {
    const { shapes } = drawingOf('assembly', designed({ ...PLAIN, units }), 'a4')
    const cone = shapes.flatMap((shape) =>
      shape.kind === 'polyline' && shape.role === 'outline' && shape.closed === true && shape.points.length === 4
        ? [shape.points]
        : [],
    )[0]
    if (cone === undefined) throw new RangeError('the sheet must have the symbol')
    const [from, end] = [cone[0], cone[1]]
    const middle = ((from?.y ?? 0) + (cone[3]?.y ?? 0)) / 2
    const circles = shapes.flatMap((shape) =>
      shape.kind === 'circle' && shape.role === 'outline' && Math.abs(shape.centre.y - middle) < 1e-6 ? [shape] : [],
    )
    const [small, large] = circles.slice(-2)
    expect((large?.radius ?? 0) / (small?.radius ?? 1)).toBeWithin(1e-9, 2)
    // The small end looks to the left in either; the view from there stands on the other side in first angle.
    expect(Math.abs((from?.y ?? 0) - middle)).toBeLessThan(Math.abs((end?.y ?? 0) - middle))
    expect(from?.x).toBeLessThan(end?.x ?? 0)
    expect(Math.sign((small?.centre.x ?? 0) - (from?.x ?? 0))).toBe(side)
  }
})

test('ISO 7200: title, identification, sheet, creator, and room for approval, date and owner, without a date of its own', () => {
  const words = wordsOn(drawingOf('assembly', designed(PLAIN), 'a4'))
  for (const field of ['code', 'scale', 'sheet', 'drawn by', 'checked', 'date', 'owner', '1 of 1'])
    expect(words).toContain(field)
  expect(words).toContain('Radial bearing of wood, full complement')
  expect(words.join(' ')).not.toMatch(/20\d\d/)
})

test('in inches sizes are in thousandths, as wood has them', () => {
  const words = wordsOn(
    drawingOf(
      'assembly',
      designed({ units: 'in', balls: { count: 10, diameter: mm(15.875) }, bore: mm(12.7) }),
      'letter',
    ),
  )
  for (const text of words.filter((one) => /^\(?\w+ (SØ|Ø|R)/.test(one))) expect(text).not.toMatch(/\d\.\d{4}/)
})

test('the bar that tells the scale is in the units of the sheet', () => {
  for (const [units, words, long] of [
    ['mm', '50 mm, or not to scale', 50],
    ['in', '2 in, or not to scale', 50.8],
  ] as const) {
    const drawing = drawingOf('assembly', designed({ ...PLAIN, units }), 'letter')
    expect(wordsOn(drawing)).toContain(words)
    const lengths = drawing.shapes.flatMap((shape) =>
      shape.kind === 'line' && shape.role === 'mark' ? [(shape.to.x - shape.from.x) * drawing.scale] : [],
    )
    expect(Math.max(...lengths)).toBeWithin(1e-9, long)
  }
})

test.each([
  [
    { outerRing: { construction: 'cross-laminated-ply' }, innerRing: { construction: 'cross-laminated-ply' } },
    'plywood',
  ],
  [{ outerRing: { species: 'maple-sugar' }, innerRing: { species: 'maple-sugar' } }, 'sugar maple, flat-sawn board'],
  [{ innerRing: { species: 'maple-sugar' } }, 'outer ring hardwood †; inner ring sugar maple, flat-sawn board'],
] as const)('the wood is named with how it is cut', (woods, name) => {
  const made = designed({ ...PLAIN, making: { woods } })
  expect(wordsOn(drawingOf('assembly', made, 'a4')).join(' ')).toContain(`Wood: ${name}.`)
})

test('the width of rings has the symbol in the table that it has beside the view', () => {
  for (const input of [PLAIN, CAGED]) {
    const words = wordsOn(drawingOf('assembly', anyDesigned(input), 'a4'))
    expect(words).toContain('B 24')
    expect(words).toContain('B')
    expect(words).not.toContain('C')
  }
})
