import { expect, test } from 'vitest'
import { fitCorrection } from '#shared/bearing/fit-correction/fit-correction.ts'
import type { FitCorrectionInput, Reading } from '#shared/bearing/fit-correction/input.ts'
import { mm } from '#shared/units/length.ts'

/* A film that still comes on, or grain that still rises, takes room back: common practice, no source. */

const FILM = 0.05
const ERROR = { graduation: 0, standardUncertainty: 0.05 }

function fitted(ring: 'outer' | 'inner', reading: Reading, finishAllowance: number) {
  const input: FitCorrectionInput = {
    design: { units: 'mm', balls: { count: 12, diameter: mm(16), standardDeviation: mm(0.05) }, bore: mm(12) },
    ring,
    readings: [reading],
    earlier: [],
    target: { finishAllowance: mm(finishAllowance) },
    tools: {},
    removalHistory: [],
    ballsOnHand: [],
  }
  const fit = fitCorrection(input)
  if (!fit.ok) throw new Error(JSON.stringify(fit.error))
  return fit.value
}

test('outer ring: the groove may be deeper by the film that comes on it, and the gap now stays what it is', () => {
  const reading: Reading = { kind: 'ball-gap', value: mm(0.9), error: ERROR }
  const [bare, filmed] = [fitted('outer', reading, 0), fitted('outer', reading, FILM)]
  expect(filmed.figure).toEqual(bare.figure)
  expect(filmed.remaining - bare.remaining).toBeWithin(1e-9, FILM)
})

test('inner ring: the film on the outer groove brings the balls in by as much again', () => {
  const reading: Reading = { kind: 'radial-play', value: mm(0.2), error: ERROR }
  const [bare, filmed] = [fitted('inner', reading, 0), fitted('inner', reading, FILM)]
  expect(filmed.figure).toEqual(bare.figure)
  expect(filmed.remaining - bare.remaining).toBeWithin(1e-9, 2 * FILM)
})

test('a groove that is a film too deep is in band again once the film is reckoned with', () => {
  // 0.9 mm above the largest gap, 2 mm, is some 0.15 mm of depth.
  const reading: Reading = { kind: 'ball-gap', value: mm(2.9), error: ERROR }
  expect(fitted('outer', reading, 0).state).toBe('too-deep')
  expect(fitted('outer', reading, 0.25).state).toBe('in-band')
})
