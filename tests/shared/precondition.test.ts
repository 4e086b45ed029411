import { describe, expect, test } from 'vitest'
import { requireAboveZero, requireWhole, requireWithin } from '#shared/precondition.ts'

describe('a guard lets pass what is good', () => {
  test.each([5e-324, 1, 1e308])('%s is above 0', (value) => {
    expect(() => requireAboveZero('size', value)).not.toThrow()
  })
  test.each([3, 4, 2 ** 53])('%s is whole and at least 3', (value) => {
    expect(() => requireWhole('count', value, 3)).not.toThrow()
  })
  test.each([0, 0.5, 1])('%s is from 0 to 1', (value) => {
    expect(() => requireWithin('part', value, 0, 1)).not.toThrow()
  })
})

describe('and nothing else, NaN least of all', () => {
  test.each([0, -0, -1, Number.NaN, Number.POSITIVE_INFINITY])('%s is not above 0', (value) => {
    expect(() => requireAboveZero('size', value)).toThrow(`size must be above 0 and finite, got ${value}`)
  })
  test.each([2, 3.5, Number.NaN, Number.POSITIVE_INFINITY])('%s is not whole and at least 3', (value) => {
    expect(() => requireWhole('count', value, 3)).toThrow(`count must be whole and at least 3, got ${value}`)
  })
  test.each([-1e-300, 1.1, Number.NaN])('%s is not from 0 to 1', (value) => {
    expect(() => requireWithin('part', value, 0, 1)).toThrow(`part must be from 0 to 1, got ${value}`)
  })
})
