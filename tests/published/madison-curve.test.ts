// L. W. Wood 1951, the Madison curve, as Forests 12 (2021), 1148, quotes it: of its strength wood has 18.3 + 108.4 t^-0.0464 % left
// under a load that stays for t seconds. Tolerance: what rounding to tenths leaves.
import { expect, test } from 'vitest'
import { SCATTER } from '#shared/data/wood-strength.ts'

test('a load that stays for ten years leaves about 0.6 of the strength', () => {
  const seconds = 10 * 365.25 * 24 * 3600
  expect(SCATTER.underLastingLoad.share).toBeWithin(0.05, (18.3 + 108.4 * seconds ** -0.0464) / 100)
})
