import { describe, expect, test } from 'vitest'
import { type GroovePair, type PlayOfOrder, playByOrder } from '#shared/geometry/order-for-play.ts'
import { oneSidedOrder, spreadOrder } from '#shared/geometry/order-round-the-ring.ts'
import { playInBlocks } from '#shared/geometry/play-among-unequal-balls-in-blocks.ts'
import { pitchRadiusForGap } from '#shared/geometry/ring-of-balls.ts'
import { bestOrder } from '#shared/numbers/best-order.ts'
import { mm } from '#shared/units/length.ts'
import { normals, uniforms } from '#tests/support/chance.ts'
import { placesOnCircle, playAmongBalls } from '#tests/support/play-among-balls.ts'

/** Grooves for such balls, with a gap of 0.7 mm and a play of 0.28 mm if all were of 14 mm. */
function groovesFor(count: number): GroovePair {
  const outer = pitchRadiusForGap(mm(0.7), mm(14), count) + 7
  return { outerBottomRadius: mm(outer), innerBottomRadius: mm(outer - 14 - 0.14) }
}

const lot = (count: number, seed: number, scatter = 0.1): readonly number[] => {
  const normal = normals(uniforms(seed))
  return Array.from({ length: count }, () => 14 + scatter * normal())
}

const of = (sizes: readonly number[], order: readonly number[]): readonly number[] =>
  order.map((ball) => sizes[ball] ?? Number.NaN)

function* orders(left: readonly number[]): Generator<readonly number[]> {
  if (left.length === 0) yield []
  for (const ball of left) for (const rest of orders(left.filter((other) => other !== ball))) yield [ball, ...rest]
}

/** Play and run-out of every order, by the kernel for one ring. */
function all(
  grooves: GroovePair,
  sizes: readonly number[],
): readonly Pick<PlayOfOrder, 'radialInternalClearance' | 'runOut'>[] {
  return [...orders([...sizes.keys()].slice(1))].map((rest) => {
    const places = placesOnCircle(grooves.outerBottomRadius, of(sizes, [0, ...rest]), 'spread')
    const play = playAmongBalls(places, grooves.innerBottomRadius)
    if (play === undefined) throw new Error('the balls hold the ring')
    return play
  })
}

const most = (numbers: readonly number[]): number => Math.max(...numbers)

describe('one order', () => {
  test('play and run-out are those of the kernel for one ring, whatever was judged before', () => {
    const [grooves, sizes] = [groovesFor(9), lot(9, 3)]
    const judge = playByOrder(grooves, sizes)
    for (const order of [oneSidedOrder(9), spreadOrder(9), [...sizes.keys()]]) {
      const places = placesOnCircle(grooves.outerBottomRadius, of(sizes, order), 'spread')
      const play = playAmongBalls(places, grooves.innerBottomRadius)
      expect(judge(order)).toEqual({
        radialInternalClearance: play?.radialInternalClearance,
        runOut: play?.runOut,
        decisive: play?.supports,
      })
    }
    expect(() => playByOrder(grooves, [14, 14])).toThrow(RangeError)
    expect(() => playByOrder({ ...grooves, innerBottomRadius: mm(0) }, sizes)).toThrow(RangeError)
    expect(() => playByOrder({ ...grooves, outerBottomRadius: mm(13) }, sizes)).toThrow(RangeError)
  })

  test('another inner groove moves the play by its own change, and no run-out', () => {
    const [grooves, sizes] = [groovesFor(9), lot(9, 3)]
    const deeper = { ...grooves, innerBottomRadius: mm(grooves.innerBottomRadius - 0.2) }
    const [before, after] = [grooves, deeper].map((each) => playByOrder(each, sizes)(spreadOrder(9)))
    expect(after?.radialInternalClearance).toBeWithin(1e-12, (before?.radialInternalClearance ?? Number.NaN) + 0.4)
    expect(after?.runOut).toBeWithin(1e-9, before?.runOut ?? Number.NaN)
  })

  test('the large ones on one side: ranks fall to both sides of the largest', () => {
    expect(oneSidedOrder(7)).toEqual([0, 1, 3, 5, 6, 4, 2])
    expect(oneSidedOrder(6)).toEqual([0, 1, 3, 5, 4, 2])
  })
})

/** The best order for what `worth` says, with its figures. */
function best(grooves: GroovePair, sizes: readonly number[], worth: (play: PlayOfOrder) => number) {
  const judge = playByOrder(grooves, sizes)
  const count = sizes.length
  const starts = [oneSidedOrder(count), spreadOrder(count)]
  const found = bestOrder({ count, judge, worth, starts, evaluations: 100 * count })
  return { ...found, ...judge(found.order) }
}
const mostPlay = ({ radialInternalClearance }: PlayOfOrder): number => radialInternalClearance
const leastPlay = ({ radialInternalClearance }: PlayOfOrder): number => -radialInternalClearance
const leastRunOut = ({ runOut }: PlayOfOrder): number => -runOut

