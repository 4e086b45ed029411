import { expect, test } from 'vitest'
import type { Suggestion } from '#shared/bearing/suggestion.ts'
import { inches, mm } from '#shared/units/length.ts'
import { PLAIN } from '#tests/support/inputs.ts'
import { canBeSent } from '#tests/support/taking.ts'

test.each<[boolean, Suggestion]>([
  [true, { path: '/balls/count', kind: 'number', value: 200 }],
  [false, { path: '/balls/count', kind: 'number', value: 201 }],
  [true, { path: '/shopDenominator', kind: 'number', value: 128 }],
  [true, { path: '/outerRing/engagement', kind: 'number', value: 0.01 }],
  [false, { path: '/outerRing/engagement', kind: 'number', value: 0.009 }],
  [false, { path: '/innerRing/engagement', kind: 'number', value: 0.91 }],
  [true, { path: '/groove/conformity', kind: 'number', value: 0.53 }],
  [false, { path: '/outerRing/groove/conformity', kind: 'number', value: 2.1 }],
  [false, { path: '/outerRing/groove/conformity', kind: 'number', value: Number.NaN }],
  [true, { path: '/split', kind: 'choice', value: 'none' }],
  [true, { path: '/bore', kind: 'length', value: mm(0.001) }],
  [false, { path: '/bore', kind: 'length', value: mm(0) }],
  [false, { path: '/width', kind: 'length', value: mm(10_000.1) }],
  [true, { path: '/ballGap', kind: 'length', value: mm(0) }],
  [false, { path: '/ballGap', kind: 'length', value: mm(-0.1) }],
  [false, { path: '/ballGap', kind: 'length', value: mm(Number.NaN) }],
])('%s: %o in millimetres', (isWithin, suggestion) => {
  expect(canBeSent(PLAIN, suggestion)).toBe(isWithin)
})

test('lengths are bounded in the units of the caller', () => {
  const width: Suggestion = { path: '/width', kind: 'length', value: inches(9999) }
  expect(canBeSent({ ...PLAIN, units: 'in' }, width)).toBe(true)
  expect(canBeSent(PLAIN, width)).toBe(false)
})
