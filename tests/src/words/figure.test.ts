import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inches, mm } from '#shared/units/length.ts'
import {
  boardFigure,
  caliperFigure,
  certainties,
  differenceFigure,
  figure,
  hundredthParts,
  percentParts,
  wholePercent,
  withMinus,
} from '#src/words/figure.ts'
import { unbroken } from '#src/words/unbroken.ts'

test('a number below 0 has a minus sign, and a hyphen between words or figures stays', () => {
  expect(figure(mm(-0.4), 'mm')).toBe('−0.4 mm')
  expect(caliperFigure(mm(-2.54), 'in')).toBe('−0.100 in')
  expect(withMinus('from -60 to 200; -.5 was given')).toBe('from −60 to 200; −.5 was given')
  expect(withMinus('between -0.0 mm and -0.02 mm, at -0 °C')).toBe('between 0.0 mm and −0.02 mm, at 0 °C')
  const kept = 'flat-sawn, 80-grit, 10-12, 2026-12-01, x-1, 1 1/2-in'
  expect(withMinus(kept)).toBe(kept)
})

test.each([
  [0, '0 %'],
  [0.003, 'less than 1 %'],
  [0.342, '34 %'],
  [0.64, '64 %'],
  [0.997, 'more than 99 %'],
  [1, '100 %'],
])('a share of %s is %s to whole hundredths, never rounded to none or to all', (ratio, text) => {
  expect(wholePercent(ratio)).toBe(text)
})

test.each([
  [
    [0.626, 0.187, 0.187],
    ['62', '19', '19'],
  ],
  [
    [0.997, 0.002, 0.001],
    ['more than 99', 'fewer than 1', 'fewer than 1'],
  ],
  [
    [1, 0, 0],
    ['100', '0', '0'],
  ],
  [
    [0.9, 0.096, 0.004],
    ['90', '10', 'fewer than 1'],
  ],
])('the shares %j of one whole are %j of a hundred', (shares, texts) => {
  expect(hundredthParts(shares)).toEqual(texts)
})

test('percentages of one whole add to it, and what is there is never nothing nor all', () => {
  expect(percentParts([0.33345, 0.33345, 0.3331])).toEqual(['33.4 %', '33.3 %', '33.3 %'])
  expect(percentParts([0.9997, 0.0003, 0])).toEqual(['more than 99.9 %', 'less than 0.1 %', '0 %'])
  expect(certainties([0, 1, 0])).toEqual(['less than 0.1 %', 'more than 99.9 %', 'less than 0.1 %'])
  const weights = fc.array(fc.integer({ min: 100, max: 900 }), { minLength: 2, maxLength: 6 })
  fc.assert(
    fc.property(weights, (given) => {
      const all = given.reduce((sum, weight) => sum + weight, 0)
      const shown = percentParts(given.map((weight) => weight / all)).map(Number.parseFloat)
      expect(shown.reduce((sum, each) => sum + each, 0)).toBeCloseTo(100, 9)
    }),
  )
})

test('a board is as large as needed or larger, by a step of its rule at most', () => {
  expect([2.7853, 5.6331, 4.5].map((least) => boardFigure(inches(least), 'in'))).toEqual([
    '2 13/16 in',
    '5 11/16 in',
    '4 1/2 in',
  ])
  expect([112.01, 112].map((least) => boardFigure(mm(least), 'mm'))).toEqual(['113 mm', '112 mm'])
})

test('a small difference is no finer than a caliper reads, and never nothing', () => {
  expect([0.0197, 0.0062, 0.0941, 1 / 64, 0.0004].map((length) => differenceFigure(inches(length), 'in'))).toEqual([
    '0.020 in',
    '0.006 in',
    '0.094 in',
    '1/64 in',
    '0.0004 in',
  ])
  expect(differenceFigure(mm(0.5), 'mm')).toBe('0.5 mm')
})

test('no line ends within the name of a screw, between a figure and its unit, or before a fraction', () => {
  const words =
    '4 wood screws No. 4 × 30 mm, an M12 bolt, 1.796 ± 0.001 in, 2 13/16 in, as No. seven, 12 in all, 6 screws 4 mm × 30 mm on Ø156 mm, Gr 0.8 mm, D1 Ø71.7 mm, ±0.2 up to 6, Dw by'
  expect(unbroken(words).split(' ')).toEqual(
    '4~wood screws~No.~4~×~30~mm, an M12~bolt, 1.796~±~0.001~in, 2~13/16~in, as No. seven, 12~in all, 6~screws~4~mm~×~30~mm on~Ø156~mm, Gr~0.8~mm, D1~Ø71.7~mm, ±0.2 up~to~6, Dw by'
      .split(' ')
      .map((each) => each.replaceAll('~', '\u00a0')),
  )
})
