import fc from 'fast-check'
import { expect, test } from 'vitest'
import { toDecimals } from '#shared/numbers/decimals.ts'
import { significant } from '#shared/numbers/significant.ts'

/** Numbers of all sizes, and those that lie on or beside the middle between two decimals. */
const numbers = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.double({ min: -1e6, max: 1e6, noNaN: true }),
  fc
    .tuple(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 0, max: 12 }), fc.integer({ min: -2, max: 2 }))
    .map(([steps, power, beside]) => ((steps + 0.5) / 10 ** power) * (1 + beside * Number.EPSILON)),
)

test('to the last bit what the text says', () => {
  fc.assert(
    fc.property(numbers, fc.integer({ min: 0, max: 12 }), (value, decimals) => {
      expect(toDecimals(value, decimals) + 0).toBe(Number(value.toFixed(decimals)) + 0)
    }),
    { numRuns: 5_000 },
  )
})

test('nine digits, to the last bit what the text says', () => {
  fc.assert(
    fc.property(numbers, (value) => {
      expect(significant(value)).toBe(Number(value.toPrecision(9)) + 0)
    }),
    { numRuns: 5_000 },
  )
})
