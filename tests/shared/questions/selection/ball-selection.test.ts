import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { thrustBearingOf } from '#shared/bearing/arrangements/thrust/geometry.ts'
import type { ThrustInput } from '#shared/bearing/arrangements/thrust/input.ts'
import { fullRingsOf } from '#shared/bearing/arrangements.ts'
import { ballGapOnCircle, closingCircle } from '#shared/geometry/balls-on-a-circle.ts'
import { IN_A_RING, ON_A_CIRCLE } from '#shared/geometry/closure.ts'
import { spreadOrder } from '#shared/geometry/order-round-the-ring.ts'
import { plateAtRest } from '#shared/geometry/plate-on-balls.ts'
import { closingRadius, unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { chooseBalls, type FigureGoal } from '#shared/questions/selection/ball-choice.ts'
import { type BallSelectionInput, ballSelection } from '#shared/questions/selection/ball-selection.ts'
import { SELECTION_GOALS } from '#shared/questions/selection/fields.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { gapOf, gapOnPlate, inGroove, largestAmong } from '#tests/support/balls-by-coordinates.ts'
import { normals, uniforms } from '#tests/support/chance.ts'
import { between } from '#tests/support/inputs.ts'
import { choicesOf, ordersOf } from '#tests/support/orders.ts'
import { reasonsIn } from '#tests/support/refused.ts'

/** Invented bearings: twelve or five balls of 16 mm. */
const design = (count: number, ballGap = 0.8): RadialInput => ({
  units: 'mm',
  balls: { count, diameter: mm(16) },
  bore: mm(1),
  ballGap: mm(ballGap),
})

/** The bottom radius of the design's own groove. */
function bottomOf(input: RadialInput): Mm {
  const made = fullRingsOf(input)
  if (!made.ok) throw new Error('no such bearing')
  return mm(made.value.outerRing.grooveBottomDiameter / 2)
}

function select(input: BallSelectionInput) {
  const selection = ballSelection(input)
  if (!selection.ok) throw new Error(JSON.stringify(selection.error))
  return selection.value
}

function refusal(input: BallSelectionInput) {
  const selection = ballSelection(input)
  return selection.ok ? [] : [...selection.error.ofDesign, ...selection.error.ofQuestion]
}

/** A lot as it is bought, with a scatter of single balls, read to so many parts of a millimetre. */
function bought(count: number, deviation: number, seed = 1, parts = 100): readonly Mm[] {
  const normal = normals(uniforms(seed))
  return Array.from({ length: count }, () => mm(Math.round((16 + deviation * normal()) * parts) / parts))
}

const laid = (sizes: readonly number[], parts: 2 | 3 = 2): readonly number[] => {
  const largestFirst = sizes.toSorted((one, other) => other - one)
  return spreadOrder(sizes.length, parts).map((rank) => largestFirst[rank] ?? Number.NaN)
}
const spreadOf = (sizes: readonly number[]) => Math.max(...sizes) - Math.min(...sizes)
const diametersOf = ({ chosen }: ReturnType<typeof select>) => chosen.balls.map(({ diameter }) => diameter)

/** Goals of one figure. */
const FIGURE_GOALS = ['close-groove', 'least-groove-change', 'least-spread'] as const

/** The radius of the circle of the design's own groove. */
const circleOf = (input: ThrustInput): Mm => mm(plateOf(input).plate.grooveCircleDiameter / 2)

function plateOf(input: ThrustInput) {
  const made = thrustBearingOf(input)
  if (!made.ok) throw new Error('no such plates')
  return made.value
}

/** The radius that the balls of a design close on. */
const radiusOf = (input: RadialInput | ThrustInput): Mm =>
  input.arrangement === 'thrust' ? circleOf(input) : bottomOf(input)

/** In a ring, and on a plate: the name under which that radius is given, and the exact closure. */
const RING = {
  design: (count: number, gap?: number) => design(count, gap),
  groove: (radius: number) => ({ grooveBottomDiameter: mm(2 * radius) }),
  gap: unequalBallGap,
  radiusFor: closingRadius,
  closure: IN_A_RING,
  parts: 2,
} as const
const PLATE = {
  design: (count: number, gap?: number): ThrustInput => ({ ...design(count, gap), arrangement: 'thrust' }),
  groove: (radius: number) => ({ grooveCircleDiameter: mm(2 * radius) }),
  gap: (radius: Mm, balls: readonly number[]) => ballGapOnCircle(radius, balls),
  radiusFor: closingCircle,
  closure: ON_A_CIRCLE,
  parts: 3,
} as const

describe.each([
  ['a ring', RING],
  ['a plate', PLATE],
] as const)('five of twelve for %s, against every choice that there is', (_, place) => {
  const DESIGN = place.design(5, 2)
  const BOTTOM = radiusOf(DESIGN)
  const AIM = 2
  /** By how much balls in an order miss what the goal wants. */
  const misses: Readonly<Record<FigureGoal, (bottom: Mm) => (balls: readonly number[]) => number>> = {
    'close-groove': (bottom) => (balls) => Math.abs(place.gap(bottom, balls) - AIM),
    'least-groove-change': (bottom) => (balls) => Math.abs(place.radiusFor(balls, mm(AIM)) - bottom),
    'least-spread': () => spreadOf,
  }
  /** Lots that reach the aim and lots that do not, in the design's groove and in one cut too shallow or too deep. */
  const lotOf = (size: number) =>
    fc
      .tuple(fc.array(between(-0.3, 0.3), { minLength: size, maxLength: size }), between(-0.3, 0.3), between(-0.4, 0.4))
      .map(([sizes, shift, cut]) => ({
        measured: sizes.map((each) => mm(16 + shift + each)),
        bottom: mm(BOTTOM + cut),
      }))
  const lot = lotOf(12)

  test.each(FIGURE_GOALS)('%s: none of the 792 choices is nearer, laid the same way', (goal) => {
    fc.assert(
      fc.property(lot, ({ measured, bottom }) => {
        const sorted = measured.map((diameter, index) => ({ index, diameter }))
        sorted.sort((one, other) => one.diameter - other.diameter)
        const order = spreadOrder(5, place.parts)
        const task = { closure: place.closure, radius: bottom, aim: mm(AIM), lot: sorted, ballCount: 5, order }
        const choice = chooseBalls(task, goal)
        const miss = misses[goal](bottom)
        const nearest = Math.min(...choicesOf(measured, 5).map((balls) => miss(laid(balls, place.parts))))
        expect(miss(choice.balls.map(({ diameter }) => diameter))).toBeWithin(1e-11, nearest)
        expect(choice.missedBy).toBeWithin(1e-11, nearest)
        expect(choice.everyChoiceTried).toBe(true)
      }),
      { numRuns: 40 },
    )
  })

  // Five of nine, so that all 15,120 ways to lay them can be tried for more lots.
  test.each(FIGURE_GOALS)('%s: no choice in any of its 120 orders misses less than is said to be possible', (goal) => {
    fc.assert(
      fc.property(lotOf(9), ({ measured, bottom }) => {
        const { noneBelow, missedBy, chosen, reach } = select({
          design: DESIGN,
          measured,
          goal,
          ...place.groove(bottom),
        })
        const miss = misses[goal](bottom)
        const orders = choicesOf(measured, 5).flatMap((balls) => ordersOf(balls))
        let [nearest, least, most] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
        for (const order of orders) {
          const gap = place.gap(bottom, order)
          nearest = Math.min(nearest, miss(order))
          least = Math.min(least, gap)
          most = Math.max(most, gap)
        }
        expect(noneBelow).toBeLessThanOrEqual(nearest + 1e-12)
        expect(missedBy).toBeGreaterThanOrEqual(nearest - 1e-12)
        expect(missedBy).toBeWithin(1e-11, miss(chosen.balls.map(({ diameter }) => diameter)))
        expect(reach.least).toBeLessThanOrEqual(least)
        expect(reach.most).toBeGreaterThanOrEqual(most)
        // and the bounds are worth having: a few hundredths of a millimetre from what there is
        expect(reach.least).toBeWithin(0.1, least)
        expect(reach.most).toBeWithin(0.1, most)
      }),
      { numRuns: 8 },
    )
  })

  test('the same spread twice: the choice nearest to the aim, of all that have it', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -4, max: 4 }), { minLength: 10, maxLength: 10 }), (steps) => {
        const measured = steps.map((step) => mm(16 + step / 16))
        const selection = select({ design: DESIGN, measured, goal: 'least-spread', ...place.groove(BOTTOM) })
        const all = choicesOf(measured, 5).map((balls) => laid(balls, place.parts))
        const least = Math.min(...all.map(spreadOf))
        const gaps = all.filter((balls) => spreadOf(balls) === least).map((balls) => place.gap(BOTTOM, balls))
        const nearest = Math.min(...gaps.map((gap) => Math.abs(gap - AIM)))
        expect(selection.spread).toBe(least)
        // in the order to use, which differs from the one by which choices are compared
        expect(Math.abs(selection.chosen.ballGap - AIM)).toBeWithin(0.01, nearest)
      }),
      { numRuns: 40 },
    )
  })

  test('what is reported of the balls is so', () => {
    fc.assert(
      fc.property(lot, fc.constantFrom(...SELECTION_GOALS), ({ measured, bottom }, goal) => {
        const selection = select({ design: DESIGN, measured, goal, ...place.groove(bottom) })
        const diameters = diametersOf(selection)
        for (const { index, diameter } of selection.chosen.balls) expect(measured[index]).toBe(diameter)
        const all = [...selection.chosen.balls.map(({ index }) => index), ...selection.leftOver]
        expect(all.toSorted((one, other) => one - other)).toEqual([...measured.keys()])
        expect(selection.chosen.ballGap).toBe(place.gap(bottom, diameters))
        expect(Math.max(...diameters)).toBe(diameters[0])
        const change = mm(bottom + selection.grooveChange)
        expect(place.gap(change, diameters)).toBeWithin(1e-10, AIM)
        expect(5 * selection.mean).toBeWithin(
          1e-11,
          diameters.reduce((sum, each) => sum + each, 0),
        )
        const squares = diameters.reduce((sum, each) => sum + (each - selection.mean) ** 2, 0)
        expect(4 * selection.standardDeviation ** 2).toBeWithin(1e-11, squares)
        for (const order of ordersOf(diameters)) {
          const gap = place.gap(bottom, order)
          expect(gap).toBeGreaterThanOrEqual(selection.gapOverOrders.least)
          expect(gap).toBeLessThanOrEqual(selection.gapOverOrders.most)
        }
      }),
      { numRuns: 20 },
    )
  })
})

