import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { inches, lengthOf, mm } from '#shared/units/length.ts'
import { parseLength } from '#shared/units/parse-length.ts'
import { shopFigure, shopStep } from '#shared/units/shop-figure.ts'
import { between, units } from '#tests/support/inputs.ts'

const denominator = fc.constantFrom(8, 16, 32, 64, 128)

describe('the text', () => {
  test.each([
    [0, '0 in'],
    [0.0077, '0 in'],
    [0.0079, '1/64 in'],
    [0.5, '1/2 in'],
    [0.625, '5/8 in'],
    [1.1875, '1 3/16 in'],
    [3.9999, '4 in'],
    [2.27, '2 17/64 in'],
    [-0.625, '−5/8 in'],
    [-0.001, '0 in'],
  ])('%s in is %s', (value, text) => {
    expect(shopFigure(inches(value), 'in').text).toBe(text)
  })

  test.each([
    [0, '0.0 mm'],
    [30.16, '30.2 mm'],
    [30.25, '30.3 mm'],
    [99.96, '100.0 mm'],
    [0.04, '0.0 mm'],
    [-0.04, '0.0 mm'],
    [-1.26, '−1.3 mm'],
    [12345.678, '12345.7 mm'],
  ])('%s mm is %s', (value, text) => {
    expect(shopFigure(mm(value), 'mm').text).toBe(text)
  })

  test('in lowest terms, below one beside a whole number', () => {
    fc.assert(
      fc.property(between(0, 400), denominator, (length, parts) => {
        const { text } = shopFigure(mm(length), 'in', parts)
        const [, top = '0', bottom = '1'] = /(\d+)\/(\d+) in$/.exec(text) ?? []
        expect(Number(top)).toBeLessThan(Number(bottom))
        if (top !== '0') expect(Number(top) % 2).toBe(1)
      }),
    )
  })
})

describe('the error', () => {
  test('text and error together are the length again', () => {
    fc.assert(
      fc.property(between(-1000, 1000), units, denominator, (length, said, parts) => {
        const { text, error } = shopFigure(mm(length), said, parts)
        const read = parseLength(text, said)
        expect(read.ok && read.value - error).toBeWithin(1e-10, length)
      }),
    )
  })

  test('is half a step at the most', () => {
    fc.assert(
      fc.property(between(-1000, 1000), units, denominator, (length, said, parts) => {
        const { error } = shopFigure(mm(length), said, parts)
        expect(Math.abs(error)).toBeLessThanOrEqual(shopStep(said, parts) / 2 + 1e-10)
      }),
    )
  })

  test('is above 0 when the shop figure is the larger', () => {
    expect(shopFigure(mm(30.16), 'mm').error).toBeWithin(1e-12, 0.04)
    expect(shopFigure(mm(-30.16), 'mm').error).toBeWithin(1e-12, -0.04)
  })

  test('is none on a figure of the rule, whatever rounding made of it', () => {
    const ulps = fc.integer({ min: -6, max: 6 })
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), units, denominator, ulps, (steps, said, parts, off) => {
        const length = lengthOf(steps / (said === 'in' ? parts : 10), said) * (1 + off * Number.EPSILON)
        expect(shopFigure(mm(length), said, parts).error).toBe(0)
      }),
    )
  })
})

test('a step of the rule', () => {
  expect(shopStep('in')).toBe(0.396875)
  expect(shopStep('in', 8)).toBe(3.175)
  expect(shopStep('mm')).toBe(0.1)
})

test.each([0, -8, 1.5, Number.NaN])('a denominator of %s is refused, as a bug of ours', (parts) => {
  expect(() => shopFigure(mm(1), 'in', parts)).toThrow(RangeError)
})
