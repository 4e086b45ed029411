import { type Mm, mm } from '#shared/units/length.ts'
import { type HalfPlanes, halfPlanes } from './inscribed-circle.ts'
import { type Measure, roomRound, runOutOf, seeker, type TurnedEllipse } from './play-among-unequal-balls.ts'
import type { BallPlaces } from './unequal-ball-places.ts'

/**
 * How far the inner ring goes from one side to the other, by the direction in which it is pushed and pulled. Where all
 * are 0 the ring has no room: it binds, or is just held.
 */
export interface TravelAmongBalls {
  /** In the direction in which it goes least far; at least `radialInternalClearance`. */
  readonly least: Mm
  /** Over all directions alike. */
  readonly mean: Mm
  readonly most: Mm
  /**
   * How much the inner ring's centre rises and falls under a steady load while the set of balls goes round once. The
   * ring then lies on whichever balls are lowest, not in the middle of its play; of a ring without play it is the
   * `runOut` of `playAmongBalls`.
   */
  readonly runOutUnderLoad: Mm
}

type Point = readonly [x: number, y: number]

/**
 * The whole travel of an inner ring among unequal balls. The places of its centre make a figure whose sides are arcs
 * that bend inward (no centre within rᵢ + ri of a ball), so only its corners stand out in any direction: the travel is
 * the width of the convex polygon of the corners, its least width lies square to one of its sides, its most is the
 * longest way from corner to corner, and its mean is the circumference over π (Cauchy).
 *
 * The corners are those of the polygon that the rooms about the best place of `playAmongBalls` make, each moved to
 * where the two rooms truly end. The travel falls short by a side that is itself no longer than the square of the play
 * over the pitch diameter.
 *
 * Of equal balls at equal spacing with a clearance Gr the figure is a regular polygon: the least travel is Gr for an
 * even count and Gr (1 + 1 / cos(π / Z)) / 2 for an odd one, the mean Gr (Z / π) tan(π / Z), the most Gr / cos(π / Z)
 * for an even count and Gr cos(π / 2Z) / cos(π / Z) for an odd one; of 14 balls Gr, 1.017 Gr and 1.026 Gr, but for the
 * square of the play over the pitch diameter.
 *
 * @returns undefined where nothing holds the ring, as in `playAmongBalls`, whose arguments these are
 */
export function travelAmongBalls(places: BallPlaces, inner: Mm | TurnedEllipse): TravelAmongBalls | undefined {
  const measure = roomRound(places, inner)
  const found = seeker(places, measure)()
  if (found === undefined) return undefined
  const { x, y, level, first } = found
  if (!(level > 0)) return { least: mm(0), mean: mm(0), most: mm(0), runOutUnderLoad: mm(runOutOf(found)) }
  const room = halfPlanes(places.radius.length)
  measure(x, y, room)
  const corners = cornersOf(room, first)
  return widthsOf(
    hullOf(corners.map(({ one, other, at: [dx, dy] }) => sharpened(measure, room, one, other, [x + dx, y + dy]))),
  )
}

interface Corner {
  readonly one: number
  readonly other: number
  readonly at: Point
}

/**
 * The corners of n · p ≤ reach, all reaches above 0, from the side of one plane that surely has one on,
 * counterclockwise.
 */
function cornersOf({ normalX, normalY, reach }: HalfPlanes, start: number): readonly Corner[] {
  const corners: Corner[] = []
  let side = start
  let at: Point = [
    (normalX[start] ?? Number.NaN) * (reach[start] ?? Number.NaN),
    (normalY[start] ?? Number.NaN) * (reach[start] ?? Number.NaN),
  ]
  do {
    const [wayX, wayY] = [-(normalY[side] ?? Number.NaN), normalX[side] ?? Number.NaN]
    let [next, way, turn] = [-1, Number.POSITIVE_INFINITY, 0]
    for (let plane = 0; plane < reach.length; plane++) {
      const nearer = (normalX[plane] ?? Number.NaN) * wayX + (normalY[plane] ?? Number.NaN) * wayY
      if (plane === side || !(nearer > 0)) continue
      const left =
        (reach[plane] ?? Number.NaN) - (normalX[plane] ?? Number.NaN) * at[0] - (normalY[plane] ?? Number.NaN) * at[1]
      const until = Math.max(0, left) / nearer
      // of sides that meet in one corner the one that turns most is the next
      const along =
        (normalX[plane] ?? Number.NaN) * (normalX[side] ?? Number.NaN) +
        (normalY[plane] ?? Number.NaN) * (normalY[side] ?? Number.NaN)
      if (until < way || (until === way && along < turn)) [next, way, turn] = [plane, until, along]
    }
    if (next < 0) return corners
    at = [at[0] + way * wayX, at[1] + way * wayY]
    corners.push({ one: side, other: next, at })
    side = next
  } while (side !== start && corners.length <= reach.length)
  return corners
}