/** By so much the gap of these lots differs from one order to another [mm]: the balls are chosen before their order. */
const BY_ORDER = 0.015

describe('twelve of two hundred', () => {
  const DESIGN = design(12)

  test.each([
    ['close-groove', 1e6, 1e-4],
    ['least-groove-change', 1e6, 1e-4],
    // Sums go by steps of 0.01 mm, and the gap by 1 + sin(π/Z) times that: half of it is what may be missed.
    ['close-groove', 100, 0.0065],
    ['least-groove-change', 100, 0.0065],
  ] as const)('%s, read to 1/%s mm: within %s mm, whatever the groove within reach', (goal, parts, within) => {
    for (let seed = 1; seed <= 20; seed += 2) {
      const measured = bought(200, 0.1, seed, parts)
      const grooveBottomDiameter = mm(2 * bottomOf(DESIGN) + (seed - 10) / 50)
      const { missedBy, noneBelow } = select({ design: DESIGN, measured, goal, grooveBottomDiameter })
      expect(missedBy).toBeLessThan(within + BY_ORDER)
      expect(noneBelow).toBe(0)
    }
  })

  test('least-spread: that of the tightest run of the sorted lot', () => {
    for (let seed = 1; seed <= 20; seed += 2) {
      const measured = bought(200, 0.1, seed)
      const sorted = measured.toSorted((one, other) => one - other)
      const runs = sorted.slice(11).map((largest, start) => largest - (sorted[start] ?? Number.NaN))
      const selection = select({ design: DESIGN, measured, goal: 'least-spread' })
      expect(selection.spread).toBeWithin(1e-9, Math.min(...runs))
      expect(selection.noneBelow).toBeWithin(1e-12, selection.missedBy)
    }
  })

  test.each(SELECTION_GOALS)('%s: the order in which the lot was measured changes no figure', (goal) => {
    const measured = bought(200, 0.1)
    const [one, other] = [measured, measured.toReversed()].map((lot) => select({ design: DESIGN, measured: lot, goal }))
    expect(one && diametersOf(one)).toEqual(other && diametersOf(other))
    expect(one?.chosen.ballGap).toBe(other?.chosen.ballGap)
  })

  test.each(SELECTION_GOALS)('%s: twice as large, it is the same choice', (goal) => {
    const measured = bought(200, 0.1)
    const doubled: RadialInput = {
      ...DESIGN,
      balls: { count: 12, diameter: mm(32) },
      bore: mm(2),
      ballGap: mm(1.6),
    }
    const bottom = bottomOf(DESIGN)
    const small = select({ design: DESIGN, measured, goal, grooveBottomDiameter: mm(2 * bottom) })
    const twice = measured.map((each) => mm(2 * each))
    const large = select({ design: doubled, measured: twice, goal, grooveBottomDiameter: mm(4 * bottom) })
    expect(large.chosen.ballGap).toBeWithin(1e-9, 2 * small.chosen.ballGap)
    // the design's own inner groove is taken as an answer states it, to 1e-6 mm
    expect(large.chosen.margin).toBeWithin(2e-6, 2 * small.chosen.margin)
    expect(large.spread).toBeWithin(1e-12, 2 * small.spread)
  })
})

