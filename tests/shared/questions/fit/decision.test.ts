import { expect, test } from 'vitest'
import { type FullRingInput, fullRingsOf } from '#shared/bearing/arrangements.ts'
import { plugReading } from '#shared/bearing/plug-reading.ts'
import { type FitCorrection, type FitCorrectionInput, fitCorrection } from '#shared/questions/fit/fit-correction.ts'
import type { Reading } from '#shared/questions/fit/reading.ts'
import { mm } from '#shared/units/length.ts'
import { thrustDesigned } from '#tests/support/designed.ts'
import { CALIPER, PLUG, RULE } from '#tests/support/fit-workshop.ts'

/* What makers of one bearing are told: fourteen glass balls of 14 mm, the last of which needs 0.31 mm of gap. */

const DESIGN: FullRingInput = {
  units: 'mm',
  balls: { count: 14, diameter: mm(14), material: 'glass', standardDeviation: mm(0.1) },
  bore: mm(10),
  ballGap: mm(0.7),
  maxBallGap: mm(2.31),
}
const made = fullRingsOf(DESIGN)
if (!made.ok) throw new Error('the bearing of this test must exist')
const { outerRing, innerRing, assembly } = made.value

const asked = (readings: readonly Reading[], more: Partial<FitCorrectionInput>) =>
  fitCorrection({
    design: DESIGN,
    ring: 'outer',
    readings,
    earlier: [],
    target: {},
    tools: {},
    removalHistory: [],
    ballsOnHand: [],
    ...more,
  })

function told(readings: readonly Reading[], more: Partial<FitCorrectionInput> = {}): FitCorrection {
  const answer = asked(readings, more)
  if (!answer.ok) throw new Error(JSON.stringify(answer.error))
  return answer.value
}

const gap = (value: number): Reading => ({ kind: 'ball-gap', value, error: RULE })
const opening = (value: number, ballsLeftOut = 1): Reading => ({
  kind: 'last-ball-opening',
  ballsLeftOut,
  value,
  error: RULE,
})
const across = (value: number): Reading => ({ kind: 'groove-bottom-diameter', value, error: CALIPER })
/** Plugs for the gap at which the last ball surely goes in, and for the widest. */
const plug = (off: number, result: 'enters' | 'refuses'): Reading => ({
  kind: 'plug',
  diameter: outerRing.grooveBottomDiameter - 28 + off,
  result,
  error: PLUG,
})

test('nothing read, or a row of balls alone: measure, with an answer that is no verdict', () => {
  for (const readings of [[], [{ kind: 'ball-row', count: 14, value: 196, error: RULE } as const]]) {
    const { fit } = told(readings)
    expect(fit.state).toBe('unread')
    expect(fit.action).toBe('measure')
  }
})

test('a go plug that enters is no groove too deep: the gap is asked for', () => {
  const { fit } = told([plug(-0.1, 'enters')])
  expect(fit.state).toBe('unclear')
  expect(fit.action === 'measure' && fit.nextReading.kind).toBe('ball-gap')
})

test('a no-go plug that enters is most likely too deep, but by how much only the gap shows: it is asked for', () => {
  const { fit } = told([plug(0.52, 'enters'), { kind: 'last-ball-in' }])
  expect(fit.probability.tooDeep).toBeGreaterThan(0.95)
  if (fit.action !== 'measure') throw new Error(`expected a measurement, got ${fit.action}`)
  expect(fit.nextReading).toMatchObject({ kind: 'ball-gap', decides: 'whether-it-is-too-deep' })
})

test('a plug among the balls says nothing of an inner ring whose groove nobody has measured', () => {
  const snug = { ...plug(0, 'enters'), result: 'snug' } as Reading
  for (const readings of [[snug], [gap(1)], Array.from({ length: 13 }, () => snug)]) {
    const { fit } = told(readings, { ring: 'inner' })
    expect(fit.state).toBe('unread')
    if (fit.action !== 'measure') throw new Error(`expected a measurement, got ${fit.action}`)
    expect(fit.nextReading).toMatchObject({ kind: 'groove-bottom-diameter', why: 'groove-unread' })
  }
})

test('an inner ring that runs is asked for its play; one that binds has none to read', () => {
  const snug = { ...plug(0, 'enters'), result: 'snug' } as Reading
  const next = (...more: readonly Reading[]) => {
    const { fit } = told([across(innerRing.grooveBottomDiameter), snug, ...more], { ring: 'inner' })
    return fit.action === 'measure' ? fit.nextReading.kind : fit.action
  }
  expect(next()).toBe('radial-play')
  expect(next({ kind: 'binds' })).not.toBe('radial-play')
})

test('plugs of a turntable are readings too, less spread than those of a ring', () => {
  const design = { ...DESIGN, arrangement: 'thrust' as const }
  const made = thrustDesigned(design).bearing
  const plugs: readonly Reading[] = [
    { kind: 'plug', diameter: made.gauge.goDiameter, result: 'enters', error: PLUG },
    { kind: 'plug', diameter: made.gauge.noGoDiameter, result: 'refuses', error: PLUG },
    { kind: 'last-ball-in' },
  ]
  const { fit } = told(plugs, { design, ring: 'plate' })
  const { probability } = plugReading(made)
  const { inBand, tooDeep } = probability ?? { inBand: Number.NaN, tooDeep: Number.NaN }
  expect(fit.probability.inBand).toBeWithin(0.03, inBand / (inBand + tooDeep))
})

