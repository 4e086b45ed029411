import { expect, test } from 'vitest'
import { NORMAL_NODES, type PlanInput, planCuts } from '#shared/bearing/fit-correction/plan.ts'
import { normalDensity } from '#shared/statistics/normal.ts'
import { mm } from '#shared/units/length.ts'

test.each([
  [0, 1],
  [2, 1],
  [4, 3],
  [6, 15],
  [8, 105],
  [12, 10_395],
])('the nodes have the moment of order %d of the normal distribution', (order, moment) => {
  const sum = NORMAL_NODES.reduce((total, [z, weight]) => total + weight * z ** order, 0)
  expect(sum).toBeWithin(1e-9 * moment, moment)
})

/** Room that is normally distributed, as the plan takes it. */
function room(mean: number, standardDeviation: number): PlanInput['room'] {
  const step = (12 * standardDeviation) / 400
  const from = mean - 6 * standardDeviation
  const weights = Float64Array.from({ length: 401 }, (_, bin) => normalDensity(-6 + (12 * bin) / 400) * (12 / 400))
  return { mean, standardDeviation, band: 0.3, aim: 0.15, from, step, weights }
}

const TOOLS: PlanInput['tools'] = [
  { name: 'abrasive', absolute: mm(0.05), relative: 0.05, most: 0.5 },
  { name: 'sharp-tool', absolute: mm(0.2), relative: 0.1, most: Number.POSITIVE_INFINITY },
]

const plan = (mean: number, deviation: number, overshootRisk = 0.05) =>
  planCuts({
    room: room(mean, deviation),
    tools: TOOLS,
    readingDeviation: 0.04,
    deviationIfReadAgain: (0.04 * deviation) / Math.hypot(0.04, deviation),
    overshootRisk,
  })

test('far from the band the sharp tool, near it the abrasive, within it nothing', () => {
  expect(plan(4, 0.04).step?.tool.name).toBe('sharp-tool')
  expect(plan(0.45, 0.04).step?.tool.name).toBe('abrasive')
  expect(plan(0.15, 0.03).step).toBeUndefined()
})

test('a groove that is too deep already is not cut further', () => {
  expect(plan(-0.2, 0.05).step).toBeUndefined()
})

test.each([0.0001, 0.002, 0.02, 0.05, 0.2])('the chance of ending too deep stays below %d', (overshootRisk) => {
  for (const mean of [0.5, 1, 2, 4]) {
    const { overshoot, step } = plan(mean, 0.05, overshootRisk)
    expect(overshoot).toBeLessThanOrEqual(overshootRisk)
    expect(step?.overshoot ?? 0).toBeLessThanOrEqual(overshootRisk)
  }
})

test('where strokes are counted the next cut is a whole number of them, and none where a single one is too much', () => {
  const strokes = (stroke: number) =>
    planCuts({
      room: room(0.45, 0.04),
      tools: [{ name: 'abrasive', absolute: mm(0.05), relative: 0.05, most: 0.5, stroke }],
      readingDeviation: 0.04,
      deviationIfReadAgain: 0.03,
      overshootRisk: 0.05,
    }).step
  const fine = strokes(0.013)
  expect((fine?.depth ?? Number.NaN) / 0.013).toBeWithin(1e-9, Math.round((fine?.depth ?? Number.NaN) / 0.013))
  expect(fine?.overshoot).toBeLessThanOrEqual(0.05)
  expect(strokes(0.45)).toBeUndefined()
})
