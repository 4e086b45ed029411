import { itemAt } from '#shared/numbers/item-at.ts'
import { requireWhole, requireWithin } from '#shared/precondition.ts'
import { normalQuantile } from '#shared/statistics/normal.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { FEWEST_BALLS } from './ring-of-balls.ts'

/** A rigid plate at rest on balls of unequal height, evenly round a circle, what it carries over their middle. */
export interface PlateAtRest {
  /** The balls it rests on, by their places round the circle. */
  readonly carriers: readonly [number, number, number]
  /** What part of the load each of them carries: as statics has it, 1 in all. */
  readonly shares: readonly [number, number, number]
  /** Height over the middle of the circle, as the balls' heights count. */
  readonly height: number
  /** How much the plate rises along its steepest line, per length of the circle's radius. */
  readonly rise: number
  /** The most that is left between the plate and a ball which it does not touch. */
  readonly mostClearance: number
}

type Three = [number, number, number]

/** In parts of the largest height: a ball that stands out by less touches. */
const TOUCHING_WITHIN = 1e-12
/** Rounds for each ball: each takes the plate up, so that no three come back; a few are enough. */
const ROUNDS_A_BALL = 20

/**
 * Where a plate comes to rest: the plane over all balls that is lowest at the middle. There three balls carry it whose
 * triangle holds the middle, and no other stands out: from any three such, the first ball that stands out takes the place of one
 * of them so that the middle stays inside (the dual simplex method, with Bland's rule against going in circles).
 *
 * @param heights of the balls in their order round the circle, three at least, evenly spaced
 */
export function plateAtRest(heights: readonly number[]): PlateAtRest {
  const count = heights.length
  requireWhole('number of balls', count, FEWEST_BALLS)
  const within = TOUCHING_WITHIN * Math.max(...heights.map(Math.abs))
  let carriers: Three = [0, Math.floor(count / 3), Math.floor((2 * count) / 3)]
  for (let round = 0; round < ROUNDS_A_BALL * count; round++) {
    const plane = planeOver(carriers, heights)
    const out = heights.findIndex((height, ball) => height - heightAt(plane, ball, count) > within)
    if (out < 0) break
    carriers = exchanged(carriers, out, count)
  }
  const plane = planeOver(carriers, heights)
  const clearances = heights.map((height, ball) => heightAt(plane, ball, count) - height)
  return {
    carriers,
    shares: sharesAt([0, 0], carriers, count),
    height: plane.middle,
    rise: Math.hypot(plane.along, plane.across),
    mostClearance: Math.max(0, ...clearances),
  }
}

/**
 * About how much higher than on balls that are all of the mean height a plate rests over the middle:  σ Φ⁻¹(1 − 3 / 2Z). That is the
 * middle one of the three largest, each in the middle of its own of Z equal parts of a normal distribution; three balls carry it at
 * their mean. No theorem, but within 0.1 σ of what `plateAtRest` comes to with 3 to 200 balls, as a test has it.
 *
 * @param count Z, whole, at least 3
 * @param scatter σ of single heights, 0 or above [mm]
 * @throws RangeError outside those ranges
 */
export function meanRise(count: number, scatter: Mm): Mm {
  requireWhole('count', count, FEWEST_BALLS)
  requireWithin('scatter', scatter, 0, Number.MAX_VALUE)
  return mm(scatter * normalQuantile(1 - 3 / (2 * count)))
}

/** A height over the middle, and what it gains per radius along two lines square to one another. */
interface Plane {
  readonly middle: number
  readonly along: number
  readonly across: number
}

type Place = readonly [along: number, across: number]

/** On a circle of radius 1. */
const placeOf = (ball: number, count: number): Place => [
  Math.cos((2 * Math.PI * ball) / count),
  Math.sin((2 * Math.PI * ball) / count),
]

function heightAt({ middle, along, across }: Plane, ball: number, count: number): number {
  const [x, y] = placeOf(ball, count)
  return middle + along * x + across * y
}

function planeOver(carriers: Three, heights: readonly number[]): Plane {
  const over = (at: Place): number =>
    sharesAt(at, carriers, heights.length).reduce((sum, share, which) => sum + share * heightOf(carriers, which), 0)
  const heightOf = (three: Three, which: number): number => heights[three[which] ?? -1] ?? Number.NaN
  const middle = over([0, 0])
  return { middle, along: over([1, 0]) - middle, across: over([0, 1]) - middle }
}

/** The shares with which three balls hold up a load at a place: areas of the triangle's parts over its own. */
function sharesAt(at: Place, carriers: Three, count: number): Three {
  const [first, second, third] = carriers.map((ball) => placeOf(ball, count)) as [Place, Place, Place]
  const whole = twiceArea(first, second, third)
  return [
    twiceArea(at, second, third) / whole,
    twiceArea(first, at, third) / whole,
    twiceArea(first, second, at) / whole,
  ]
}

const twiceArea = ([x1, y1]: Place, [x2, y2]: Place, [x3, y3]: Place): number =>
  (x2 - x1) * (y3 - y1) - (x3 - x1) * (y2 - y1)

/** Shares this near to each other go out alike. */
const SAME_SHARE = 1e-12

/** The ball that stands out in the place of that carrier whose share it takes up first. */
function exchanged(carriers: Three, out: number, count: number): Three {
  const shares = sharesAt([0, 0], carriers, count)
  const takes = sharesAt(placeOf(out, count), carriers, count)
  let leaving = -1
  let least = Number.POSITIVE_INFINITY
  carriers.forEach((ball, which) => {
    const taken = itemAt(takes, which)
    if (!(taken > SAME_SHARE)) return
    const until = Math.max(0, itemAt(shares, which)) / taken
    const first = until < least - SAME_SHARE || (until < least + SAME_SHARE && ball < (carriers[leaving] ?? count))
    if (!first) return
    leaving = which
    least = until
  })
  return carriers.map((ball, which) => (which === leaving ? out : ball)) as Three
}