describe('as many as the ring takes', () => {
  test('are all taken, whatever the goal', () => {
    for (const goal of SELECTION_GOALS) {
      const { chosen, leftOver } = select({ design: design(12), measured: bought(12, 0.1), goal })
      expect(chosen.balls.length).toBe(12)
      expect(leftOver).toEqual([])
    }
  })

  test('equal ones of the design in its own groove leave its gap, need no change and know no order', () => {
    for (const count of [3, 12, 200]) {
      const measured = Array.from({ length: count }, () => mm(16))
      const selection = select({ design: design(count), measured, goal: 'close-groove' })
      const { gapOverOrders: orders, reach, spread } = selection
      // the design's own groove is taken as an answer states it, to 1e-6 mm
      expect(selection.chosen.ballGap).toBeWithin(2e-6, 0.8)
      expect(selection.grooveChange).toBeWithin(0.3e-6, 0)
      expect(spread).toBe(0)
      for (const bound of [orders.least, orders.most, reach.least, reach.most]) expect(bound).toBeWithin(2e-6, 0.8)
    }
  })
})

describe('plates', () => {
  const PLATES = PLATE.design(12)

  test('twelve of two hundred: within 0.0001 mm, whatever the circle within reach', () => {
    for (const goal of ['close-groove', 'least-groove-change'] as const) {
      for (let seed = 1; seed <= 20; seed += 2) {
        const measured = bought(200, 0.1, seed, 1e6)
        const circle = circleOf(PLATES) + (seed - 10) / 100
        const { missedBy, noneBelow } = select({ design: PLATES, measured, goal, ...PLATE.groove(circle) })
        expect(missedBy).toBeLessThan(1e-4 + BY_ORDER)
        expect(noneBelow).toBe(0)
      }
    }
  })

  test('the upper plate rises no more than with the three largest a third of a turn from one another, on firm carriers', () => {
    for (let seed = 1; seed <= 20; seed += 2) {
      const { atRest, chosen } = select({ design: PLATES, measured: bought(40, 0.1, seed), goal: 'least-spread' })
      const diameters = chosen.balls.map(({ diameter }) => diameter as number)
      expect(atRest?.rise).toBeLessThanOrEqual(plateAtRest(laid(diameters, 3)).rise + 1e-12)
      expect(chosen.margin).toBeGreaterThanOrEqual(0.1)
      // of plates with room for the balls the faces are a ball less both depths apart
      const { plate } = plateOf(PLATES)
      expect((atRest?.height ?? Number.NaN) + 2 * plate.seatDepth).toBeLessThanOrEqual(Math.max(...diameters))
    }
  })

  test('equal balls leave the plate level, whatever the count, in the design its own gap', () => {
    for (const count of [3, 4, 5, 12, 200]) {
      const measured = Array.from({ length: count }, () => mm(16))
      const { chosen, atRest, grooveChange } = select({ design: PLATE.design(count), measured, goal: 'close-groove' })
      expect(chosen.ballGap).toBeWithin(2e-6, 0.8)
      expect(grooveChange).toBeWithin(0.3e-6, 0)
      expect(atRest?.rise).toBeWithin(1e-12, 0)
      expect(atRest?.mostClearance).toBeWithin(1e-12, 0)
    }
  })

  test('on edges the gap knows the differences of height alone: of equal balls nothing', () => {
    const tight: ThrustInput = { ...PLATES, groove: { grooveRadius: mm(7.9) } }
    const shift = (measured: readonly Mm[]) => {
      const { warnings, chosen } = select({ design: tight, measured, goal: 'close-groove' })
      const shifts = warnings.map(({ facts }): number => (facts.code === 'rides-on-edges' ? facts.gapShift : 0))
      expect(warnings.map(({ facts }) => facts.code)).toContain('rides-on-edges')
      const other = (ball: number) => chosen.balls.at(ball)?.diameter !== chosen.balls.at(ball - 1)?.diameter
      const unlike = chosen.balls.filter((_, ball) => other(ball)).length
      return { shift: shifts.reduce((sum, each) => sum + each, 0), unlike }
    }
    expect(shift(Array.from({ length: 12 }, () => mm(16))).shift).toBeWithin(1e-12, 0)
    const uneven = shift(Array.from({ length: 12 }, (_, ball) => mm(16 + 0.2 * (ball % 2))))
    // Unlike neighbours differ by 0.1 mm in height on the bottom, by r/z times that on the edges, z² = r² − w²; each chord of 2r is
    // shorter by half the difference of both squares over itself. To first order, the last two being of another size.
    const half = plateOf(tight).plate.grooveWidth / 2
    const squares = (0.1 * 0.1 * half * half) / (8.05 * 8.05 - half * half)
    expect(uneven.unlike).toBeGreaterThan(2)
    expect(uneven.shift / ((uneven.unlike * squares) / (2 * 16.1))).toBeWithin(0.1, 1)
  })

  test('a circle is no groove bottom, nor the other way round', () => {
    const measured = bought(14, 0.1)
    const ofRing = { design: PLATES, measured, goal: 'close-groove', grooveBottomDiameter: mm(60) } as const
    expect(refusal(ofRing)).toEqual([
      { code: 'not-of-arrangement', path: '/grooveBottomDiameter', arrangement: 'thrust' },
    ])
    const ofPlate = { design: design(12), measured, goal: 'close-groove', grooveCircleDiameter: mm(60) } as const
    expect(refusal(ofPlate)).toMatchObject([{ code: 'not-of-arrangement', path: '/grooveCircleDiameter' }])
  })

  test('a circle that is far too tight or too wide, and balls that do not close with the circle that lets them', () => {
    const lot = { design: PLATES, measured: bought(14, 0.1), goal: 'close-groove' } as const
    expect(refusal({ ...lot, grooveCircleDiameter: mm(14) })).toMatchObject([
      { code: 'groove-too-tight', path: '/grooveCircleDiameter' },
    ])
    expect(refusal({ ...lot, grooveCircleDiameter: mm(1000) })).toMatchObject([{ code: 'groove-too-wide' }])
    const large = Array.from({ length: 12 }, () => mm(16.2))
    const [warning] = select({ ...lot, measured: large }).warnings
    expect(warning?.facts.code).toBe('does-not-close')
    const mended = select({ ...lot, measured: large, grooveCircleDiameter: warning?.suggestion?.size ?? mm(0) })
    expect(mended.chosen.ballGap).toBeWithin(2e-6, 0.8)
  })
})

