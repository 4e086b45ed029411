import { describe, expect, test } from 'vitest'
import type { Closure } from '#shared/geometry/closure.ts'
import {
  type ChoiceTask,
  chooseBalls,
  diametersOf,
  type MeasuredBall,
  missOf,
  overOrders,
  reachOf,
} from '#shared/questions/selection/ball-choice.ts'
import {
  advisedOrder,
  bestBearing,
  chanceOfLast,
  choiceBy,
  type OrderTask,
  orderBalls,
} from '#shared/questions/selection/ball-order.ts'
import type { BallPlace, OrderAim } from '#shared/questions/selection/ball-place.ts'
import { mm } from '#shared/units/length.ts'

/*
 * Choices and orders follow from how a ring closes and what its orders do. Here a ring closes by the sum of its balls alone, and what
 * an order does is counted from its neighbours, so that the best of all can be told by trying them.
 */

/** Five times the radius, less all balls: 0.2 of gap for each tenth of 1 mm that one of them is larger. */
const BY_SUM = {
  gap: (radius: number, diameters: readonly number[]) => 5 * radius - diameters.reduce((sum, each) => sum + each, 0),
  radiusFor: (diameters: readonly number[], gap = 0) => (diameters.reduce((sum, each) => sum + each, 0) + gap) / 5,
  overOrders: (radius: number, diameters: readonly number[]) => {
    const gap = BY_SUM.gap(radius, diameters)
    return { least: gap, most: gap }
  },
  largestBall: () => 100,
  steepest: () => 5,
}

const measured = (diameters: readonly number[]): readonly MeasuredBall[] =>
  diameters
    .map((diameter, index) => ({ index, diameter: mm(diameter) }))
    .toSorted((one, other) => one.diameter - other.diameter)

const ORDER = [0, 1, 2, 3]
const taskOf = (diameters: readonly number[], aim: number, radius = 8): ChoiceTask => ({
  closure: BY_SUM as unknown as Closure,
  radius: mm(radius),
  aim: mm(aim),
  lot: measured(diameters),
  ballCount: 4,
  order: ORDER,
})

/** Every choice of so many of a list. */
function choices<T>(items: readonly T[], count: number): readonly (readonly T[])[] {
  if (count === 0) return [[]]
  return items.flatMap((item, i) => choices(items.slice(i + 1), count - 1).map((rest) => [item, ...rest]))
}
const sumOf = (balls: readonly MeasuredBall[]) => diametersOf(balls).reduce((sum, each) => sum + each, 0)

const LOT = [10.31, 9.87, 10.02, 9.95, 10.11, 9.79, 10.23, 10.05]

describe('the balls for one figure', () => {
  test.each([0, 0.13, 0.4, -0.3])('a gap of %s: the choice that comes nearest, and none comes nearer', (aim) => {
    const task = taskOf(LOT, aim)
    const least = Math.min(...choices(task.lot, 4).map((balls) => Math.abs(40 - sumOf(balls) - aim)))
    const chosen = chooseBalls(task, 'close-groove')
    expect(chosen.missedBy).toBeWithin(1e-12, least)
    expect(Math.abs(40 - sumOf(chosen.balls) - aim)).toBeWithin(1e-12, least)
    expect(chosen.noneBelow).toBeWithin(1e-12, least)
    expect(chosen.everyChoiceTried).toBe(true)
    expect(missOf(task, 'close-groove', diametersOf(chosen.balls))).toBe(chosen.missedBy)
    // By rank: the largest first.
    expect(diametersOf(chosen.balls)).toEqual(diametersOf(chosen.balls).toSorted((one, other) => other - one))
  })

  test('none is below what the nearest of all choices misses in its best order', () => {
    // each order may open or close the gap by as much as this
    const proven = (either: number) => {
      const overOrders = (radius: number, diameters: readonly number[]) => {
        const gap = BY_SUM.gap(radius, diameters)
        return { least: gap - either, most: gap + either }
      }
      const task = { ...taskOf(LOT, 0.135), closure: { ...BY_SUM, overOrders } as unknown as Closure }
      return chooseBalls(task, 'close-groove')
    }
    const { missedBy } = proven(0)
    expect(missedBy).toBeGreaterThan(0.001)
    expect(proven(0.5).noneBelow).toBe(0)
    expect(proven(missedBy / 2).noneBelow).toBeWithin(1e-12, missedBy / 2)
  })

  test('an aim out of reach is missed by its distance from the reach', () => {
    const task = taskOf(LOT, 3)
    const smallest = 9.79 + 9.87 + 9.95 + 10.02
    expect(reachOf(task).most).toBeWithin(1e-12, 40 - smallest)
    expect(reachOf(task).least).toBeWithin(1e-12, 40 - (10.31 + 10.23 + 10.11 + 10.05))
    expect(chooseBalls(task, 'close-groove')).toMatchObject({
      missedBy: 3 - (40 - smallest),
      noneBelow: 3 - (40 - smallest),
    })
    // Where the largest overlap all round, nothing is said of the least.
    expect(reachOf(taskOf(LOT, 0, 5))).not.toHaveProperty('least')
    expect(overOrders(task, task.lot.slice(0, 4)).least).toBeWithin(1e-12, 40 - smallest)
  })

  test('the least change of a groove is that of the gap over its slope', () => {
    const task = taskOf(LOT, 0.13)
    const [gap, groove] = [chooseBalls(task, 'close-groove'), chooseBalls(task, 'least-groove-change')]
    expect(groove.missedBy).toBeWithin(1e-12, gap.missedBy / 5)
    expect(groove.noneBelow).toBeWithin(1e-12, gap.noneBelow / 5)
    expect(missOf(task, 'least-groove-change', diametersOf(groove.balls))).toBeWithin(1e-12, groove.missedBy)
  })

  test('the least spread is that of neighbours in the sorted lot; of two runs alike the one nearer to the aim', () => {
    const lot = [9, 9.1, 9.2, 9.3, 10, 10.1, 10.2, 10.3, 12]
    const near = (aim: number) => chooseBalls(taskOf(lot, aim), 'least-spread')
    expect(near(0)).toMatchObject({ everyChoiceTried: true })
    expect(near(0).missedBy).toBeWithin(1e-12, 0.3)
    expect(near(0).noneBelow).toBeWithin(1e-12, 0.3)
    expect(sumOf(near(0).balls)).toBeWithin(1e-12, 40.6)
    expect(sumOf(near(3).balls)).toBeWithin(1e-12, 36.6)
    expect(missOf(taskOf(lot, 0), 'least-spread', diametersOf(near(0).balls))).toBeWithin(1e-12, 0.3)
  })

  test('a lot smaller than the ring is misuse', () => {
    expect(() => chooseBalls(taskOf([10, 10.1], 0), 'least-spread')).toThrow(RangeError)
  })
})

