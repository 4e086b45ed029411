import { expect, test } from 'vitest'
import { fullRingsOf } from '#shared/bearing/arrangements.ts'
import { gapModel, lastBallGoesIn } from '#shared/bearing/fit-correction/gap-model.ts'
import type { Reading } from '#shared/bearing/fit-correction/input.ts'
import { ringGroove } from '#shared/bearing/fit-correction/ring-groove.ts'
import { believe } from '#shared/statistics/belief.ts'
import { estimate } from '#shared/statistics/estimate.ts'
import { mm } from '#shared/units/length.ts'
import { normals, uniforms } from '#tests/support/chance.ts'

const CASES = 10_000
/** Coarser than the service, to leave time for ten thousand cases; the interval must hold what it says all the same. */
const COARSE = { u: 81, y: 15 }

const GRADUATED = { graduation: 0.5, standardUncertainty: 0.15 }
const CALIPER = { graduation: 0, standardUncertainty: 0.1 }

const made = fullRingsOf({
  units: 'mm',
  balls: { count: 12, diameter: mm(16), standardDeviation: mm(0.1) },
  bore: mm(12),
})
if (!made.ok) throw new Error('the bearing of this test must exist')
const bearing = made.value
const model = gapModel(ringGroove(bearing))

test('over ten thousand grooves drawn from what is believed beforehand, the 95 % interval of the gap holds 95 ± 1 %', () => {
  const uniform = uniforms(2026)
  const normal = normals(uniform)
  const { x: range, y: balls } = model.prior
  let held = 0
  for (let drawn = 0; drawn < CASES; drawn++) {
    const x = range.from + (range.to - range.from) * uniform()
    const y = balls.mean + balls.standardDeviation * normal()
    const readings = [gapReading(x, y, uniform, normal), caliperReading(x, normal)]
    const belief = believe(model.prior, [{ evidence: readings.map(model.evidence) }], COARSE)
    if (belief === undefined) throw new Error(`no belief from ${JSON.stringify(readings)}`)
    const { low, high } = estimate(belief, model.figure).interval95
    const gap = model.figure(x, y)
    if (gap >= low && gap <= high) held++
  }
  expect(held / CASES).toBeWithin(0.01, 0.95)
}, 240_000)

/** The gap by a rule, or the opening where the last ball stays out. */
function gapReading(x: number, y: number, uniform: () => number, normal: () => number): Reading {
  const goesIn =
    lastBallGoesIn(model.figure(x, y), bearing.assembly.assemblyGap, 0.002 * bearing.settled.ballDiameter) > uniform()
  const kind = goesIn ? 'ball-gap' : 'last-ball-opening'
  const truth = model.truth({ kind, value: mm(0), error: GRADUATED })?.(x, y) ?? Number.NaN
  const { graduation, standardUncertainty } = GRADUATED
  const value = mm(Math.round((truth + standardUncertainty * normal()) / graduation) * graduation)
  return { kind, value, error: GRADUATED }
}

const caliperReading = (x: number, normal: () => number): Reading => ({
  kind: 'groove-bottom-diameter',
  value: mm(2 * x + CALIPER.standardUncertainty * normal()),
  error: CALIPER,
})
