import { expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { fullRingsOf } from '#shared/bearing/arrangements.ts'
import { matingFaceAdjustment } from '#shared/questions/fit/mating-faces.ts'
import { mm } from '#shared/units/length.ts'

/** Twelve balls of 16 mm in grooves of 8.48 mm radius, an invented bearing. */
const [BALL, GROOVE] = [8, 8.48]
const AIM = 0.32

function adjusted(play: number, more: Partial<RadialInput> = {}) {
  const made = fullRingsOf({ units: 'mm', balls: { count: 12, diameter: mm(2 * BALL) }, bore: mm(12), ...more })
  if (!made.ok) throw new Error(JSON.stringify(made.error))
  return matingFaceAdjustment(made.value, play, AIM)
}

/*
 * In section: each half has its arc about a centre of its own, δ/2 past the middle once δ is off the faces. The ball
 * touches both arcs from inside where its centre is rg − rw from theirs, so it stands higher than at the bottom by
 * (rg − rw) − √((rg − rw)² − δ²/4), on both sides of the ring.
 */
test.each([0.1, 0.4, 0.8])(
  'sanding %d mm off the faces tightens by twice what the ball rises between the arcs',
  (off) => {
    const room = GROOVE - BALL
    const rise = room - Math.sqrt(room ** 2 - off ** 2 / 4)
    expect(adjusted(AIM + 2 * rise)?.change).toBeWithin(1e-9, off)
  },
)

/* Halves that stand s apart have two corners at the bottom, s/2 from the middle: the ball sinks between them. */
test.each([0.5, 1, 2])('a shim of %d mm loosens by twice what the ball sinks between the corners', (shim) => {
  const sinks = BALL - Math.sqrt(BALL ** 2 - shim ** 2 / 4)
  expect(adjusted(AIM - 2 * sinks)?.change).toBeWithin(1e-9, -shim)
})

test('an inner ring in one piece has no mating faces', () => {
  expect(adjusted(0.5, { split: 'outer-ring' })).toBeUndefined()
  expect(adjusted(0.5, { split: 'none' })).toBeUndefined()
})

test('a little is worth it, an eighth of a ball and more is not', () => {
  expect(adjusted(AIM + 0.1)?.isWorthIt).toBe(true)
  expect(adjusted(-6)?.isWorthIt).toBe(false)
})
