import { expect, test } from 'vitest'
import { mm } from '#shared/units/length.ts'
import { caliperFigure, figure, withMinus } from '#src/words/figure.ts'

test('a number below 0 has a minus sign, and a hyphen between words or figures stays', () => {
  expect(figure(mm(-0.4), 'mm')).toBe('−0.4 mm')
  expect(caliperFigure(mm(-2.54), 'in')).toBe('−0.100 in')
  expect(withMinus('from -60 to 200; -.5 was given')).toBe('from −60 to 200; −.5 was given')
  expect(withMinus('between -0.0 mm and -0.02 mm, at -0 °C')).toBe('between 0.0 mm and −0.02 mm, at 0 °C')
  const kept = 'flat-sawn, 80-grit, 10-12, 2026-12-01, x-1, 1 1/2-in'
  expect(withMinus(kept)).toBe(kept)
})
