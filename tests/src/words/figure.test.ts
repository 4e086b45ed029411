import { expect, test } from 'vitest'
import { mm } from '#shared/units/length.ts'
import { caliperFigure, figure, wholePercent, withMinus } from '#src/words/figure.ts'

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
