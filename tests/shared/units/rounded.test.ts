import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { inches, inUnits, lengthOf, type Mm, mm } from '#shared/units/length.ts'
import { rounded, roundedDown, roundedIn, roundedUp } from '#shared/units/rounded.ts'
import { magnitude, units } from '#tests/support/inputs.ts'

const length = fc.tuple(magnitude(1e-3, 1e4), fc.constantFrom(1, -1)).map(([size, sign]) => mm(sign * size))
const STEP = { mm: 1e-6, in: 1e-7 }

describe('a length as an answer states it', () => {
  test.each<[Mm, 'mm' | 'in', number]>([
    [mm(32 / 3), 'mm', 10.666667],
    [mm(0.1 + 0.2), 'mm', 0.3],
    [mm(-1e-9), 'mm', 0],
    [inches(1 / 3), 'in', 0.3333333],
    [inches(1 / 128), 'in', 0.0078125],
    [mm(16), 'in', 0.6299213],
  ])('%d mm in %s is %d', (given, unit, expected) => {
    expect(roundedIn(given, unit)).toBe(expected)
  })

  test('is the nearest, no more than half a step away, and has no more digits', () => {
    fc.assert(
      fc.property(length, units, (given, unit) => {
        const stated = roundedIn(given, unit)
        expect(stated).toBeWithin(0.5001 * STEP[unit], inUnits(given, unit))
        expect(stated).toBe(Number(stated.toFixed(unit === 'mm' ? 6 : 7)))
      }),
    )
  })

  test('stays what it is: rounded, stated and read again, it is the same length', () => {
    fc.assert(
      fc.property(length, units, (given, unit) => {
        const once = rounded(given, unit)
        expect(rounded(once, unit)).toBe(once)
        expect(roundedUp(once, unit)).toBe(once)
        expect(roundedDown(once, unit)).toBe(once)
        expect(lengthOf(roundedIn(once, unit), unit)).toBe(once)
      }),
    )
  })

  test('up and down are the two figures on either side', () => {
    fc.assert(
      fc.property(length, units, (given, unit) => {
        const [below, above] = [roundedDown(given, unit), roundedUp(given, unit)].map((each) => inUnits(each, unit))
        const exact = inUnits(given, unit)
        expect(below).toBeLessThanOrEqual(exact + 2e-5 * STEP[unit])
        expect(above).toBeGreaterThanOrEqual(exact - 2e-5 * STEP[unit])
        expect((above ?? 0) - (below ?? 0)).toBeLessThan(1.001 * STEP[unit])
      }),
    )
  })
})