test('go enters, no-go refuses, the ball goes in: not finished yet, for the plugs of unequal balls cannot tell', () => {
  const { fit } = told([plug(-0.1, 'enters'), plug(0.4, 'refuses'), { kind: 'last-ball-in' }])
  expect(fit.action === 'measure' && fit.nextReading.kind).toBe('ball-gap')
  const read = told([plug(-0.1, 'enters'), plug(0.4, 'refuses'), gap(1)])
  expect(read.fit.action === 'stop' && read.fit.reason).toBe('in-band')
})

test('a bare refusal asks for a figure, of one ball more left out each time that is refused too', () => {
  const refused: Reading = { kind: 'last-ball-refused' }
  const once = told([refused]).fit
  expect(once.action === 'measure' && once.nextReading.ballsLeftOut).toBe(1)
  const twice = told([refused, refused]).fit
  expect(twice.action === 'measure' && twice.nextReading.ballsLeftOut).toBe(2)
})

test('an opening of two balls left out is a reading: the cut is deep, within its risk, and short of the aim', () => {
  const { fit } = told([opening(19, 2)])
  if (fit.action !== 'cut') throw new Error(`expected a cut, got ${fit.action}`)
  expect(fit.nextStep.with).toBe('sharp-tool')
  expect(fit.nextStep.overshootProbability).toBeLessThanOrEqual(0.05)
  expect(fit.nextStep.radial).toBeLessThan(fit.remaining)
  const until = fit.nextStep.until.grooveBottomDiameter
  expect(until).toBeWithin(1e-9, 2 * (fit.grooveRadius.value + fit.nextStep.radial))
})

test('the same figure read three times off one rule makes nothing surer', () => {
  const [once, thrice] = [told([gap(1)]).fit, told([gap(1), gap(1), gap(1)]).fit]
  expect(thrice.figure).toEqual(once.figure)
})

test('a plug, a gap and an opening of the outer ring are readings for the inner ring as well', () => {
  const inner = across(innerRing.grooveBottomDiameter)
  const [alone, plugged] = [
    told([inner], { ring: 'inner' }).fit,
    told([inner, { ...plug(0, 'enters'), result: 'snug' } as Reading], { ring: 'inner' }).fit,
  ]
  // The circle inside the balls moves with the lot's mean and with single balls: a caliper on the inner ring is not enough.
  expect(alone.figure.standardUncertainty).toBeGreaterThan(0.3)
  expect(plugged.figure.standardUncertainty).toBeLessThan(0.15)
  const withGap = told([inner, gap(1)], { ring: 'inner' }).fit
  expect(withGap.figure.standardUncertainty).toBeLessThan(alone.figure.standardUncertainty)
})

test('cuts that came out too deep before are allowed for: the same reading, a shallower cut', () => {
  const before = (first: number, second: number) => [
    { readings: [opening(first)], thenRemoved: { with: 'sharp-tool', radial: 0.5 } as const },
    { readings: [opening(second)], thenRemoved: { with: 'sharp-tool', radial: 0.4 } as const },
  ]
  const light = told([opening(9)], { earlier: before(6.5, 8.5) }).fit
  const heavy = told([opening(9)], { earlier: before(1, 6) }).fit
  expect(light.learnt.toolBias.value).toBeLessThan(0)
  expect(heavy.learnt.toolBias.value).toBeGreaterThan(0.05)
  if (light.action !== 'cut' || heavy.action !== 'cut') throw new Error('both must be told to cut')
  expect(heavy.nextStep.radial).toBeLessThan(light.nextStep.radial)
})

test('strokes that were counted turn a cut into strokes, rounded down', () => {
  const { fit, stroke } = told([gap(0.2), opening(13.5)].slice(1), {
    removalHistory: [{ strokes: 40, before: 0.2, after: 0.7 }],
  })
  if (fit.action !== 'cut') throw new Error(`expected a cut, got ${fit.action}`)
  expect(fit.nextStep.with).toBe('abrasive')
  expect(fit.nextStep.strokes).toBe(Math.round(fit.nextStep.radial / (stroke?.radial ?? Number.NaN)))
})

test('one reading that belongs to another groove is named', () => {
  const { fit } = told([gap(1), across(outerRing.grooveBottomDiameter + 1.6)])
  expect(fit.disagreements.map(({ index }) => index)).toContain(1)
})

test('readings of another ring, too many balls left out, a band turned round: refused with their places', () => {
  const refusal = (more: Partial<FitCorrectionInput>) => {
    const answer = asked([gap(1)], more)
    return answer.ok ? [] : answer.error.ofQuestion.map((each) => [each.code, 'path' in each ? each.path : ''])
  }
  expect(refusal({ readings: [gap(1), { kind: 'binds' }] })).toEqual([['reading-of-other-ring', '/readings/1']])
  expect(refusal({ readings: [opening(3, 12)] })).toEqual([['too-many-left-out', '/readings/0/ballsLeftOut']])
  expect(refusal({ target: { min: 2, max: 1 } })).toEqual([['target-band-empty', '/target']])
  expect(refusal({ readings: [across(200)] })).toEqual([['readings-contradict', '/readings']])
})

test('the last ball of this bearing needs the gap that the readings were chosen for', () => {
  expect(assembly.assemblyGap).toBeWithin(0.005, 0.31)
})
