import fc from 'fast-check'
import { expect, test } from 'vitest'
import { stretch } from '#shared/wood/moisture-movement.ts'
import { between } from '#tests/support/inputs.ts'

const coefficient = between(0, 0.006)
const moisture = between(0, 30)

test('by whatever way it goes, it comes to the same size', () => {
  fc.assert(
    fc.property(coefficient, moisture, moisture, moisture, (c, from, by, to) => {
      expect(stretch(c, from, by) * stretch(c, by, to)).toBeWithin(1e-13, stretch(c, from, to))
      expect(stretch(c, from, to) * stretch(c, to, from)).toBeWithin(1e-13, 1)
    }),
  )
})

test('wetter is larger, drier is smaller', () => {
  fc.assert(
    fc.property(between(1e-5, 0.006), moisture, moisture, (c, from, to) => {
      expect((stretch(c, from, to) - 1) * (to - from)).toBeGreaterThanOrEqual(0)
    }),
  )
})

test.each([
  [-0.001, 8, 12],
  [0.002, -1, 12],
  [0.002, 8, 31],
  [0.002, 8, Number.NaN],
])('stretch(%s, %s, %s) is a bug of ours', (c, from, to) => {
  expect(() => stretch(c, from, to)).toThrow(RangeError)
})
