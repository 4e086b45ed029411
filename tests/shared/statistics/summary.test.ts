import fc from 'fast-check'
import { expect, test } from 'vitest'
import { summary } from '#shared/statistics/summary.ts'
import { between } from '#tests/support/inputs.ts'

test('equal values scatter not at all, a single one neither', () => {
  expect(summary([16.1, 16.1, 16.1])).toEqual({ mean: 16.1, standardDeviation: 0 })
  expect(summary([16.1])).toEqual({ mean: 16.1, standardDeviation: 0 })
})

test('values moved and stretched move the mean and stretch the deviation', () => {
  const sample = fc.array(between(-1, 1), { minLength: 2, maxLength: 50 })
  fc.assert(
    fc.property(sample, between(-1000, 1000), between(0.01, 100), (values, by, times) => {
      const [plain, moved] = [summary(values), summary(values.map((value) => by + times * value))]
      expect(moved.mean).toBeWithin(1e-12 * (1 + Math.abs(by) + times), by + times * plain.mean)
      expect(moved.standardDeviation).toBeWithin(1e-12 * (1 + Math.abs(by) + times), times * plain.standardDeviation)
    }),
  )
})

test('an empty sample is a bug of the caller', () => {
  expect(() => summary([])).toThrow(RangeError)
})
