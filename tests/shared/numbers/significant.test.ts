import fc from 'fast-check'
import { expect, test } from 'vitest'
import { significant, significantDown } from '#shared/numbers/significant.ts'
import { magnitude } from '#tests/support/inputs.ts'

test.each([
  [0.1 + 0.2, 0.3],
  [-0, 0],
  [2 / 3, 0.666666667],
  [123456789.6, 123456790],
  [1e-12 / 3, 3.33333333e-13],
])('%d is %d', (given, expected) => {
  expect(significant(given)).toBe(expected)
})

test('nine digits, and the same again', () => {
  fc.assert(
    fc.property(magnitude(1e-12, 1e12), (value) => {
      const stated = significant(value)
      expect(stated).toBeWithin(5.001e-9 * value, value)
      expect(significant(stated)).toBe(stated)
      expect(significantDown(stated)).toBe(stated)
    }),
  )
})

test('down is never more', () => {
  fc.assert(
    fc.property(magnitude(1e-12, 1e12), (value) => {
      expect(significantDown(value)).toBeLessThanOrEqual(value)
      expect(significantDown(value)).toBeGreaterThan(value * (1 - 2.5e-8))
    }),
  )
})