/** What the last ball needs, in a ring like this. */
const bearingOf = (input: RadialInput) => {
  const made = fullRingsOf(input)
  if (!made.ok) throw new Error('no such bearing')
  return made.value
}

/** Gap, play and run-out of an order, worked out anew by coordinates. */
function byCoordinates(grooveDiameter: number, innerDiameter: number, balls: readonly number[]) {
  const gap = gapOf(inGroove(grooveDiameter / 2, balls, false))
  const { radius, out } = largestAmong(inGroove(grooveDiameter / 2, balls, true), 3)
  return { gap, play: 2 * radius - innerDiameter, runOut: 2 * out }
}

describe('play and run-out of the orders', () => {
  /** Lots for 3 to 14 balls that close in the design's groove or one beside it, between an inner groove of any size. */
  const lot = fc.integer({ min: 3, max: 14 }).chain((count) =>
    fc.record({
      count: fc.constant(count),
      sizes: fc.array(between(-0.15, 0.15), { minLength: count, maxLength: count + 4 }),
      cut: between(0, 0.3),
      inner: between(-0.4, 0.1),
      goal: fc.constantFrom(...SELECTION_GOALS),
      arrangement: fc.constantFrom('radial', 'roller'),
    }),
  )

  test('each figure of an answer is that of its own order, by coordinates', () => {
    fc.assert(
      fc.property(lot, ({ count, sizes, cut, inner, goal, arrangement }) => {
        const input = { ...design(count, 1.2), maxBallGap: mm(3), arrangement } as RadialInput
        const { outerRing, innerRing } = bearingOf(input)
        const groove = mm(outerRing.grooveBottomDiameter + cut)
        const innerDiameter = mm(innerRing.grooveBottomDiameter + inner)
        const named =
          arrangement === 'radial'
            ? { grooveBottomDiameter: groove, innerGrooveBottomDiameter: innerDiameter }
            : { trackDiameter: groove, innerTrackDiameter: innerDiameter }
        const selection = select({ design: input, measured: sizes.map((size) => mm(16 + size)), goal, ...named })
        for (const each of [selection.chosen, ...selection.orders, ...selection.choices]) {
          const figures = byCoordinates(
            groove,
            innerDiameter,
            each.balls.map(({ diameter }) => diameter),
          )
          expect(each.ballGap).toBeWithin(1e-9, figures.gap)
          expect(each.margin).toBeWithin(1e-9, figures.play)
          // where the ring has the same room at two places, either may be meant
          expect(each.runOut).toBeWithin(1e-7, figures.runOut)
        }
        const { inner: own, chosen } = selection
        expect((own?.asItIs ?? Number.NaN) - (own?.wanted ?? Number.NaN)).toBeWithin(
          1e-9,
          (own?.designedPlay ?? Number.NaN) - chosen.margin,
        )
        // Among balls of one size the play is a difference of three diameters.
        const bottoms = groove - innerDiameter
        expect((own?.takenByUneven ?? Number.NaN) + chosen.margin).toBeWithin(1e-9, bottoms - 2 * selection.mean)
      }),
      { numRuns: 30 },
    )
  })

  test.each([4, 5, 6, 7, 8])('of %i balls: the best and the worst of all orders, and the one to use', (count) => {
    for (let seed = 1; seed <= (count > 6 ? 1 : 5); seed++) {
      const input = design(count, 1.2)
      const measured = bought(count, 0.06, seed, 1e6)
      const { chosen, orders, grooveDiameter, inner } = select({ design: input, measured, goal: 'close-groove' })
      const [first = mm(0), ...rest] = measured
      const all = ordersOf(rest).map((order) =>
        byCoordinates(grooveDiameter, inner?.asItIs ?? Number.NaN, [first, ...order]),
      )
      const figures = Object.fromEntries(orders.map((each) => [each.aim, each]))
      const plays = all.map(({ play }) => play)
      const enough = (inner?.designedPlay ?? Number.NaN) / 2
      expect(chosen.everyOrderTried).toBe(true)
      expect(figures['most-play']?.margin).toBeWithin(1e-3 * 0.2, Math.max(...plays))
      expect(figures['least-play']?.margin).toBeWithin(1e-9, Math.min(...plays))
      expect(figures['least-run-out']?.runOut).toBeWithin(1e-3 * 0.2, Math.min(...all.map(({ runOut }) => runOut)))
      const good = all.filter(({ play }) => play >= enough)
      if (good.length === 0) expect(chosen.margin).toBeWithin(1e-3 * 0.2, Math.max(...plays))
      else {
        expect(chosen.margin).toBeGreaterThanOrEqual(enough)
        expect(chosen.runOut).toBeWithin(1e-3 * 0.2, Math.min(...good.map(({ runOut }) => runOut)))
      }
    }
  })

  test('plates: the gap by coordinates, and the least rise of all orders with firm carriers', () => {
    for (const count of [3, 5, 6, 7]) {
      const measured = bought(count, 0.1, count, 1e6)
      const selection = select({ design: PLATE.design(count), measured, goal: 'close-groove' })
      const { chosen, orders, grooveDiameter, atRest } = selection
      const [first = mm(0), ...rest] = measured
      const rests = ordersOf(rest).map((order) => plateAtRest([first, ...order]))
      const scale = chosen.runOut / (atRest?.rise ?? Number.NaN)
      const firm = rests.filter(({ shares }) => Math.min(...shares) >= 0.1)
      expect(chosen.runOut).toBeWithin(1e-3, scale * Math.min(...firm.map(({ rise }) => rise)))
      expect(orders.at(-1)?.runOut).toBeWithin(1e-9, scale * Math.max(...rests.map(({ rise }) => rise)))
      for (const { balls, ballGap } of orders)
        expect(ballGap).toBeWithin(
          1e-9,
          gapOnPlate(
            grooveDiameter / 2,
            balls.map(({ diameter }) => diameter),
          ),
        )
    }
  })
})