/** Run-out: the largest step between neighbours. Margin: the least pair of opposite balls, over two balls of 9 mm. */
const judge: BallPlace['judge'] = (_radius, diameters) => (order) => {
  const at = (place: number) => diameters[order[place % order.length] ?? 0] ?? Number.NaN
  const places = order.map((_, place) => place)
  return {
    decisive: places,
    runOut: mm(Math.max(...places.map((place) => Math.abs(at(place) - at(place + 1))))),
    margin: Math.min(...places.map((place) => at(place) + at(place + order.length / 2))) - 18,
  }
}

const taskWith = (
  diameters: readonly number[],
  enough: number,
  more: Partial<OrderTask> & { assemblyGap?: number } = {},
): OrderTask => ({
  choice: taskOf(diameters, 0.2),
  place: { judge, enough, assemblyGap: more.assemblyGap ?? 0 } as unknown as BallPlace,
  ballDiameter: mm(10),
  maxBallGap: mm(2),
  advised: new Map(),
  byFigure: new Map(),
  ...more,
})

describe('the order for an aim, of all orders', () => {
  const SIX = measured([9.2, 9.5, 9.9, 10.1, 10.6, 10.8])
  const ordersOf = <T>(items: readonly T[]): readonly (readonly T[])[] =>
    items.length < 2
      ? [items]
      : items.flatMap((item, i) => ordersOf(items.toSpliced(i, 1)).map((rest) => [item, ...rest]))
  const diameters = diametersOf(SIX)
  const judged = ordersOf([0, 1, 2, 3, 4, 5]).map((order) => {
    const { margin, runOut } = judge(mm(8), diameters)(order)
    return { margin, runOut }
  })
  const of = (better: (one: (typeof judged)[number], other: (typeof judged)[number]) => number) =>
    judged.toSorted(better)[0]
  const best = (aim: OrderAim, enough = 1) => {
    const { margin, runOut, everyOrderTried } = orderBalls(taskWith([], enough), SIX, aim)
    expect(everyOrderTried).toBe(true)
    return { margin, runOut }
  }

  test('most play, then least run-out; least run-out, then most play', () => {
    expect(best('most-play')).toEqual(of((one, other) => other.margin - one.margin || one.runOut - other.runOut))
    const leastRunOut = of((one, other) => one.runOut - other.runOut || other.margin - one.margin)
    expect(best('least-run-out')).toEqual(leastRunOut)
    expect(best('least-rise')).toEqual(leastRunOut)
  })

  test('of orders with the same run-out the one with the most play: one small ball leaves many alike', () => {
    const oneSmall = measured([9, 10, 10.1, 10.2, 10.3, 10.4])
    const figures = ordersOf([0, 1, 2, 3, 4, 5]).map((order) => judge(mm(8), diametersOf(oneSmall))(order))
    const runOut = Math.min(...figures.map((each) => each.runOut))
    const alike = figures.filter((each) => each.runOut === runOut).map(({ margin }) => margin)
    expect(Math.max(...alike)).toBeGreaterThan(Math.min(...alike))
    expect(orderBalls(taskWith([], 1), oneSmall, 'least-run-out')).toMatchObject({ runOut, margin: Math.max(...alike) })
  })

  test('least play, and most rise', () => {
    expect(best('least-play').margin).toBe(of((one, other) => one.margin - other.margin)?.margin)
    expect(best('most-rise').runOut).toBe(of((one, other) => other.runOut - one.runOut)?.runOut)
  })

  test('advised: the least run-out of those with enough play; where none has enough, the most play', () => {
    const most = Math.max(...judged.map(({ margin }) => margin))
    for (const enough of [1.3, most]) {
      const good = judged.filter(({ margin }) => margin >= enough)
      const expected = good.toSorted((one, other) => one.runOut - other.runOut || other.margin - one.margin)[0]
      expect(best('advised', enough)).toEqual(expected)
    }
    expect(best('advised', most + 0.01).margin).toBe(most)
  })

  test('it says its gap, and how likely the last ball goes in: never at none, surely from the assembly gap on', () => {
    const task = taskWith([], 1, { assemblyGap: 0.5 })
    const { balls, ballGap, lastBallGoesIn } = orderBalls(task, measured([9.9, 9.9, 9.9, 9.9]), 'advised')
    expect(ballGap).toBeWithin(1e-12, 40 - sumOf(balls))
    expect(lastBallGoesIn).toBe(chanceOfLast(task, ballGap))
    expect([0.5, 0.6].map((gap) => chanceOfLast(task, mm(gap)))).toEqual([1, 1])
    expect(chanceOfLast(task, mm(0.499))).toBeLessThan(1)
    expect(chanceOfLast(task, mm(-0.001))).toBe(0)
    // what nobody can measure is passed over: a hundred-thousandth of a ball
    expect(chanceOfLast(task, mm(0.5 - 0.99e-4))).toBe(1)
  })

  test('is looked for once for each set of balls, whatever order they come in, and a choice once for each figure', () => {
    const task = taskWith(LOT, 1)
    const first = advisedOrder(task, SIX)
    expect(advisedOrder(task, SIX.toReversed())).toBe(first)
    expect(advisedOrder(task, SIX.slice(0, 4))).not.toBe(first)
    const choice = choiceBy(task, 'close-groove')
    expect(choiceBy(task, 'close-groove')).toBe(choice)
    expect(choiceBy(task, 'least-spread')).not.toBe(choice)
  })
})

