import type { Judged, Order } from '#shared/numbers/best-order.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { requireWhole, requireWithin } from '#shared/precondition.ts'
import { normalQuantile } from '#shared/statistics/normal.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { emptyCircle, type HalfPlanes, halfPlanes, type InscribedCircle, inscribeCircle } from './inscribed-circle.ts'
import { FEWEST_BALLS } from './ring-of-balls.ts'

type Three = readonly [number, number, number]

/** A rigid plate at rest on balls of unequal height, evenly round a circle, what it carries over their middle. */
export interface PlateAtRest {
  /** The balls it rests on, by their places round the circle. */
  readonly carriers: Three
  /** The part of the load that each of them carries, by statics: 1 in all. */
  readonly shares: Three
  /** Height over the middle of the circle, as the balls' heights count. */
  readonly height: number
  /** How much the plate rises along its steepest line, per length of the circle's radius. */
  readonly rise: number
  /** The most that is left between the plate and a ball which it does not touch. */
  readonly mostClearance: number
}

/** The judgement of an order of balls: the carriers decide it. */
interface RestOfOrder extends Judged, Pick<PlateAtRest, 'shares' | 'height' | 'rise'> {
  readonly decisive: Three
  /** How much it gains per radius in the direction of the first ball, and a quarter turn on. */
  readonly along: number
  readonly across: number
}

/** In parts of the largest height: a ball that is higher than the plate by less touches. */
const TOUCHING_WITHIN = 1e-12

/**
 * Judges orders of balls by how a plate comes to rest on them: in the plane over all balls that is lowest at the middle,
 *
 *   min z   subject to   z + g · nᵢ ≥ heightᵢ,
 *
 * nᵢ being the ball's direction and g the gradient. That is the program of `inscribeCircle` with reachᵢ = −heightᵢ, whose
 * circle has the radius −z and its middle at −g; its three planes are the carriers, their shares the part of each in the
 * origin. Thousands are judged, so that no room is taken for each.
 *
 * @param heights by the numbers that an order names, three at least; evenly spaced round the circle in any order
 */
export function restByOrder(heights: readonly number[]): (order: Order) => RestOfOrder {
  const count = heights.length
  requireWhole('number of balls', count, FEWEST_BALLS)
  const planes = halfPlanes(count)
  for (let ball = 0; ball < count; ball++) {
    const turn = (2 * Math.PI * ball) / count
    planes.normalX[ball] = Math.cos(turn)
    planes.normalY[ball] = Math.sin(turn)
  }
  const within = TOUCHING_WITHIN * Math.max(...heights.map(Math.abs))
  const circle = emptyCircle()
  return (order) => {
    for (let place = 0; place < count; place++) planes.reach[place] = -itemAt(heights, itemAt(order, place))
    if (!inscribeCircle(planes, circle, within))
      throw new RangeError('the balls of a circle must leave no half turn free')
    const decisive = [circle.first, circle.second, circle.third] as const
    const shares = sharesOf(planes, decisive)
    const { along, across } = shares.includes(0)
      ? tipped(planes, circle, shares)
      : { along: -circle.x, across: -circle.y }
    return { decisive, shares, height: -circle.radius, rise: Math.sqrt(along ** 2 + across ** 2), along, across }
  }
}

/** A share or a distance from a line this small is a rounding: the middle is over the line of the two others. */
const NO_SHARE = 1e-9

type Gradient = Pick<RestOfOrder, 'along' | 'across'>

/**
 * A plate that two opposite balls carry tips to either side, until it meets a third ball there: the way in which it is steeper.
 * On the line of the two, its gradient along it stays.
 */
function tipped({ normalX, normalY, reach }: HalfPlanes, circle: InscribedCircle, shares: Three): Gradient {
  const { x, y, radius, first, second, third } = circle
  const [one = first, other = second] = [first, second, third].filter((_, which) => itemAt(shares, which) > 0)
  const [dx, dy] = [itemAt(normalX, one) - itemAt(normalX, other), itemAt(normalY, one) - itemAt(normalY, other)]
  const length = Math.sqrt(dx * dx + dy * dy)
  const [lineX, lineY] = [dx / length, dy / length]
  const slope = -(x * lineX + y * lineY)
  let [least, most] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (let ball = 0; ball < reach.length; ball++) {
    const beside = itemAt(normalY, ball) * lineX - itemAt(normalX, ball) * lineY
    if (Math.abs(beside) < NO_SHARE) continue
    const over = -radius + slope * (itemAt(normalX, ball) * lineX + itemAt(normalY, ball) * lineY)
    const needed = (-itemAt(reach, ball) - over) / beside
    if (beside > 0) least = Math.max(least, needed)
    else most = Math.min(most, needed)
  }
  const beside = Math.abs(least) > Math.abs(most) ? least : most
  return { along: slope * lineX - beside * lineY, across: slope * lineY + beside * lineX }
}

/** The shares with which three balls hold up a load over the middle: areas of the triangle's parts over its own. */
function sharesOf({ normalX, normalY }: HalfPlanes, [first, second, third]: Three): Three {
  const part = (one: number, other: number): number =>
    itemAt(normalX, one) * itemAt(normalY, other) - itemAt(normalY, one) * itemAt(normalX, other)
  const [a, b, c] = [part(second, third), part(third, first), part(first, second)]
  const share = (own: number): number => (own / (a + b + c) < NO_SHARE ? 0 : own / (a + b + c))
  return [share(a), share(b), share(c)]
}

/** How a plate comes to rest on balls of such heights in their order round the circle: see `restByOrder`. */
export function plateAtRest(heights: readonly number[]): PlateAtRest {
  const { decisive, shares, height, rise, along, across } = restByOrder(heights)([...heights.keys()])
  const clearances = heights.map((own, ball) => {
    const turn = (2 * Math.PI * ball) / heights.length
    return height + along * Math.cos(turn) + across * Math.sin(turn) - own
  })
  return { carriers: decisive, shares, height, rise, mostClearance: Math.max(0, ...clearances) }
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