describe('the best bearing', () => {
  test('five of eight: no choice in any order has less run-out beside a gap and a play that are good', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const input = design(5, 1.6)
      const { minBallGap: _, maxBallGap } = bearingOf(input).resolved
      const { assemblyGap } = bearingOf(input).resolved.assembly
      const measured = bought(8, 0.08, seed, 1e6)
      const { chosen, grooveDiameter, inner, everyChoiceTried } = select({ design: input, measured })
      expect(everyChoiceTried).toBe(true)
      const enough = (inner?.designedPlay ?? Number.NaN) / 2
      const good = choicesOf(measured, 5).flatMap(([first = mm(0), ...rest]) =>
        ordersOf(rest)
          .map((order) => byCoordinates(grooveDiameter, inner?.asItIs ?? Number.NaN, [first, ...order]))
          .filter(({ gap, play }) => gap >= assemblyGap && gap <= maxBallGap && play >= enough),
      )
      if (good.length === 0) continue
      expect(chosen.lastBallGoesIn).toBeGreaterThan(0.94)
      expect(chosen.ballGap).toBeLessThanOrEqual(maxBallGap + 2e-4)
      expect(chosen.margin).toBeGreaterThanOrEqual(enough - 2e-4)
      // run-outs within a thousandth of a ball are alike, and then their spread decides, and the gap
      expect(chosen.runOut).toBeLessThanOrEqual(Math.min(...good.map(({ runOut }) => runOut)) + 0.017)
    }
  })

  // Two choices with the same run-out: one had a ball 0.2 mm too small, and only the gap nearest to the aim spoke for it.
  test('of choices with as little run-out, a ball that stands out stays in the box', () => {
    const measured = [16.02, 15.98, 16.05, 15.91, 16.1, 16, 15.95, 16.03, 16.07, 15.99, 16.01, 16.04, 15.8, 16.3].map(
      mm,
    )
    const { leftOver, chosen, spread } = select({ design: { ...design(12, 1.6), maxBallGap: mm(3) }, measured })
    expect(leftOver).toEqual([12, 13])
    expect(spread).toBeWithin(1e-9, 0.19)
    expect(chosen.ballGap).toBeWithin(0.25, 1.6)
  })

  test('is never worse than the choices by one figure, and none is served below its assembly gap without a word', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const input: RadialInput = { ...design(14, 0.8), minBallGap: mm(0) }
      const measured = bought(24, 0.12, seed)
      const tight = mm(2 * bottomOf(input) - 0.25)
      for (const grooveBottomDiameter of [tight, mm(2 * bottomOf(input))]) {
        const selection = select({ design: input, measured, grooveBottomDiameter })
        const { chosen, choices, warnings, inner } = selection
        const { maxBallGap, assembly } = bearingOf(input).resolved
        const enough = (inner?.designedPlay ?? Number.NaN) / 2
        const lack = ({ lastBallGoesIn, ballGap, margin }: (typeof choices)[number]) =>
          [lastBallGoesIn < 0.94, ballGap > maxBallGap + 1e-3, margin < enough - 1e-3].indexOf(true) >>> 0
        for (const each of choices) expect(lack({ ...each, ...chosen })).toBeGreaterThanOrEqual(lack(each))
        const codes = warnings.map(({ facts }) => facts.code)
        if (chosen.ballGap < 0) expect(codes).toContain('does-not-close')
        else if (chosen.ballGap < assembly.assemblyGap - 1e-3) expect(codes).toContain('gap-below-assembly-gap')
        if (chosen.ballGap >= assembly.assemblyGap) expect(chosen.lastBallGoesIn).toBe(1)
      }
    }
  })

  test('the chance that the last ball goes in: certain from the assembly gap on, none at 0, less for less', () => {
    const input = design(12, 1)
    const { assemblyGap } = bearingOf(input).resolved.assembly
    const measured = Array.from({ length: 12 }, () => mm(16))
    const chances = [-0.1, 0, 0.3, 0.65, 0.9, 1, 1.2].map((part) => {
      const radius = closingRadius(measured, mm(part * assemblyGap))
      return select({ design: input, measured, grooveBottomDiameter: mm(2 * radius) }).chosen.lastBallGoesIn
    })
    expect(chances).toEqual(chances.toSorted((one, other) => one - other))
    expect(chances.slice(0, 2).every((chance) => chance < 0.01)).toBe(true)
    // half of a normal prior that is cut off at 0 and at the assembly gap is below a point just under its middle
    expect(chances[3]).toBeWithin(0.03, 0.52)
    expect(chances.slice(-2)).toEqual([1, 1])
  })
})

