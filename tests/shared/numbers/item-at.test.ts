import { describe, expect, test } from 'vitest'
import { itemAt, lastOf } from '#shared/numbers/item-at.ts'

describe('itemAt', () => {
  test('gives the item, be it 0, false or null', () => {
    expect(itemAt([7, 0], 1)).toBe(0)
    expect(itemAt(Float64Array.of(2, 3), 0)).toBe(2)
    expect(itemAt([false, null], 1)).toBeNull()
  })

  test.each([-1, 2, 0.5, Number.NaN])('throws at index %d of two items, and says both', (index) => {
    const sentence = `index must be whole and from 0 to 1, got ${index}`
    expect(() => itemAt([1, 2], index)).toThrow(new RangeError(sentence))
    expect(() => itemAt(Uint32Array.of(1, 2), index)).toThrow(new RangeError(sentence))
  })
})

test('lastOf gives the last item, and throws for an empty list', () => {
  expect(lastOf([1, 2, 3])).toBe(3)
  expect(() => lastOf([])).toThrow(RangeError)
})