describe('the best order', () => {
  test.each([4, 5, 6, 7, 8])('of %i balls: brute force over all orders', (count) => {
    for (let seed = 1; seed <= (count > 6 ? 2 : 10); seed++) {
      const [grooves, sizes] = [groovesFor(count), lot(count, seed)]
      const every = all(grooves, sizes)
      const plays = every.map(({ radialInternalClearance }) => radialInternalClearance)
      const found = best(grooves, sizes, mostPlay)
      expect(found.exhaustive).toBe(true)
      expect([...found.order].sort()).toEqual([...sizes.keys()])
      expect(found.radialInternalClearance).toBeWithin(1e-12, most(plays))
      expect(best(grooves, sizes, leastPlay).radialInternalClearance).toBeWithin(1e-12, Math.min(...plays))
      expect(best(grooves, sizes, leastRunOut).runOut).toBeWithin(1e-9, Math.min(...every.map(({ runOut }) => runOut)))
    }
  })

  test('of nine balls, where it is a search: the best of all orders in play', () => {
    for (const seed of [5, 6]) {
      const [grooves, sizes] = [groovesFor(9), lot(9, seed)]
      const plays = all(grooves, sizes).map(({ radialInternalClearance }) => radialInternalClearance)
      const found = best(grooves, sizes, mostPlay)
      expect(found.exhaustive).toBe(false)
      expect(found.radialInternalClearance).toBeWithin(0.001, most(plays))
      expect(best(grooves, sizes, leastPlay).radialInternalClearance).toBeWithin(0.001, Math.min(...plays))
    }
  })

  test('no order has more play than balls of the mean size, but for the square of the scatter', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const count = 3 + (seed % 14)
      const [grooves, sizes] = [groovesFor(count), lot(count, seed)]
      const mean = sizes.reduce((sum, size) => sum + size, 0) / count
      const bound = 2 * (grooves.outerBottomRadius - grooves.innerBottomRadius - mean)
      expect(best(grooves, sizes, mostPlay).radialInternalClearance).toBeLessThan(bound + 0.004)
    }
  })

  test('the same balls give the same order, the first ball first', () => {
    const [grooves, sizes] = [groovesFor(14), lot(14, 2)]
    const found = best(grooves, sizes, mostPlay)
    expect(best(grooves, sizes, mostPlay)).toEqual(found)
    expect(found.order[0]).toBe(0)
    expect(found.order[1]).toBeLessThan(found.order[13] ?? Number.NaN)
  })
})

/*
 * README's bearing: 14 glass balls of 14 mm ± 0.1 mm, gap 0.7 mm, play 0.28 mm. A linear program of another program,
 * with trials of its own, found that 28 % of rings bind in random order, 53 % with the largest opposite one another,
 * 0.3 % with the large ones on one side; that the mean play is 0.045 mm and 88 % are below 0.14 mm; at 0.15 mm scatter
 * 71 % bind.
 */
describe('trials of the bearing of the README', () => {
  const [rings, count] = [20_000, 14]
  const grooves = groovesFor(count)

  function trials(scatter: number, ranks: readonly number[] | 'random'): Float64Array {
    const normal = normals(uniforms(77))
    const diameters = new Float64Array(rings * count)
    for (let ring = 0; ring < rings; ring++) {
      const drawn = Array.from({ length: count }, () => 14 + scatter * normal())
      const ranked =
        ranks === 'random'
          ? drawn
          : of(
              drawn.sort((one, other) => other - one),
              ranks,
            )
      ranked.forEach((size, ball) => {
        diameters[ball * rings + ring] = size
      })
    }
    const clearances = new Float64Array(rings)
    playInBlocks(count, 'whole')(
      {
        rings,
        diameters,
        centres: diameters.map((diameter) => grooves.outerBottomRadius - diameter / 2),
        standOffs: diameters.map((diameter) => grooves.innerBottomRadius + diameter / 2),
      },
      clearances,
    )
    return clearances
  }

  const below = (clearances: Float64Array, limit: number): number =>
    clearances.filter((clearance) => clearance < limit).length / rings

  test('random order', () => {
    const clearances = trials(0.1, 'random')
    // as printed, and four standard errors of 20,000 trials
    expect(below(clearances, 0)).toBeWithin(0.005 + 0.013, 0.28)
    expect(below(clearances, 0.14)).toBeWithin(0.005 + 0.01, 0.88)
    expect(clearances.reduce((sum, own) => sum + own, 0) / rings).toBeWithin(0.0005 + 0.0024, 0.045)
    expect(below(trials(0.15, 'random'), 0)).toBeWithin(0.005 + 0.013, 0.71)
  })

  test('the largest opposite one another, and the large ones on one side', () => {
    expect(below(trials(0.1, spreadOrder(count)), 0)).toBeWithin(0.005 + 0.015, 0.53)
    expect(below(trials(0.1, oneSidedOrder(count)), 0)).toBeWithin(0.0005 + 0.0016, 0.003)
  })
})