describe('warned of', () => {
  const codesOf = ({ warnings }: ReturnType<typeof select>) => warnings.map(({ facts }) => facts.code)
  const large = Array.from({ length: 12 }, () => mm(16.2))

  test('a ring that does not close, with the groove that lets it: taken, the warning is gone', () => {
    const input: BallSelectionInput = { design: design(12), measured: large, goal: 'close-groove' }
    const selection = select(input)
    expect(codesOf(selection)).toEqual(['does-not-close'])
    const [warning] = selection.warnings
    expect(warning?.severity).toBe('fault')
    const grooveBottomDiameter = warning?.suggestion?.size ?? mm(0)
    const cut = select({ ...input, grooveBottomDiameter })
    expect(codesOf(cut)).not.toContain('does-not-close')
    expect(cut.chosen.ballGap).toBeWithin(2e-6, 0.8)
  })

  test('a gap above the band in a groove that is cut: no suggestion, for wood does not grow', () => {
    const measured = Array.from({ length: 12 }, () => mm(15.8))
    const drawn: BallSelectionInput = { design: design(12), measured, goal: 'close-groove' }
    const cut = { ...drawn, grooveBottomDiameter: mm(2 * bottomOf(design(12))) }
    expect(select(drawn).warnings[0]).toMatchObject({
      facts: { code: 'gap-above-band' },
      suggestion: { field: 'grooveBottomDiameter', size: expect.any(Number) },
    })
    expect(select(cut).warnings[0]).toMatchObject({ facts: { code: 'gap-above-band' } })
    expect(select(cut).warnings[0]).not.toHaveProperty('suggestion')
  })

  test('a gap below the smallest wanted, or below what the last ball needs', () => {
    const wide: RadialInput = { ...design(12, 1.2), minBallGap: mm(1), maxBallGap: mm(2) }
    const measured = Array.from({ length: 12 }, () => mm(16.03))
    expect(codesOf(select({ design: wide, measured, goal: 'close-groove' }))).toContain('gap-below-band')
    const narrow = select({ design: design(12, 0.05), measured: measured.map(() => mm(16)), goal: 'close-groove' })
    expect(codesOf(narrow)).toEqual(['gap-below-assembly-gap'])
  })

  test('balls that are larger than the groove is round, with what that does to the gap', () => {
    const tight: RadialInput = { ...design(12), groove: { grooveRadius: mm(8) } }
    const measured = [...Array.from({ length: 6 }, () => mm(16.02)), ...Array.from({ length: 6 }, () => mm(15.98))]
    const [warning] = select({ design: tight, measured, goal: 'close-groove' }).warnings
    expect(warning?.facts).toMatchObject({ code: 'rides-on-edges', ballCount: 6, grooveRadius: 8 })
    // six of twelve sit shallower by about 2/3 of 0.01 mm; the gap moves 2π times the mean of that
    expect(warning?.facts.code === 'rides-on-edges' && warning.facts.gapShift).toBeWithin(3e-3, -0.021)
  })
})

