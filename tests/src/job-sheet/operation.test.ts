import { expect, test } from 'vitest'
import type { CagedDesign, FullRingDesign, RadialDesign, RollerDesign } from '#shared/bearing/arrangements.ts'
import type { Allowances } from '#shared/bearing/making-input.ts'
import { stockOf } from '#shared/making/stock.ts'
import { mm } from '#shared/units/length.ts'
import { allowed, type Job, size } from '#src/job-sheet/operation.ts'
import { cagedDesigned, designed } from '#tests/support/designed.ts'
import { CAGED, PLAIN, ROLLERS } from '#tests/support/inputs.ts'

const method = 'saw-and-lathe'
function job<D extends RadialDesign | RollerDesign | CagedDesign>(design: D): Job<D> {
  return { design, method, stock: stockOf(design.bearing) }
}

const radial = job(designed(PLAIN) as RadialDesign)
const roller = job(designed(ROLLERS) as RollerDesign)
const caged = job(cagedDesigned(CAGED))

test('a size of the design has its symbol and its value', () => {
  expect(size(roller, 'rollerLength', 'length')).toEqual({
    symbol: 'Lw',
    name: 'length',
    value: roller.design.bearing.resolved.rollerLength,
    source: 'trade',
  })
})

test('a size that an arrangement lacks does not compile, nor one that any of several lacks', () => {
  // @ts-expect-error: balls have no length
  expect(() => size(radial, 'rollerLength', '')).toThrow(RangeError)
  // @ts-expect-error: a track has no depth
  expect(() => size(roller, 'outerRing.grooveDepth', '')).toThrow(RangeError)
  // @ts-expect-error: a cage leaves no gap
  expect(() => size(caged, 'ballGap', '')).toThrow(RangeError)
  const either: Job<FullRingDesign> = roller
  // @ts-expect-error: rollers run on no land
  expect(() => size(either, 'outerRing.landDiameter', '')).toThrow(RangeError)
  expect(size(either, 'outerRing.outsideDiameter', '').value).toBe(roller.design.bearing.outerRing.outsideDiameter)
})

test('an allowance is common practice unless it is stated, each by itself', () => {
  const stating = (allowances: Partial<Allowances>) =>
    job(designed({ ...PLAIN, making: { ...PLAIN.making, allowances } }) as RadialDesign)
  expect([allowed(radial), allowed(radial, 'entryHole')]).toEqual([{ source: 'trade' }, { source: 'trade' }])
  const turning = stating({ turning: mm(5) })
  expect([allowed(turning), allowed(turning, 'entryHole')]).toEqual([{}, { source: 'trade' }])
  const entryHole = stating({ entryHole: mm(8) })
  expect([allowed(entryHole), allowed(entryHole, 'entryHole')]).toEqual([{ source: 'trade' }, {}])
})
