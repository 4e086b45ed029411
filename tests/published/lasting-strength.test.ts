// What is left of the strength of wood. Tolerance: what rounding to tenths leaves.
import { expect, test } from 'vitest'
import { SCATTER } from '#shared/data/wood-strength.ts'

// L. W. Wood 1951, the Madison curve, as Forests 12 (2021), 1148, quotes it: 18.3 + 108.4 t^-0.0464 % under a load that stays for t seconds.
test('a load that stays for ten years leaves about 0.6 of the strength', () => {
  const seconds = 10 * 365.25 * 24 * 3600
  expect(SCATTER.underLastingLoad.share).toBeWithin(0.05, (18.3 + 108.4 * seconds ** -0.0464) / 100)
})

// Fatigue properties of wood at different load ratios tested at 50 Hz and 20 kHz, its abstract: sycamore maple lives a million cycles of
// compression, on average, at 75 % ± 7 % of its strength.
test('a load that comes back a million times leaves about 0.6, two standard deviations below the average', () => {
  expect(SCATTER.underRepeatedLoad.share).toBeWithin(0.05, 0.75 - 2 * 0.07)
})
