import { describe, expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import type { FitCorrectionInput, Reading } from '#shared/bearing/fit-correction/input.ts'
import { mm } from '#shared/units/length.ts'
import { normals, uniforms } from '#tests/support/chance.ts'
import { fitted } from '#tests/support/fitted.ts'

const RULE = { graduation: 0.5, standardUncertainty: 0.15 }
/** More often than that nobody reads one groove. */
const MOST_READINGS = 12

const DESIGN: RadialInput = {
  units: 'mm',
  balls: { count: 12, diameter: mm(16), standardDeviation: mm(0.05) },
  bore: mm(12),
  ballGap: mm(0.8),
  minBallGap: mm(0),
  maxBallGap: mm(2),
}
const fittedTo = (readings: readonly Reading[], more: Partial<FitCorrectionInput> = {}) =>
  fitted({ design: DESIGN, readings, ...more })

const gap = (value: number): Reading => ({ kind: 'ball-gap', value: mm(value), error: RULE })

describe('reading one groove again and again', () => {
  test.each([1.4, 1.7, 1.85, 1.95, 2, 2.05, 2.15])('comes to an end at a true gap of %d mm', (truth) => {
    for (let seed = 1; seed <= 4; seed++) {
      const normal = normals(uniforms(seed))
      const readings: Reading[] = []
      let isToBeReadAgain = true
      while (isToBeReadAgain && readings.length <= MOST_READINGS) {
        readings.push(
          gap(Math.round((truth + RULE.standardUncertainty * normal()) / RULE.graduation) * RULE.graduation),
        )
        const { stop, nextStep } = fittedTo(readings)
        isToBeReadAgain = !stop && nextStep === undefined
      }
      expect(readings.length).toBeLessThanOrEqual(MOST_READINGS)
    }
  })
})

test('in band and too deep are the end; a cut is not', () => {
  expect(fittedTo([gap(1), gap(1)])).toMatchObject({ state: 'in-band', stop: true })
  expect(fittedTo([gap(3)])).toMatchObject({ state: 'too-deep', stop: true })
  expect(fittedTo([{ kind: 'last-ball-opening', value: mm(12), error: RULE }])).toMatchObject({ stop: false })
})

test('a reading that is as good as sure to decide is asked for, and says so', () => {
  const { stop, nextStep, decidedByReading } = fittedTo([gap(1.8)])
  expect(nextStep).toBeUndefined()
  expect(stop).toBe(false)
  expect(decidedByReading).toBeGreaterThan(0.2)
})

test('tools too coarse for the band: nothing to read would change that, and no cut keeps to the risk', () => {
  const coarse = { absolute: mm(2), relative: 0 }
  const fine = { graduation: 0, standardUncertainty: 0.02 }
  const { state, stop, nextStep, probability } = fittedTo(
    [{ kind: 'last-ball-opening', value: mm(14.2), error: fine }],
    {
      tools: { sharpTool: coarse, abrasive: coarse },
      target: { overshootRisk: 0.01 },
    },
  )
  expect(probability.tooTight).toBeGreaterThan(0.9)
  expect({ state, stop, nextStep }).toEqual({ state: 'more-to-remove', stop: true, nextStep: undefined })
})

test('what comes is read with the rule that was used: the finer it is, the more a reading decides', () => {
  const read = (standardUncertainty: number): number => {
    const { uncertaintyAfter } = fittedTo([
      { kind: 'ball-gap', value: mm(1.8), error: { graduation: 0, standardUncertainty } },
    ]).bestNextReading
    return uncertaintyAfter
  }
  // Two equal readings halve the variance of one; the balls of the ring hardly move.
  for (const hand of [0.05, 0.1, 0.2]) expect(read(hand)).toBeWithin(0.15 * hand, hand / Math.SQRT2)
})
