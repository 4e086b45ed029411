import fc from 'fast-check'
import { expect, test } from 'vitest'
import { plugGaps } from '#shared/bearing/ball-ring.ts'
import { limitedSizes } from '#shared/bearing/gap-limits.ts'
import { ballGap } from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'
import { cagedDesigned, designed, thrustDesigned, valid } from '#tests/support/designed.ts'
import { CAGED, likelyInput, PLATES } from '#tests/support/inputs.ts'

test('at either limit of the groove bottom, balls on it leave the gap of a plug', () => {
  fc.assert(
    fc.property(valid(likelyInput), (made) => {
      const { bearing } = made
      if (bearing.outerRing.seat !== 'bottom' || bearing.resolved.traits.raceway === 'track') return
      const { ballDiameter, input } = bearing.resolved
      const limits = limitedSizes(made)['outerRing.grooveBottomDiameter']
      const gapAt = (bottom: number) => ballGap(mm((bottom - ballDiameter) / 2), ballDiameter, input.balls.count)
      const { go, noGo } = plugGaps(bearing.resolved)
      const rounding = 1e-8 * ballDiameter * input.balls.count
      expect(gapAt(limits?.min ?? Number.NaN)).toBeWithin(rounding, go)
      expect(gapAt(limits?.max ?? Number.NaN)).toBeWithin(rounding, noGo)
    }),
    { numRuns: 100 },
  )
})

test('of plates the circle of the groove has the limits, and with a cage nothing that a gap hangs on', () => {
  const plates = thrustDesigned(PLATES)
  const { ballDiameter, input } = plates.bearing.resolved
  const circle = limitedSizes(plates).pitchDiameter
  const { go, noGo } = plugGaps(plates.bearing.resolved)
  const gapAt = (diameter: number) => ballGap(mm(diameter / 2), ballDiameter, input.balls.count)
  expect(gapAt(circle?.min ?? Number.NaN)).toBeWithin(1e-6, go)
  expect(gapAt(circle?.max ?? Number.NaN)).toBeWithin(1e-6, noGo)
  expect(Object.keys(limitedSizes(cagedDesigned(CAGED)))).toEqual(['outerRing.grooveRadius', 'innerRing.grooveRadius'])
})

// 0.53 of 16 mm is 8.48 mm, and the ball's own radius 8 mm: 0.48 mm below it.
test('the arc of a groove may come down to the radius of the ball, and up by as much', () => {
  const arc = limitedSizes(designed({ units: 'mm', balls: { count: 12, diameter: mm(16) }, bore: mm(12) }))
  expect(arc['innerRing.grooveRadius']?.min).toBeWithin(1e-9, 8)
  expect(arc['innerRing.grooveRadius']?.max).toBeWithin(1e-9, 8.96)
})
