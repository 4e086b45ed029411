import { expect, test } from 'vitest'
import type { Reading } from '#shared/bearing/fit-correction/input.ts'
import { mm } from '#shared/units/length.ts'
import { fitted } from '#tests/support/fitted.ts'

/* A film that still comes on, or grain that still rises, takes room back: common practice, no source. */

const FILM = 0.05
const ERROR = { graduation: 0, standardUncertainty: 0.05 }

const filmed = (ring: 'outer' | 'inner', reading: Reading, finishAllowance: number) =>
  fitted({
    design: { units: 'mm', balls: { count: 12, diameter: mm(16), standardDeviation: mm(0.05) }, bore: mm(12) },
    ring,
    readings: [reading],
    target: { finishAllowance: mm(finishAllowance) },
  })

test('outer ring: the groove may be deeper by the film that comes on it, and the gap now stays what it is', () => {
  const reading: Reading = { kind: 'ball-gap', value: mm(0.9), error: ERROR }
  const [bare, under] = [filmed('outer', reading, 0), filmed('outer', reading, FILM)]
  expect(under.figure).toEqual(bare.figure)
  expect(under.remaining - bare.remaining).toBeWithin(1e-9, FILM)
})

test('inner ring: the film on the outer groove brings the balls in by as much again', () => {
  const reading: Reading = { kind: 'radial-play', value: mm(0.2), error: ERROR }
  const [bare, under] = [filmed('inner', reading, 0), filmed('inner', reading, FILM)]
  expect(under.figure).toEqual(bare.figure)
  expect(under.remaining - bare.remaining).toBeWithin(1e-9, 2 * FILM)
})

test('a groove that is a film too deep is in band again once the film is reckoned with', () => {
  // 0.9 mm above the largest gap, 2 mm, is some 0.15 mm of depth.
  const reading: Reading = { kind: 'ball-gap', value: mm(2.9), error: ERROR }
  expect(filmed('outer', reading, 0).state).toBe('too-deep')
  expect(filmed('outer', reading, 0.25).state).toBe('in-band')
})
