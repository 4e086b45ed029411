import { describe, expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { type FullRingBearing, fullRingsOf } from '#shared/bearing/arrangements.ts'
import { gapModel } from '#shared/bearing/fit-correction/gap-model.ts'
import type { BallsOnHand } from '#shared/bearing/fit-correction/input.ts'
import { rescues } from '#shared/bearing/fit-correction/rescue.ts'
import { ringGroove } from '#shared/bearing/fit-correction/ring-groove.ts'
import { mm } from '#shared/units/length.ts'
import { ballCentres, distance } from '#tests/support/ball-centres.ts'
import { fullRingDesign } from '#tests/support/designed.ts'

/* Every way out is reckoned again by coordinates, or by the design core. The bearing is invented, its balls are even. */

const [COUNT, DIAMETER] = [12, 16]
const [AIM, MIN, MAX] = [0.8, 0.1, 2]
const DESIGN: RadialInput = {
  units: 'mm',
  balls: { count: COUNT, diameter: mm(DIAMETER), standardDeviation: mm(0) },
  bore: mm(12),
  ballGap: mm(AIM),
  minBallGap: mm(MIN),
  maxBallGap: mm(MAX),
}
const BALLS: readonly BallsOnHand[] = [
  { diameter: mm(16.15), quantity: 40 },
  { diameter: mm(16.21), quantity: 11 },
  { diameter: mm(16.3), quantity: 12 },
  { diameter: mm(16.8), quantity: 6 },
  { diameter: mm(15.5), quantity: 60 },
  { diameter: mm(30), quantity: 60 },
]

function made(input: RadialInput): FullRingBearing {
  const bearing = fullRingsOf(input)
  if (!bearing.ok) throw new Error(JSON.stringify(bearing.error))
  return bearing.value
}

const bearing = made(DESIGN)

/** Cut half a millimetre too deep. */
const BOTTOM = bearing.outerRing.grooveBottomDiameter / 2 + 0.5

const found = (bottom = BOTTOM, ballsOnHand = BALLS) => {
  const settled = bearing.settled
  const target = { aim: mm(AIM), min: mm(MIN), max: mm(MAX), overshootRisk: 0.05, finishAllowance: mm(0) }
  const options = rescues({
    groove: ringGroove(bearing),
    model: gapModel(ringGroove(bearing)),
    target,
    ballsOnHand,
    x: mm(bottom),
    ballDiameter: settled.ballDiameter,
  })
  return (name: string) => {
    const option = options.find((each) => each.option === name)
    if (option === undefined) throw new Error(`no such option: ${name}`)
    const length = (of: string): number => option.lengths[of] ?? Number.NaN
    return { ...option, length }
  }
}

/** What so many equal balls leave on a pitch circle: laid one by one, the first against the last. */
function laidGap(pitchRadius: number, diameter: number, count: number): number {
  const centres = ballCentres(pitchRadius, diameter, count)
  const [first, last] = [centres[0], centres.at(-1)]
  return first === undefined || last === undefined ? Number.NaN : distance(first, last) - diameter
}

/** The same for unequal balls on the bottom of a groove, by the law of cosines and the angle that is left. */
function unevenGap(bottom: number, diameters: readonly number[]): number {
  const [radii, stands] = [diameters.map((size) => size / 2), diameters.map((size) => bottom - size / 2)]
  const of = (values: readonly number[], at: number): number => values.at(at) ?? Number.NaN
  const turned = diameters.slice(1).reduce((sum, _, ball) => {
    const [one, other, apart] = [of(stands, ball), of(stands, ball + 1), of(radii, ball) + of(radii, ball + 1)]
    return sum + Math.acos((one * one + other * other - apart * apart) / (2 * one * other))
  }, 0)
  const [first, last] = [of(stands, 0), of(stands, -1)]
  return Math.hypot(last * Math.cos(turned) - first, last * Math.sin(turned)) - of(radii, 0) - of(radii, -1)
}

test('accept: the gap of the balls where they are, and by how much it is too wide', () => {
  const accept = found()('accept')
  const gap = laidGap(BOTTOM - DIAMETER / 2, DIAMETER, COUNT)
  expect(accept.possible).toBe(true)
  expect(accept.ballGap).toBeWithin(1e-9, gap)
  expect(accept.length('overMaxBallGap')).toBeWithin(1e-9, gap - MAX)
})

describe('better balls', () => {
  test('of the sizes of which there are enough, the one that comes nearest to the aim', () => {
    const better = found()('better-balls')
    const enough = BALLS.filter(({ quantity, diameter }) => quantity >= COUNT && diameter < 20)
    const gaps = enough.map(({ diameter }) => laidGap(BOTTOM - diameter / 2, diameter, COUNT))
    const misses = gaps.map((gap) => Math.abs(gap - AIM))
    const best = misses.indexOf(Math.min(...misses))
    expect(better.length('diameter')).toBe(enough[best]?.diameter)
    expect(better.ballGap).toBeWithin(1e-9, gaps[best] ?? Number.NaN)
    expect(better.possible).toBe((gaps[best] ?? Number.NaN) >= MIN && (gaps[best] ?? Number.NaN) <= MAX)
  })

  test('none where no size has enough, and no fit where the nearest is out of band', () => {
    expect(found(BOTTOM, [{ diameter: mm(16.2), quantity: COUNT - 1 }])('better-balls')).toMatchObject({
      possible: false,
      lengths: {},
    })
    expect(found(BOTTOM, [{ diameter: mm(16), quantity: COUNT }])('better-balls').possible).toBe(false)
  })
})

test('larger balls: of that diameter they leave just the aim in this groove, and the design core says the same', () => {
  const larger = found()('larger-balls')
  const diameter = larger.length('diameter')
  expect(larger.possible).toBe(true)
  expect(laidGap(BOTTOM - diameter / 2, diameter, COUNT)).toBeWithin(1e-8, AIM)
  expect(larger.length('largerBy')).toBeWithin(1e-9, diameter - DIAMETER)
  const again = fullRingDesign({
    ...DESIGN,
    balls: { count: COUNT, diameter: mm(diameter) },
    outerRing: {
      outsideDiameter: bearing.outerRing.outsideDiameter,
      grooveDepth: mm(BOTTOM - bearing.outerRing.landDiameter / 2),
    },
    groove: { grooveRadius: bearing.outerRing.grooveRadius },
    radialInternalClearance: bearing.radialInternalClearance,
  })
  if (!again.ok) throw new Error(JSON.stringify(again.error))
  const { outerRing, innerRing, landGap } = again.value.bearing
  expect(outerRing.grooveBottomDiameter).toBeWithin(1e-8, 2 * BOTTOM)
  expect(outerRing.landDiameter).toBeWithin(1e-8, bearing.outerRing.landDiameter)
  expect(larger.length('landDiameter')).toBeWithin(1e-8, outerRing.landDiameter)
  expect(larger.length('outerWall')).toBeWithin(1e-8, outerRing.wall)
  expect(larger.length('innerLandDiameter')).toBeWithin(1e-8, innerRing.landDiameter)
  expect(larger.length('innerGrooveBottomDiameter')).toBeWithin(1e-8, innerRing.grooveBottomDiameter)
  expect(larger.length('landGap')).toBeWithin(1e-8, landGap)
})

describe('a mix', () => {
  test('of all numbers of all larger sizes the one nearest to the aim, by the exact closure of unequal balls', () => {
    const mixed = found()('mixed-balls')
    const larger = BALLS.filter(({ diameter }) => diameter > DIAMETER && diameter < 1.5 * DIAMETER)
    const mixes = larger.flatMap(({ diameter, quantity }) =>
      Array.from({ length: Math.min(quantity, COUNT - 1) }, (_, index) => {
        const replaced = index + 1
        // Evenly: a larger ball wherever the share of the ring that they fill steps up.
        const balls = Array.from({ length: COUNT }, (__, place) => {
          const steps = Math.floor(((place + 1) * replaced) / COUNT) - Math.floor((place * replaced) / COUNT)
          return steps > 0 ? diameter : DIAMETER
        })
        expect(balls.filter((size) => size === diameter).length).toBe(replaced)
        return { diameter, replaced, gap: unevenGap(BOTTOM, balls) }
      }),
    )
    const nearest = Math.min(...mixes.map(({ gap }) => Math.abs(gap - AIM)))
    const best = mixes.find(({ gap }) => Math.abs(gap - AIM) === nearest)
    expect(mixed.possible).toBe(true)
    expect(mixed.counts['replacedCount']).toBe(best?.replaced)
    expect(mixed.length('diameter')).toBe(best?.diameter)
    expect(mixed.ballGap).toBeWithin(1e-9, best?.gap ?? Number.NaN)
  })

  test('none without a larger size', () => {
    expect(found(BOTTOM, [{ diameter: mm(15.9), quantity: 99 }])('mixed-balls').possible).toBe(false)
  })
})

test('spacers: between all neighbours they leave the aim beside the last of them; a single one takes all that is too much', () => {
  const spacers = found()('spacers')
  const each = spacers.length('eachThickness')
  const pitchRadius = BOTTOM - DIAMETER / 2
  // Centres a ball and a spacer apart; between the last ball and the first stand a spacer and the gap.
  expect(laidGap(pitchRadius, DIAMETER + each, COUNT)).toBeWithin(1e-8, AIM)
  expect(laidGap(pitchRadius, DIAMETER, COUNT) - spacers.length('singleThickness')).toBeWithin(1e-9, AIM)
  expect(spacers.counts['spacerCount']).toBe(COUNT)
})

test('lining: a groove thinner by that leaves the aim; its arc is rounder by as much less', () => {
  const lining = found()('lining')
  const thickness = lining.length('thickness')
  expect(laidGap(BOTTOM - thickness - DIAMETER / 2, DIAMETER, COUNT)).toBeWithin(1e-8, AIM)
  expect(thickness).toBeWithin(1e-8, 0.5)
  expect(lining.length('grooveRadius')).toBeWithin(1e-8, bearing.outerRing.grooveRadius - 0.5)
  // 0.53 of a ball less half a millimetre is 7.98 mm: just below the ball's 8 mm.
  expect(lining.counts['tighterThanBallCount']).toBe(1)
})

test('one ball more: its depth leaves the aim for thirteen; walls, lands and the inner ring are those of a design of thirteen', () => {
  // 2.5 mm too deep: nearly a whole ball of gap.
  const bottom = BOTTOM + 2
  const more = found(bottom)('one-ball-more')
  expect(more.possible).toBe(true)
  expect(more.counts['ballCount']).toBe(COUNT + 1)
  const newBottom = more.length('grooveBottomDiameter') / 2
  expect(laidGap(newBottom - DIAMETER / 2, DIAMETER, COUNT + 1)).toBeWithin(1e-8, AIM)
  expect(more.length('deeper')).toBeWithin(1e-8, newBottom - bottom)
  const depth = newBottom - bearing.outerRing.landDiameter / 2
  expect(more.length('grooveDepth')).toBeWithin(1e-8, depth)
  expect(more.counts['engagement']).toBeWithin(1e-9, depth / DIAMETER)
  expect(more.length('outerWall')).toBeWithin(1e-8, bearing.outerRing.outsideDiameter / 2 - newBottom)
  const { innerRing } = made({ ...DESIGN, balls: { ...DESIGN.balls, count: COUNT + 1 } })
  expect(more.length('innerGrooveBottomDiameter')).toBeWithin(1e-8, innerRing.grooveBottomDiameter)
  expect(more.length('innerLandDiameter')).toBeWithin(1e-8, innerRing.landDiameter)
  expect(more.length('landGap')).toBeWithin(1e-8, (bearing.outerRing.landDiameter - innerRing.landDiameter) / 2)
})

test('a new blank ends at the aim', () => {
  expect(found()('new-blank')).toMatchObject({ possible: true, ballGap: AIM })
})
