import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mm } from '#shared/units/length.ts'
import { at, type Drawing, polar, type Shape } from '#src/drawings/model.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { anyLetter } from '#tests/support/any-letter.ts'
import { linesInRow, rasterOf } from '#tests/support/raster.ts'

const drawing = (shapes: readonly Shape[], scale = 1): Drawing => ({
  title: 'A test',
  description: 'Shapes',
  width: mm(100 / scale),
  height: mm(60 / scale),
  scale,
  shapes,
})

test('the paper has its size in millimetres, and a unit of the view box is one of them', () => {
  const svg = toSvg(drawing([], 0.5))
  expect(svg).toContain(' width="100mm" height="60mm" viewBox="0 0 100 60"')
})

test('on a page that gives it room it has a view box and no size', () => {
  const svg = toSvg(drawing([]), { paper: false, fluid: true })
  expect(svg).toContain('viewBox="0 0 100 60"')
  expect(svg).not.toMatch(/ width="|#fff/)
})

// Seen by a rasteriser: 20 pixels a millimetre, so half a pixel is 0.025 mm.
describe('in pixels', () => {
  test.each([1, 0.5, 2])(
    'a circle of 20 mm radius on paper, drawn at %d:1, crosses its middle line 40 mm apart',
    (scale) => {
      const circle: Shape = {
        role: 'outline',
        kind: 'circle',
        centre: at(50 / scale, 30 / scale),
        radius: mm(20 / scale),
      }
      const raster = rasterOf(toSvg(drawing([circle], scale)), 20)
      const [left = Number.NaN, right = Number.NaN] = linesInRow(raster, 30 * 20)
      expect(left).toBeWithin(0.025, 30)
      expect(right).toBeWithin(0.025, 70)
    },
  )

  test('y goes up', () => {
    const raster = rasterOf(toSvg(drawing([{ role: 'outline', kind: 'line', from: at(10, 50), to: at(20, 50) }])), 20)
    expect(raster.ink(15 * 20, 10 * 20)).toBeGreaterThan(0.9)
    expect(raster.ink(15 * 20, 50 * 20)).toBe(0)
  })

  // The quarter whose middle is hit, and the other quarters, which stay white.
  test.each([0, 90, 180, 270])('an arc of a quarter turn from %d degrees, counter-clockwise', (start) => {
    const centre = at(50, 30)
    const raster = rasterOf(
      toSvg(drawing([{ role: 'outline', kind: 'arc', centre, radius: mm(20), start, end: start + 90 }])),
      20,
    )
    const inkAt = (angle: number) => {
      const { x, y } = polar(centre, 20, angle)
      return raster.ink(Math.floor(x * 20), Math.floor((60 - y) * 20))
    }
    expect([45, 135, 225, 315].map((turn) => inkAt(start + turn) > 0.5)).toEqual([true, false, false, false])
  })

  test('an arc of three quarters goes the long way round', () => {
    const raster = rasterOf(
      toSvg(drawing([{ role: 'outline', kind: 'arc', centre: at(50, 30), radius: mm(20), start: 0, end: 270 }])),
      20,
    )
    expect(raster.ink(30 * 20, 30 * 20)).toBeGreaterThan(0.5)
  })

  // Bulge 1 is half a circle, counter-clockwise: from the right end of a chord to its left it goes over the top.
  test.each([
    [1, 10],
    [-1, 50],
  ])('a bulge of %d puts the half circle where y is %d from the top', (bulge, y) => {
    const points = [{ ...at(70, 30), bulge }, at(30, 30)]
    const raster = rasterOf(toSvg(drawing([{ role: 'outline', kind: 'polyline', points }])), 20)
    expect(raster.ink(50 * 20, y * 20)).toBeGreaterThan(0.5)
    expect(raster.ink(50 * 20, (60 - y) * 20)).toBe(0)
  })

  test('a capital letter is as high as it says, and stands on its base line', () => {
    const raster = rasterOf(
      toSvg(
        drawing([{ role: 'dimension', kind: 'text', text: 'H', at: at(50, 20), height: mm(10), anchor: 'middle' }]),
      ),
      20,
    )
    const rows = Array.from({ length: raster.height }, (_, y) => y).filter((y) => linesInRow(raster, y).length > 0)
    expect((rows[0] ?? 0) / 20).toBeWithin(0.1, 60 - 30)
    expect((rows.at(-1) ?? 0) / 20).toBeWithin(0.1, 60 - 20)
  })
})

test('no text gets out of its element, whatever it says', () => {
  fc.assert(
    fc.property(fc.string({ unit: anyLetter, maxLength: 60 }), (text) => {
      const words: Shape = { role: 'dimension', kind: 'text', text, at: at(1, 1), height: mm(3), anchor: 'start' }
      const svg = toSvg({ ...drawing([words]), title: text, description: text })
      expect(svg.match(/<\w+/g)).toEqual(['<svg', '<title', '<desc', '<rect', '<g', '<text'])
      expect(() => rasterOf(svg, 1)).not.toThrow()
    }),
  )
})

test('numbers are rounded to a ten thousandth and never written with an exponent', () => {
  const line = (x: number): string => toSvg(drawing([{ role: 'outline', kind: 'line', from: at(x, 0), to: at(0, 0) }]))
  expect(line(1e-9)).toContain('M0 60 ')
  expect(line(-1e-9)).toContain('M0 60 ')
  expect(line(1 / 3)).toContain('M0.3333 60 ')
  expect(line(1e22)).toContain('M10000000000000000000000 60 ')
})

test.each([Number.NaN, Number.POSITIVE_INFINITY])('%d is no length', (x) => {
  expect(() => toSvg(drawing([{ role: 'outline', kind: 'line', from: at(x, 0), to: at(0, 0) }]))).toThrow(RangeError)
})

test('the same drawing gives the same bytes, and every group says how its lines look without a style sheet', () => {
  const shapes: Shape[] = [
    { role: 'hidden', kind: 'line', from: at(0, 0), to: at(9, 9) },
    { role: 'centre', kind: 'line', from: at(0, 0), to: at(9, 9) },
  ]
  expect(toSvg(drawing(shapes))).toBe(toSvg(drawing(shapes)))
  expect(toSvg(drawing(shapes))).not.toMatch(/style|class/)
  expect(toSvg(drawing(shapes)).match(/stroke-dasharray="[^"]+"/g)).toHaveLength(2)
})