describe('warned of play', () => {
  const measured = bought(12, 0.1, 3)
  const tight: BallSelectionInput = {
    design: design(12),
    measured,
    innerGrooveBottomDiameter: mm(bearingOf(design(12)).innerRing.grooveBottomDiameter + 0.4),
  }

  test('an inner ring that binds, with the size that frees it: taken, the play is that of the design', () => {
    const [warning] = select(tight).warnings.filter(({ facts }) => facts.code === 'binds')
    expect(warning).toMatchObject({ severity: 'fault', suggestion: { field: 'innerGrooveBottomDiameter' } })
    const freed = select({ ...tight, innerGrooveBottomDiameter: warning?.suggestion?.size ?? mm(0) })
    expect(freed.warnings.map(({ facts }) => facts.code)).not.toContain('binds')
    expect(freed.chosen.margin).toBeGreaterThanOrEqual((freed.inner?.designedPlay ?? Number.NaN) / 2)
  })

  test('too much play: no suggestion once the wood is gone', () => {
    const innerGrooveBottomDiameter = mm(bearingOf(design(12)).innerRing.grooveBottomDiameter - 1)
    const warnings = select({ ...tight, innerGrooveBottomDiameter }).warnings
    expect(warnings.filter(({ facts }) => facts.code === 'much-play')).toMatchObject([{ severity: 'risk' }])
    expect(warnings[0]).not.toHaveProperty('suggestion')
  })

  test('an inner groove as deep as the bore is refused', () => {
    expect(refusal({ ...tight, innerGrooveBottomDiameter: mm(1) })).toMatchObject([
      { code: 'groove-meets-bore', path: '/innerGrooveBottomDiameter', given: 1, above: 1 },
    ])
    expect(refusal({ ...tight, innerTrackDiameter: mm(40) })).toMatchObject([
      { code: 'not-of-arrangement', path: '/innerTrackDiameter' },
    ])
  })
})

