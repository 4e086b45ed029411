import { emptyCircle, type HalfPlanes, halfPlanes, type InscribedCircle, inscribeCircle } from './inscribed-circle.ts'
import type { BallPlaces } from './unequal-ball-places.ts'

/*
 * The play of a rigid inner ring among balls of unequal size, every ball on the bottom of the outer groove. The ring
 * may stand anywhere in its plane. With its centre at p, ball i leaves it the room
 *
 *   hᵢ(p) = |cᵢ − p| − rᵢ − ri
 *
 * and the ring is free where all are at least 0. The radial room of the bearing is t* = max over p of min over i of
 * hᵢ(p): the ring could be larger by t* all round and just go in. It binds where t* < 0, and the play that is left is
 *
 *   radialInternalClearance = 2 t*,
 *
 * the diameter of the largest circle that may lie inside the room of the ring's centre: the ring travels at least so
 * far in every direction, however it is pushed. Of equal balls that
 * leave no half turn free the best place is the middle, and 2 t* = 2 (Ro − ri) − 2 Dw, the clearance of a design.
 *
 * To first order |cᵢ − p| = aᵢ − nᵢ · p, so that t* is the linear program of `inscribeCircle` with reachᵢ = Ro − ri −
 * dᵢ. By its dual the ring is held by the three balls that make Σ λᵢ dᵢ largest, the middle being inside the triangle
 * of their directions.
 *
 * Exactly, hᵢ is convex in p (a distance from a convex body), so it lies above its tangent. Hence each linear program
 * about the last place is a lower bound that touches, its solution is never worse than that place, and the level rises
 * from step to step; with three balls to hold the ring a step is one of Newton's. What is reached is a place that no
 * small move betters.
 *
 * A better place farther off must lie across the line of two of the three balls, nearly opposite one another: every
 * move within 2 |cᵢ| uᵢ · δ of a supporting ball comes nearer to it. So the ring is tried on the other side of that
 * line (`acrossTheLine`), and the better place is taken. Both differ by the square of the play over the pitch diameter.
 */

/**
 * Writes what room each ball leaves to a ring whose centre is at x, y: how far the ring may go towards the ball, and
 * the direction of that.
 */
export type Measure = (x: number, y: number, room: HalfPlanes) => void

/** The room round an inner groove bottom of radius `inner`. */
export function roundRoom({ x, y, radius }: BallPlaces, inner: number): Measure {
  return (atX, atY, { normalX, normalY, reach }) => {
    for (let ball = 0; ball < radius.length; ball++) {
      const dx = (x[ball] ?? Number.NaN) - atX
      const dy = (y[ball] ?? Number.NaN) - atY
      const away = Math.sqrt(dx * dx + dy * dy)
      normalX[ball] = dx / away
      normalY[ball] = dy / away
      reach[ball] = away - (radius[ball] ?? Number.NaN) - inner
    }
  }
}

/** The place of a ring. */
interface Found {
  x: number
  y: number
  /** t: the least room there. */
  level: number
  first: number
  second: number
  third: number
}

/**
 * Run-out: twice the distance of the ring's centre from the middle. The balls go round between the rings, and the centre
 * with them: an indicator on the inner ring shows so much from its least to its most while the set of balls goes round once.
 */
export const runOutOf = ({ x, y }: Readonly<Found>): number => 2 * Math.sqrt(x * x + y * y)

/** Roundings of a room, in parts of the farthest centre. */
const ROUNDINGS = 4 * Number.EPSILON
/** A Newton step this short, in parts of the radius, leaves an error of half its square: less than a rounding. */
const LAST_STEP = 1e-8
/** Three or four are enough; what creeps along between two balls takes more. */
const MOST_ROUNDS = 60
/** Lines that are crossed one after another: more than two have not been seen. */
const MOST_CROSSINGS = 8

/**
 * A search for the best place of a ring, to be used as often as wanted: it has room of its own, and nothing is
 * allocated in it. It gives the same object each time, written anew; undefined where nothing holds the ring.
 */
