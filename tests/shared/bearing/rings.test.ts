import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { innerRing, outerRing } from '#shared/bearing/rings.ts'
import { mm } from '#shared/units/length.ts'
import { between, magnitude } from '#tests/support/inputs.ts'

const groove = fc
  .tuple(between(0.35, 0.7), between(0.05, 0.35))
  .map(([conformity, engagement]) => ({ radius: mm(conformity), depth: mm(engagement) }))

describe('a ball that runs on the pitch radius', () => {
  test('sits in either ring where its land is: on the bottom, or on both edges', () => {
    fc.assert(
      fc.property(groove, between(1, 30), (cut, pitchRadius) => {
        const outer = outerRing(mm(pitchRadius), mm(1), cut, { wall: mm(1), roundOutsideDiameterTo: null }, mm(2))
        const inner = innerRing(mm(pitchRadius), mm(1), cut, mm(0.1), mm(2))
        for (const { landDiameter, grooveBottomDiameter, grooveWidth, seat } of [outer, inner]) {
          const toBottom = Math.abs(grooveBottomDiameter / 2 - pitchRadius)
          const toEdge = Math.hypot(grooveWidth / 2, landDiameter / 2 - pitchRadius)
          expect(seat === 'bottom' ? toBottom : toEdge).toBeWithin(1e-9, 0.5)
          expect(seat === 'bottom' ? toEdge : toBottom).toBeGreaterThan(0.5 - 1e-9)
        }
      }),
    )
  })
})

describe('the outside', () => {
  const outside = (wall: number, roundTo: number | null) =>
    outerRing(
      mm(31),
      mm(16),
      { radius: mm(8.48), depth: mm(3) },
      { wall: mm(wall), roundOutsideDiameterTo: roundTo === null ? null : mm(roundTo) },
      mm(24),
    )

  test('is rounded up, and the wall takes the rest', () => {
    expect(outside(10, null)).toMatchObject({ outsideDiameter: 98, wall: 10 })
    expect(outside(10, 5)).toMatchObject({ outsideDiameter: 100, wall: 11 })
  })

  test('an even figure is not pushed to the next one', () => {
    expect(outside(11, 5).outsideDiameter).toBe(100)
    expect(outside(11 + 1e-10, 5).outsideDiameter).toBe(100)
    expect(outside(11.001, 5).outsideDiameter).toBe(105)
  })

  test('is what was said, and the wall what is left: below 0 if it must', () => {
    const said = outerRing(mm(31), mm(16), { radius: mm(8.48), depth: mm(3) }, { outsideDiameter: mm(70) }, mm(24))
    expect(said).toMatchObject({ outsideDiameter: 70, wall: -4 })
  })

  test('never less than the wall, never a whole step more', () => {
    fc.assert(
      fc.property(magnitude(0.1, 100), magnitude(0.1, 50), (wall, step) => {
        const { wall: left } = outside(wall, step)
        expect(left).toBeGreaterThan(wall - 1e-8 * step)
        expect(left).toBeLessThan(wall + step / 2 + 1e-8 * step)
      }),
    )
  })
})
