// Common practice, no source: facts of the trade, as makers tell them. Tolerance: half the last digit told.
import { expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { type FullRingBearing, fullRingsOf } from '#shared/bearing/arrangements.ts'
import { contactWood } from '#shared/data/contact-woods.ts'
import { LEVER_ARM, RUBBING } from '#shared/data/rolling.ts'
import { MOVEMENT } from '#shared/data/wood-movement.ts'
import { ballGap, closedPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { loadCheck } from '#shared/questions/load/load-check.ts'
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

test.each(['glass', 'steel', 'acrylic'] as const)(
  'a ball of %s is held back by 0.05 to 0.5 mm of lever arm',
  (ball) => {
    expect(LEVER_ARM[ball]).toMatchObject({ min: 0.05, max: 0.5 })
  },
)

test('one of wood by 0.1 mm, clean, to 0.06 in, the roughest of a machine shop', () => {
  expect(LEVER_ARM.wood.min).toBe(0.1)
  expect(LEVER_ARM.wood.max).toBeWithin(0.05, 0.06 * 25.4)
})

test('dry balls rub on one another with a coefficient of 0.2 to 0.5', () => {
  expect(RUBBING).toEqual({ min: 0.2, max: 0.5 })
})

test("wood's ratio of Poisson across the grain is taken as 0.3, a stiffness from bending as a tenth too low", () => {
  const { stiffness, poissonsRatio } = contactWood('ash-white')
  expect(poissonsRatio).toBe(0.3)
  // 1.74 million lbf/in² along the grain in bending; 0.125 and 0.08 of it across
  expect(stiffness).toBeWithin(0.5, 1.1 * 1.74e6 * 0.006894757 * Math.sqrt(0.125 * 0.08))
})

test('a wood of which nobody says where it starts to move starts at 30 % of moisture', () => {
  const unsaid = Object.values(MOVEMENT).filter(({ source }) => source === 'timber-trade')
  expect(unsaid.length).toBeGreaterThan(20)
  expect(new Set(unsaid.map(({ saturation }) => saturation))).toEqual(new Set([30]))
})

/** Larkmoor's shelf turntable (invented): sixteen marbles, a bowl 30 mm beside the axis. */
const TURNTABLE = {
  design: {
    units: 'mm',
    arrangement: 'thrust',
    balls: { count: 16, diameter: mm(16), material: 'glass' },
    bore: mm(30),
  },
  axialLoad: 20,
  offset: mm(30),
} as const

test('a finger or a crank turns at 120 turns a minute at the most, and at half of the force of what goes wrong first', () => {
  const { handTurned, speedLimits } = checked({ ...TURNTABLE, offset: mm(0) })
  expect(handTurned).toBe(120)
  expect(speedLimits[0].speed).toBeGreaterThan(120 * Math.SQRT2)
  const beside = checked(TURNTABLE)
  expect((beside.handTurned / beside.speedLimits[0].speed) ** 2).toBeWithin(1e-9, 0.5)
})

test('what stands on wood slides at a coefficient of friction of 0.3', () => {
  const { speedLimits } = checked(TURNTABLE)
  const slides = speedLimits.find(({ reason }) => reason === 'load-slides-off')?.speed ?? Number.NaN
  expect(((slides * Math.PI) / 30) ** 2 * 30).toBeWithin(1e-6, 0.3 * 9806.65)
})

test('balls that rub at 1 m/s wear; glass that meets at 1 m/s, as after a fall of 50 mm, chips', () => {
  const { speedLimits, ratios, friction, bearing } = checked(TURNTABLE)
  const at = (reason: string) => speedLimits.find((limit) => limit.reason === reason)?.speed ?? Number.NaN
  expect((at('balls-rub') * friction.rubbingSpeed) / checked(TURNTABLE).handTurned).toBeWithin(1e-6, 1000)
  expect(((at('glass-at-risk') * Math.PI) / 30) * ratios.ballSet * bearing.pitchRadius).toBeWithin(1e-6, 1000)
  expect(Math.sqrt(2 * 9806.65 * 50)).toBeWithin(10, 990)
})

test('a dent of a thousandth of a ball is a mark, of a two-hundredth is felt at every ball', () => {
  const { firstMark, ruin } = checked(TURNTABLE)
  expect(firstMark.depth).toBeWithin(1e-12, 0.016)
  expect(ruin.depth).toBeWithin(1e-12, 0.08)
})

function checked(input: Parameters<typeof loadCheck>[0]) {
  const result = loadCheck(input)
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.error)}`)
  return result.value
}
