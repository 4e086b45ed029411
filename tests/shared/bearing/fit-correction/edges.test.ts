import { expect, test } from 'vitest'
import { type FullRingBearing, fullRingsOf } from '#shared/bearing/arrangements.ts'
import { gapModel } from '#shared/bearing/fit-correction/gap-model.ts'
import { innerModel } from '#shared/bearing/fit-correction/inner-model.ts'
import { insideFullRing } from '#shared/bearing/fit-correction/inner-under-way.ts'
import { ringGroove } from '#shared/bearing/fit-correction/ring-groove.ts'
import { mm } from '#shared/units/length.ts'
import { ballCentres, distance } from '#tests/support/ball-centres.ts'
import { fitted } from '#tests/support/fitted.ts'

/*
 * A groove tighter than the ball, an invented one: the ball rides on its two edges, which stand at the land, w from mid
 * width with w² = r² − (r − h)². Its centre is √(rw² − w²) from the line between them. By Pythagoras, not by the seat.
 */
const DIAMETER = 16
const RADIUS = 7.2
const made = fullRingsOf({
  units: 'mm',
  balls: { count: 12, diameter: mm(DIAMETER), standardDeviation: mm(0) },
  bore: mm(12),
  groove: { grooveRadius: mm(RADIUS) },
})
if (!made.ok) throw new Error('the bearing of this test must exist')
const bearing: FullRingBearing = made.value

const fromEdges = (depth: number, diameter: number): number =>
  Math.sqrt(diameter ** 2 / 4 - (RADIUS ** 2 - (RADIUS - depth) ** 2))

function laidGap(pitchRadius: number, diameter: number): number {
  const centres = ballCentres(pitchRadius, diameter, 12)
  const [first, last] = [centres[0], centres.at(-1)]
  return first === undefined || last === undefined ? Number.NaN : distance(first, last) - diameter
}

test.each([2.6, 3.2, 3.6])(
  'outer ring, cut %d mm deep: pitch radius and gap of balls on the edges, and the way back',
  (depth) => {
    const model = gapModel(ringGroove(bearing))
    const land = bearing.outerRing.landDiameter / 2
    expect(bearing.outerRing.seat).toBe('edges')
    for (const diameter of [15.9, DIAMETER, 16.1]) {
      const pitchRadius = land - fromEdges(depth, diameter)
      expect(model.pitchRadius(land + depth, diameter)).toBeWithin(1e-9, pitchRadius)
      const gap = model.figure(land + depth, diameter)
      if (gap > 0) expect(gap).toBeWithin(1e-8, laidGap(pitchRadius, diameter))
      expect(model.xFor(gap, diameter)).toBeWithin(1e-7, land + depth)
    }
  },
)

test('inner ring: play of balls on its edges is twice the way to them, and the way back', () => {
  const model = innerModel(insideFullRing(bearing))
  const land = bearing.innerRing.landDiameter / 2
  const inside = bearing.gauge.nominalDiameter / 2
  expect(bearing.innerRing.seat).toBe('edges')
  for (const depth of [5.5, 6, 6.4]) {
    // The ball's innermost point lies rw − √(rw² − w²) below the land.
    const deepest = land - (DIAMETER / 2 - fromEdges(depth, DIAMETER))
    const play = model.figure(depth - land, inside)
    expect(play).toBeWithin(1e-9, 2 * (inside - deepest))
    expect(model.xFor(play, inside)).toBeWithin(1e-7, depth - land)
  }
})

test('a groove depth read at balls on the edges: the gap is the one of those edges, and a cut opens it more slowly', () => {
  const land = bearing.outerRing.landDiameter
  const error = { graduation: 0, standardUncertainty: 0.005 }
  const { figure, remaining, target } = fitted({
    design: bearing.settled.input,
    readings: [{ kind: 'groove-depth', value: mm(3.2), landDiameter: land, error }],
  })
  const gap = laidGap(land / 2 - fromEdges(3.2, DIAMETER), DIAMETER)
  expect(figure.value).toBeWithin(0.01, gap)
  const slower = gapModel(ringGroove(bearing)).figurePerX
  expect(slower).toBeLessThan(bearing.gapPerPitchRadius)
  // What remains is wood: taken off, it leaves the aim.
  const there = laidGap(land / 2 - fromEdges(3.2 + remaining, DIAMETER), DIAMETER)
  expect(there).toBeWithin(0.01, target.aim)
})