/** Newton's steps square their error; play is small beside the radius. */
const STEPS = 5

/** Where two rooms both end: Newton's method from the corner of their tangents. */
function sharpened(measure: Measure, room: HalfPlanes, one: number, other: number, from: Point): Point {
  const { normalX, normalY, reach } = room
  let [x, y] = from
  for (let step = 0; step < STEPS; step++) {
    measure(x, y, room)
    const [ax, ay] = [normalX[one] ?? Number.NaN, normalY[one] ?? Number.NaN]
    const [bx, by] = [normalX[other] ?? Number.NaN, normalY[other] ?? Number.NaN]
    const [a, b] = [reach[one] ?? Number.NaN, reach[other] ?? Number.NaN]
    const whole = ax * by - ay * bx
    x += (a * by - b * ay) / whole
    y += (b * ax - a * bx) / whole
  }
  return [x, y]
}

/** The corners that stand out, counterclockwise (Andrew's monotone chain). */
function hullOf(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const chain = (from: readonly Point[]): Point[] => {
    const kept: Point[] = []
    for (const point of from) {
      for (;;) {
        const [before, last] = [kept.at(-2), kept.at(-1)]
        if (before === undefined || last === undefined || turnAt(before, last, point) > 0) break
        kept.pop()
      }
      kept.push(point)
    }
    return kept.slice(0, -1)
  }
  return [...chain(sorted), ...chain(sorted.reverse())]
}

const turnAt = ([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)

function widthsOf(hull: readonly Point[]): TravelAmongBalls {
  let [least, most, round] = [Number.POSITIVE_INFINITY, 0, 0]
  hull.forEach(([ax, ay], corner) => {
    const [bx, by] = hull[(corner + 1) % hull.length] ?? [ax, ay]
    const side = Math.hypot(bx - ax, by - ay)
    let width = 0
    for (const [x, y] of hull) {
      width = Math.max(width, turnAt([ax, ay], [bx, by], [x, y]) / side)
      most = Math.max(most, Math.hypot(x - ax, y - ay))
    }
    least = Math.min(least, width)
    round += side
  })
  return {
    least: mm(least),
    mean: mm(round / Math.PI),
    most: mm(most),
    runOutUnderLoad: mm(farthest(hull) - leastReach(hull)),
  }
}

const farthest = (hull: readonly Point[]): number => Math.max(...hull.map(([x, y]) => Math.hypot(x, y)))

/**
 * How far a convex polygon reaches from the middle in the direction in which it reaches least: to its nearest side, or,
 * where the middle lies outside, less than nothing by its distance.
 */
function leastReach(hull: readonly Point[]): number {
  let [inside, outside] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  hull.forEach(([ax, ay], corner) => {
    const [bx, by] = hull[(corner + 1) % hull.length] ?? [ax, ay]
    const [wayX, wayY] = [bx - ax, by - ay]
    const square = wayX * wayX + wayY * wayY
    inside = Math.min(inside, (ax * wayY - ay * wayX) / Math.sqrt(square))
    const part = Math.min(1, Math.max(0, -(ax * wayX + ay * wayY) / square))
    outside = Math.min(outside, Math.hypot(ax + part * wayX, ay + part * wayY))
  })
  return inside >= 0 ? inside : -outside
}
