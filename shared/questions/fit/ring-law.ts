import type { SeatLaw } from './subject.ts'

/*
 * The ring of balls as one number against another, without guards: fit correction asks for it some ten thousand times an
 * answer, at places where no ring could be laid as well. `shared/geometry/ring-of-balls.ts` has the derivations.
 */

/** How far from the axis the centres of balls of diameter `ball` stand, in a groove at x. */
export function pitchRadius(seat: SeatLaw, x: number, ball: number): number {
  if (seat.on === 'bottom') return x - ball / 2
  if (seat.on === 'circle') return x
  return seat.landRadius + seatDepth(seat.arc, x - seat.landRadius, ball) - ball / 2
}

/** The way back of `pitchRadius`. */
export function xForPitch(seat: SeatLaw, radius: number, ball: number): number {
  if (seat.on === 'bottom') return radius + ball / 2
  if (seat.on === 'circle') return radius
  return seat.landRadius + depthForSeat(seat.arc, radius + ball / 2 - seat.landRadius, ball)
}

/**
 * How deep a ball dips into a groove of an arc tighter than itself: s = r − √(r² − w²), w² = h (2 arc − h). A groove not cut
 * yet holds the ball at its land; one deeper than its arc is wide takes it no deeper.
 */
export function seatDepth(arc: number, depth: number, ball: number): number {
  if (!(depth > 0)) return depth
  const radius = ball / 2
  const within = Math.min(depth, arc)
  const squared = Math.min(within * (2 * arc - within), radius * radius)
  return radius - Math.sqrt(radius * radius - squared)
}

/** The way back of `seatDepth`; beyond what this arc can hold it goes on by the depth itself, so that nothing is reached. */
export function depthForSeat(arc: number, seat: number, ball: number): number {
  if (!(seat > 0)) return seat
  const squared = seat * (ball - seat)
  if (!(seat < ball / 2 && squared <= arc * arc)) return arc + seat
  return arc - Math.sqrt(arc * arc - squared)
}

/**
 * The gap of `count` equal balls pushed together, g = 2 R sin(π − (n − 1) α) − Dw with α = asin(Dw / 2R). Where all but one
 * overfill the ring already, it goes on falling by the arc of their overlap, and where not even two find room by a straight line,
 * so that every groove has a gap of its own.
 */
export function gapOf(radius: number, ball: number, count: number): number {
  if (!(radius > ball / 2)) return gapOfTwo(ball, count) + slopeBelowTwo(count) * (radius - ball / 2)
  const half = Math.asin(ball / (2 * radius))
  const open = Math.PI - (count - 1) * half
  return 2 * radius * (open > 0 ? Math.sin(open) : open) - ball
}

/** The gap at the radius where two balls just fit on opposite sides of the axis. */
const gapOfTwo = (ball: number, count: number): number => ball * (Math.PI - ((count - 1) * Math.PI) / 2) - ball

/** Above 0, so that a smaller groove never has a larger gap. */
const slopeBelowTwo = (count: number): number => 2 + (count - 3) * Math.PI

/** A gap can come this near to the limit that few balls have, (n − 2) Dw. Derived here. */
const OF_THE_LIMIT = 0.98
const MOST_STEPS = 60

/** Newton's last step leaves about the square of what it went, over the radius: far below 1e-9 of it. */
const LAST_STEP = 1e-7

/** The pitch radius at which `count` balls leave a gap: the way back of `gapOf`. */
export function radiusForGap(gap: number, ball: number, count: number): number {
  const wanted = Math.min(gap, OF_THE_LIMIT * (count - 2) * ball)
  const closed = ball / (2 * Math.sin(Math.PI / count))
  const slope = 2 * count * Math.sin(Math.PI / count)
  let low = ball / 2
  let high = Number.POSITIVE_INFINITY
  let radius = Math.max(closed + wanted / slope, low)
  for (let step = 0; step < MOST_STEPS; step++) {
    const off = gapOf(radius, ball, count) - wanted
    if (off > 0) high = radius
    else low = radius
    const next = radius - off / gapSlope(radius, ball, count)
    const inside = next > low && next < high
    const to = inside ? next : high === Number.POSITIVE_INFINITY ? 2 * radius : (low + high) / 2
    if (Math.abs(to - radius) <= (inside ? LAST_STEP : 1e-10) * radius) return to
    radius = to
  }
  return radius
}

/** d(gap)/dR of `gapOf`. */
export function gapSlope(radius: number, ball: number, count: number): number {
  if (!(radius > ball / 2)) return slopeBelowTwo(count)
  const half = Math.asin(ball / (2 * radius))
  const open = Math.PI - (count - 1) * half
  const tangent = ball / Math.sqrt((2 * radius - ball) * (2 * radius + ball))
  return open > 0
    ? 2 * Math.sin(open) + 2 * (count - 1) * Math.cos(open) * tangent
    : 2 * open + 2 * (count - 1) * tangent
}