describe('the best bearing of all choices', () => {
  /** Four of six, told by the balls that are taken. */
  const taken = (diameters: readonly number[], enough: number, more: Parameters<typeof taskWith>[2] = {}) => {
    const best = bestBearing(taskWith(diameters, enough, more))
    expect(best.everyChoiceTried).toBe(true)
    return diametersOf(best.balls).toSorted((one, other) => one - other)
  }

  test('first a last ball that goes in: smaller balls before true ones', () => {
    // four alike leave no gap; with the smallest of all there is room
    expect(taken([10, 10, 10, 10, 9.3], -9, { assemblyGap: 0.5 })).toEqual([9.3, 10, 10, 10])
    expect(taken([10, 10, 10, 10, 9.3], -9)).toEqual([10, 10, 10, 10])
  })

  test('then a gap within the band: larger balls before true ones', () => {
    expect(taken([9.5, 9.5, 9.5, 9.5, 10], -9, { maxBallGap: mm(1.6) })).toEqual([9.5, 9.5, 9.5, 10])
    expect(taken([9.5, 9.5, 9.5, 9.5, 10], -9, { maxBallGap: mm(2) })).toEqual([9.5, 9.5, 9.5, 9.5])
  })

  test('then enough play, then the least run-out, then the gap nearest to the aim', () => {
    // opposite pairs of 20 and more leave a margin of 2
    expect(taken([9.9, 9.9, 9.9, 9.9, 10, 10], 1.9)).toEqual([9.9, 9.9, 10, 10])
    expect(taken([9.9, 9.9, 9.9, 9.9, 10, 10], 1)).toEqual([9.9, 9.9, 9.9, 9.9])
    // short of it by less than a hundred-thousandth of a ball is enough
    expect(taken([9.9, 9.9, 9.9, 9.9, 10, 10], 1.80009)).toEqual([9.9, 9.9, 9.9, 9.9])
    expect(taken([9.9, 9.9, 9.9, 9.9, 10, 10], 1.80011)).toEqual([9.9, 9.9, 10, 10])
    expect(taken([9.9, 9.9, 9.9, 9.9, 9.95, 9.95, 9.95, 9.95], 1)).toEqual([9.95, 9.95, 9.95, 9.95])
  })

  test('run-outs that nobody tells apart do not decide: less than a thousandth of a ball', () => {
    // 9.95 and 9.951 differ by less than that; of choices alike the gap nearest to 0.2 is taken
    expect(taken([9.95, 9.95, 9.95, 9.95, 9.946], 1)).toEqual([9.95, 9.95, 9.95, 9.95])
    expect(taken([9.952, 9.952, 9.952, 9.952, 9.944], 1)).toEqual([9.944, 9.952, 9.952, 9.952])
  })
})
