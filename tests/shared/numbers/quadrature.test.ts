import { expect, test } from 'vitest'
import { integral } from '#shared/numbers/quadrature.ts'

test.each([
  ['a constant', () => 2, 1, 4, 6],
  ['x^7', (x: number) => x * x * x * x * x * x * x, 0, 2, 32],
  ['a sine over half a turn', Math.sin, 0, Math.PI, 2],
  ['√(1 − x²), a half circle', (x: number) => Math.sqrt((1 - x) * (1 + x)), -1, 1, Math.PI / 2],
  ['a power of 0.1 at its end', (x: number) => Math.exp(0.1 * Math.log(x)), 0, 1, 1 / 1.1],
  ['backwards', (x: number) => x, 1, 0, -0.5],
] as const)('%s', (_, at, low, high, expected) => {
  expect(integral(at, low, high)).toBeWithin(2e-13 * Math.max(1, Math.abs(expected)), expected)
})

test('nothing is asked beyond the ends', () => {
  const asked: number[] = []
  integral((x) => asked.push(x), 3, 5)
  expect(asked.every((x) => x >= 3 && x <= 5)).toBe(true)
})