export function seeker(places: BallPlaces, measure: Measure): () => Readonly<Found> | undefined {
  const room = halfPlanes(places.radius.length)
  const circle = emptyCircle()
  const found: Found = { x: 0, y: 0, level: 0, first: 0, second: 0, third: 0 }
  const beside: Found = { ...found }
  const start = { x: 0, y: 0 }
  return () => {
    const radius =
      Math.abs(places.x[0] ?? Number.NaN) + Math.abs(places.y[0] ?? Number.NaN) + (places.radius[0] ?? Number.NaN)
    if (!climb(measure, radius, 0, 0, room, circle, found)) return undefined
    for (let crossing = 0; crossing < MOST_CROSSINGS && acrossTheLine(places, room, found, start); crossing++) {
      if (!climb(measure, radius, start.x, start.y, room, circle, beside)) break
      if (!(beside.level > found.level + ROUNDINGS * radius)) break
      Object.assign(found, beside)
      measure(found.x, found.y, room)
    }
    return found
  }
}

/** @param room and `circle` are worked with: whatever was in them does not matter */
function climb(
  measure: Measure,
  radius: number,
  fromX: number,
  fromY: number,
  room: HalfPlanes,
  circle: InscribedCircle,
  found: Found,
): boolean {
  let [x, y] = [fromX, fromY]
  for (let round = 0; round < MOST_ROUNDS; round++) {
    measure(x, y, room)
    if (!inscribeCircle(room, circle, ROUNDINGS * radius, round > 0)) return false
    x += circle.x
    y += circle.y
    if (circle.x * circle.x + circle.y * circle.y <= LAST_STEP * LAST_STEP * radius * radius) break
  }
  found.x = x
  found.y = y
  found.level = circle.radius
  found.first = circle.first
  found.second = circle.second
  found.third = circle.third
  return true
}

/**
 * Leaves one of the three balls and goes along between the other two, where the room towards both stays alike. It falls
 * at first, is least on the line of their centres, and grows again past it: as −β q + q² / 2R over the way q. Where
 * another ball stops the ring only after the room is as large again, at 2 β R, there is a better place about there.
 *
 * @param room as it is at the place found
 * @param start takes the place where the ring is stopped
 * @returns whether there is such a place; of the three ways at most one leads to it, for no share of the three is
 *   above a half
 */
function acrossTheLine(places: BallPlaces, room: HalfPlanes, found: Found, start: { x: number; y: number }): boolean {
  return (
    between(places, room, found, found.first, found.second, found.third, start) ||
    between(places, room, found, found.second, found.third, found.first, start) ||
    between(places, room, found, found.third, found.first, found.second, start)
  )
}

/** By half the way at which the room is as large again, so that its own error does not matter. */
const SOONER = 0.5

function between(
  { x, y, radius: ballRadius }: BallPlaces,
  { normalX, normalY, reach }: HalfPlanes,
  found: Found,
  one: number,
  other: number,
  left: number,
  start: { x: number; y: number },
): boolean {
  const alongX = (normalX[one] ?? Number.NaN) - (normalX[other] ?? Number.NaN)
  const alongY = (normalY[one] ?? Number.NaN) - (normalY[other] ?? Number.NaN)
  const size = Math.sqrt(alongX * alongX + alongY * alongY)
  const toLeft = (normalY[left] ?? Number.NaN) * alongX - (normalX[left] ?? Number.NaN) * alongY
  const side = toLeft > 0 ? -1 / size : 1 / size
  const [wayX, wayY] = [-alongY * side, alongX * side]
  const falls = (normalX[one] ?? Number.NaN) * wayX + (normalY[one] ?? Number.NaN) * wayY
  const [dx, dy] = [(x[one] ?? Number.NaN) - found.x, (y[one] ?? Number.NaN) - found.y]
  const level = reach[one] ?? Number.NaN
  const again = 2 * falls * Math.sqrt(dx * dx + dy * dy)
  let stopped = Number.POSITIVE_INFINITY
  for (let ball = 0; ball < ballRadius.length; ball++) {
    if (ball === one || ball === other || ball === left) continue
    const nearer = (normalX[ball] ?? Number.NaN) * wayX + (normalY[ball] ?? Number.NaN) * wayY - falls
    if (nearer > 0) stopped = Math.min(stopped, Math.max(0, (reach[ball] ?? Number.NaN) - level) / nearer)
  }
  if (!(stopped > SOONER * again && stopped > 0 && stopped < Number.POSITIVE_INFINITY)) return false
  start.x = found.x + stopped * wayX
  start.y = found.y + stopped * wayY
  return true
}
