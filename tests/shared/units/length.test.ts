import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inches, inUnits, lengthOf, mm } from '#shared/units/length.ts'
import { magnitude, units } from '#tests/support/inputs.ts'

test('an inch is 25.4 mm, and figures of a rule come out as they are written', () => {
  expect(inches(1)).toBe(25.4)
  expect(inches(1.1875)).toBe(30.1625)
  expect(inches(5 / 8)).toBe(15.875)
  expect(inches(1 / 64)).toBe(0.396875)
})

test('every 1/64 in up to 100 in comes back exactly', () => {
  for (let step = 1; step <= 6400; step++) expect(inUnits(inches(step / 64), 'in')).toBe(step / 64)
})

test('there and back, within two units in the last place', () => {
  fc.assert(
    fc.property(magnitude(1e-6, 1e6), units, (value, said) => {
      expect(inUnits(lengthOf(value, said), said)).toBeWithin(2 * Number.EPSILON * value, value)
    }),
  )
})

test('millimetres pass as they are', () => {
  expect(lengthOf(16.3, 'mm')).toBe(mm(16.3))
  expect(inUnits(mm(16.3), 'mm')).toBe(16.3)
})
