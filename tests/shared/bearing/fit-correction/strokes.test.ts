import { expect, test } from 'vitest'
import { removalPerStroke } from '#shared/bearing/fit-correction/strokes.ts'
import { mm } from '#shared/units/length.ts'

const counted = (strokes: number, before: number, after: number) => ({ strokes, before: mm(before), after: mm(after) })

/*
 * On paper, for the line g = b s through the origin with weights 1/s:  b = Σ g / Σ s,  its variance χ² / (n − 1) / Σ s
 * with χ² = Σ (g − b s)² / s. For 40 strokes that gained 0.5 mm and 60 that gained 0.7 mm: b = 0.012 mm a stroke,
 * residuals ±0.02 mm, χ² = 0.0004 / 40 + 0.0004 / 60 = 1/60000, variance 1/6000000.
 */
test('two counts: slope and uncertainty as worked on paper', () => {
  const learnt = removalPerStroke([counted(40, 0.2, 0.7), counted(60, 0.7, 1.4)], 6, 0.001)
  expect(learnt?.perStroke).toBeWithin(1e-15, 0.012 / 6)
  expect(learnt?.relativeUncertainty).toBeWithin(1e-12, Math.sqrt(1 / 6_000_000) / 0.012)
})

test('a single count is as sure as the two readings that it lies between: √2 of one, over its strokes', () => {
  const learnt = removalPerStroke([counted(50, -0.1, 0.5)], 6, 0.06)
  expect(learnt?.perStroke).toBeWithin(1e-15, 0.6 / 50 / 6)
  expect(learnt?.relativeUncertainty).toBeWithin(1e-12, (Math.SQRT2 * 0.06) / 0.6)
})

test('counts that agree by chance are no surer than the rule reads: √2 √n of one reading, over all strokes', () => {
  const learnt = removalPerStroke([counted(50, 0, 0.6), counted(50, 0.6, 1.2)], 6, 0.06)
  expect(learnt?.relativeUncertainty).toBeWithin(1e-12, (Math.SQRT2 * Math.SQRT2 * 0.06) / 1.2)
})

test('nothing is learnt from no counts, or from strokes that took nothing off', () => {
  expect(removalPerStroke([], 6, 0.06)).toBeUndefined()
  expect(removalPerStroke([counted(40, 0.5, 0.5)], 6, 0.06)).toBeUndefined()
  expect(removalPerStroke([counted(40, 0.7, 0.5)], 6, 0.06)).toBeUndefined()
})
