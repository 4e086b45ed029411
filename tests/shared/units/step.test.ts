import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mm } from '#shared/units/length.ts'
import { shopStep } from '#shared/units/shop-figure.ts'
import { stepDown, stepUp } from '#shared/units/step.ts'
import { magnitude } from '#tests/support/inputs.ts'

const step = fc.constantFrom(mm(5), mm(0.1), mm(6.35), shopStep('in', 64), shopStep('in', 128), shopStep('in', 8))

test('up and down enclose the length, at most a step apart', () => {
  fc.assert(
    fc.property(magnitude(0.001, 10_000), step, (length, of) => {
      const [down, up] = [stepDown(length, of), stepUp(length, of)]
      expect(down).toBeLessThanOrEqual(length + 1e-8 * of)
      expect(up).toBeGreaterThanOrEqual(length - 1e-8 * of)
      expect(up - down).toBeLessThanOrEqual(of * (1 + 1e-8))
    }),
  )
})

test('a length on a step stays, though it was computed with a rounding error', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 10_000 }), step, fc.constantFrom(-1, 0, 1), (count, of, error) => {
      const length = count * of * (1 + error * Number.EPSILON)
      expect(stepUp(length, of)).toBeWithin(1e-9, count * of)
      expect(stepDown(length, of)).toBe(stepUp(length, of))
    }),
  )
})

test('the figures are clean: no 0.30000000000000004', () => {
  expect(stepUp(0.25, mm(0.1))).toBe(0.3)
  expect(stepDown(0.78, mm(0.1))).toBe(0.7)
  expect(stepUp(117.3, mm(6.35))).toBe(120.65)
})
