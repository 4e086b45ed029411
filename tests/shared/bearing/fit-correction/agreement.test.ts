import { expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import type { Reading } from '#shared/bearing/fit-correction/input.ts'
import { mm } from '#shared/units/length.ts'
import { fitted } from '#tests/support/fitted.ts'

/** Twelve balls of 16 mm, an invented bearing. */
const DESIGN: RadialInput = {
  units: 'mm',
  balls: { count: 12, diameter: mm(16), standardDeviation: mm(0.1) },
  bore: mm(12),
}
const fittedTo = (readings: readonly Reading[]) => fitted({ design: DESIGN, readings })

const CALIPER = { graduation: 0, standardUncertainty: 0.05 }
const RULE = { graduation: 0.5, standardUncertainty: 0.15 }
const caliper = (value: number): Reading => ({ kind: 'groove-bottom-diameter', value: mm(value), error: CALIPER })
const gap = (value: number): Reading => ({ kind: 'ball-gap', value: mm(value), error: RULE })

/** The groove bottom in which the mean balls leave a gap of 1 mm, by the ring of equal balls: 2 Rc + Dw + 1/π about. */
const BOTTOM = 16 / Math.sin(Math.PI / 12) + 16 + 1 / Math.PI

test('readings that a groove of this bearing gives together agree', () => {
  expect(fittedTo([gap(1), caliper(BOTTOM), caliper(BOTTOM + 0.06)]).disagreements).toEqual([])
})

test('of three readings the one that is off is named, with what the others say that it should have been', () => {
  const { disagreements } = fittedTo([caliper(BOTTOM), caliper(BOTTOM + 0.7), caliper(BOTTOM + 0.03)])
  expect(disagreements.map(({ index }) => index)).toContain(1)
  const { expected } = disagreements.find(({ index }) => index === 1) ?? {}
  expect(expected?.value).toBeWithin(0.05, BOTTOM)
  expect(expected?.low).toBeLessThan(BOTTOM)
  expect(expected?.high).toBeGreaterThan(BOTTOM + 0.03)
})

test('two readings that agree with one another and with no ball of this lot do not hide behind one another', () => {
  const row = (value: number): Reading => ({ kind: 'ball-row', count: 12, value: mm(value), error: CALIPER })
  // The mean of the lot is known to about 0.1 mm, the row would make it 1 mm more.
  const { disagreements } = fittedTo([row(12 * 17), row(12 * 17)])
  expect(disagreements.map(({ index }) => index)).toEqual([0, 1])
})

test('a snug plug is a figure like any other: one that is off is named with its expected size', () => {
  const plug = (diameter: number): Reading => ({ kind: 'plug', result: 'snug', diameter: mm(diameter), error: CALIPER })
  // The plug inside the balls: two balls less than the groove bottom, and a little for the balls that stand in.
  const inside = BOTTOM - 32
  expect(fittedTo([caliper(BOTTOM), gap(1), plug(inside)]).disagreements).toEqual([])
  const { disagreements } = fittedTo([caliper(BOTTOM), gap(1), plug(inside - 1.5)])
  const { expected } = disagreements.find(({ kind }) => kind === 'plug') ?? {}
  expect(expected?.value).toBeWithin(0.3, inside)
})
