// Common practice, no source: facts of the trade, as makers tell them. Tolerance: half the last digit told.
import { expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { type FullRingBearing, fullRingsOf } from '#shared/bearing/arrangements.ts'
import { ballGap, closedPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { inches, inUnits, type Mm, mm } from '#shared/units/length.ts'

const toInches = (length: Mm): number => inUnits(length, 'in')

function made(input: RadialInput): FullRingBearing {
  const result = fullRingsOf(input)
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.error)}`)
  return result.value
}

test('ten balls of 3/4 in close at a pitch radius of 1.2135 in', () => {
  expect(toInches(closedPitchRadius(inches(3 / 4), 10))).toBeWithin(0.00005, 1.2135)
})

test('a groove 3/16 in deep takes 25 % of a 3/4 in ball', () => {
  const { outerRing, resolved } = made({
    units: 'in',
    balls: { count: 10, diameter: inches(3 / 4) },
    bore: inches(1 / 2),
    outerRing: { grooveDepth: inches(3 / 16) },
  })
  expect(outerRing.seatDepth / resolved.ballDiameter).toBe(0.25)
})

test('a groove 1/16 in too deep for those ten balls opens a gap of about 3/8 in: 0.376 by the exact chord', () => {
  const tooDeep = mm(closedPitchRadius(inches(3 / 4), 10) + inches(1 / 16))
  expect(toInches(ballGap(tooDeep, inches(3 / 4), 10))).toBeWithin(0.0005, 0.376)
})

test('a form cutter of 15/32 in radius, 3/16 in deep, is a little wide for a 3/4 in ball: on the bottom', () => {
  const cut = { radius: inches(15 / 32), depth: inches(3 / 16) }
  expect(seatIn(cut, inches(3 / 4))).toMatchObject({ on: 'bottom', depth: cut.depth })
  expect(cut.radius).toBeGreaterThan(inches(3 / 8))
})

test('and a little small for a 1 in ball, which rides on the edges about 0.169 in deep, not 0.1875', () => {
  const seat = seatIn({ radius: inches(15 / 32), depth: inches(3 / 16) }, inches(1))
  expect(seat.on).toBe('edges')
  expect(toInches(seat.depth)).toBeWithin(0.0005, 0.169)
})

test('and all diameters of that ring follow the ball, not the groove: by as much as it sits higher', () => {
  const ring = (cutter: RadialInput['groove']): FullRingBearing =>
    made({
      units: 'in',
      balls: { count: 10, diameter: inches(1) },
      bore: inches(1 / 2),
      ballGap: inches(1 / 16),
      outerRing: { grooveDepth: inches(3 / 16), ...(cutter === undefined ? {} : { groove: cutter }) },
    })
  const [tight, round] = [ring({ grooveRadius: inches(15 / 32) }), ring(undefined)]
  expect(tight.pitchRadius).toBe(round.pitchRadius)
  const wider = toInches(mm((tight.outerRing.landDiameter - round.outerRing.landDiameter) / 2))
  expect(wider).toBeWithin(0.0005, 0.1875 - 0.169)
})
