import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mm } from '#shared/units/length.ts'
import { middlesBelow, widthOf } from '#src/kiosk/pictures/figures-below.ts'
import { decimalFigure } from '#src/words/figure.ts'

const WIDTH = 340

test('the figures below two lines never meet or leave the picture, however narrow the band, in both units', () => {
  const gap = fc.double({ min: -9, max: 30, noNaN: true })
  const line = fc.double({ min: -WIDTH, max: 2 * WIDTH, noNaN: true })
  fc.assert(
    fc.property(
      gap,
      gap,
      line,
      line,
      fc.constantFrom('mm' as const, 'in' as const),
      (least, most, one, other, units) => {
        const figures = [least, most].map((each) => decimalFigure(mm(each), units))
        const lines = [one, other].toSorted((low, high) => low - high)
        const [low = Number.NaN, high = Number.NaN] = middlesBelow(lines, figures, WIDTH)
        const [ofLow = Number.NaN, ofHigh = Number.NaN] = figures.map((figure) => widthOf(figure) / 2)
        expect(low - ofLow).toBeGreaterThanOrEqual(-1e-9)
        expect(high + ofHigh).toBeLessThanOrEqual(WIDTH + 1e-9)
        expect(high - ofHigh - (low + ofLow)).toBeGreaterThan(8)
      },
    ),
  )
})

test('a figure that has room stands below its line', () => {
  expect(middlesBelow([100, 240], ['0.48 mm', '3 mm'], WIDTH)).toEqual([100, 240])
  expect(middlesBelow([170], ['3 mm'], WIDTH)).toEqual([170])
})