describe('refused', () => {
  test('a lot smaller than the ring takes', () => {
    expect(refusal({ design: design(12), measured: bought(11, 0.1), goal: 'close-groove' })).toEqual([
      { code: 'lot-too-small', path: '/measured', given: 11, needed: 12 },
    ])
  })

  test('balls of another size, each at its place', () => {
    const measured = bought(14, 0.1).toSpliced(2, 1, mm(160)).toSpliced(5, 1, mm(13))
    expect(refusal({ design: design(12), measured, goal: 'close-groove' })).toMatchObject([
      { code: 'not-of-this-size', path: '/measured/2', given: 160 },
      { code: 'not-of-this-size', path: '/measured/5', given: 13 },
    ])
  })

  test('a groove that is far too tight or too wide for any', () => {
    const lot = { design: design(12), measured: bought(14, 0.1), goal: 'least-spread' } as const
    expect(refusal({ ...lot, grooveBottomDiameter: mm(20) })).toMatchObject([{ code: 'groove-too-tight' }])
    expect(refusal({ ...lot, grooveBottomDiameter: mm(50) })).toMatchObject([{ code: 'groove-too-tight' }])
    expect(refusal({ ...lot, grooveBottomDiameter: mm(1000) })).toMatchObject([{ code: 'groove-too-wide' }])
  })

  test('an aim that is nearly a ball', () => {
    const aimed: RadialInput = { ...design(12, 14), maxBallGap: mm(15) }
    const measured = Array.from({ length: 12 }, () => mm(15))
    expect(refusal({ design: aimed, measured, goal: 'close-groove' })).toMatchObject([
      { code: 'aim-takes-another-ball', path: '/design/ballGap', given: 14, below: 13.5 },
    ])
  })

  test('what the design itself is refused for, with its place in the design', () => {
    expect(
      refusal({ design: { ...design(12), bore: mm(60) }, measured: bought(14, 0.1), goal: 'close-groove' }),
    ).toMatchObject([{ code: 'bore-meets-groove', path: '/bore' }])
  })
})

test('whatever the lot, the groove and the count: finite figures within their bounds, or a reason', () => {
  const lot = fc.array(between(5 / 6, 5 / 4), { minLength: 3, maxLength: 40 })
  const close = fc.array(between(0.98, 1.02), { minLength: 3, maxLength: 40 })
  fc.assert(
    fc.property(
      fc.oneof(lot, close),
      fc.integer({ min: 3, max: 20 }),
      fc.constantFrom(...SELECTION_GOALS),
      fc.option(between(0.6, 1.4)),
      between(0, 0.9),
      fc.constantFrom(RING, PLATE),
      (sizes, count, goal, part, gap, place) => {
        const input = { ...place.design(count, 16 * gap), maxBallGap: mm(15), bore: mm(0.1) }
        const groove = part === null ? {} : place.groove(part * radiusOf(input))
        const selection = ballSelection({
          design: input,
          measured: sizes.map((size) => mm(16 * size)),
          goal,
          ...groove,
        })
        if (!selection.ok) {
          expect(reasonsIn(selection)).not.toEqual([])
          return
        }
        const { chosen, gapOverOrders, reach, noneBelow, missedBy, grooveChange, standardDeviation } = selection.value
        const { ballGap } = chosen
        expect(Number.isFinite(grooveChange + standardDeviation)).toBe(true)
        expect(ballGap).toBeGreaterThanOrEqual(gapOverOrders.least)
        expect(ballGap).toBeLessThanOrEqual(gapOverOrders.most)
        expect(ballGap).toBeLessThanOrEqual(reach.most)
        if (reach.least !== undefined) expect(ballGap).toBeGreaterThanOrEqual(reach.least)
        expect(noneBelow).toBeLessThanOrEqual(missedBy)
        expect(noneBelow).toBeGreaterThanOrEqual(0)
        for (const each of [...selection.value.orders, ...selection.value.choices])
          expect(Number.isFinite(each.ballGap + each.margin + each.runOut + each.lastBallGoesIn)).toBe(true)
      },
    ),
    { numRuns: 150 },
  )
})
