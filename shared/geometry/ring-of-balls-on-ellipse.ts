import { itemAt } from '#shared/numbers/item-at.ts'
import { requireWhole, requireWithin } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { type Ellipse, sharpestRadius } from './ellipse.ts'
import { FEWEST_BALLS } from './ring-of-balls.ts'

/** A full ring of equal balls in a groove whose bottom is an ellipse. */
export interface EllipticRing {
  readonly bottom: Ellipse
  readonly ballDiameter: Mm
  readonly ballCount: number
}

/** Least and most over all places at which the first ball can lie. */
export interface GapRange {
  readonly least: Mm
  readonly most: Mm
}

/** Places that are looked at in half a turn, after which the ellipse repeats itself; the best are closed in on. */
const PLACES = 16
/** Each keeps 0.618 of the bracket: 16 leave 1e-4 of a turn, and at an extreme the gap changes with the square of it. */
const CLOSER_ROUNDS = 16
const GOLDEN = (Math.sqrt(5) - 1) / 2

/**
 * The ball gap of a ring that has become an ellipse, at its least and its most over all places of the first ball.
 *
 * @param ring balls whole in number and at least 3; ball radius at most the sharpest radius of the bottom
 * @returns -Dw where not even all balls but one go in
 * @throws RangeError outside those ranges
 */
export function gapRangeOnEllipse(ring: EllipticRing): GapRange {
  const gaps = Array.from({ length: PLACES }, (_, place) => gapOnEllipse(ring, (place * Math.PI) / PLACES))
  const extreme = (sign: 1 | -1): Mm => {
    const best = gaps.reduce<number>((at, gap, place) => (sign * gap < sign * itemAt(gaps, at) ? place : at), 0)
    return mm(
      sign * leastNear((start) => sign * gapOnEllipse(ring, start), (best * Math.PI) / PLACES, Math.PI / PLACES),
    )
  }
  return { least: extreme(1), most: extreme(-1) }
}

/** The least value of a function within a width either side of a place, where it has one valley. */
function leastNear(of: (x: number) => number, middle: number, width: number): number {
  let [low, high] = [middle - width, middle + width]
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)]
  let [atLeft, atRight] = [of(left), of(right)]
  for (let round = 0; round < CLOSER_ROUNDS; round++) {
    if (atLeft < atRight) {
      ;[high, right, atRight] = [right, left, atLeft]
      left = high - GOLDEN * (high - low)
      atLeft = of(left)
    } else {
      ;[low, left, atLeft] = [left, right, atRight]
      right = low + GOLDEN * (high - low)
      atRight = of(right)
    }
  }
  return Math.min(of(middle), atLeft, atRight)
}

/**
 * The ball gap with the first ball at a place of the ellipse. A ball of radius r that touches the bottom has its centre on
 * the ellipse's inner parallel curve, C(t) = P(t) - r n(t); neighbours touch, so their centres are Dw apart as chords;
 * the gap is the chord from the last centre back to the first, less Dw. A chord grows along the curve for half a turn, so each next centre is found by Newton's steps.
 *
 * @param start eccentric angle of the first ball's point of touch, from the axis along the grain
 * @returns -Dw where the last ball would lie on the first or beyond it
 */
export function gapOnEllipse({ bottom, ballDiameter, ballCount }: EllipticRing, start: number): Mm {
  requireWhole('ballCount', ballCount, FEWEST_BALLS)
  requireWithin('ball radius', ballDiameter / 2, Number.MIN_VALUE, sharpestRadius(bottom))
  const curve = innerParallel(bottom, ballDiameter / 2)
  const first = curve(start)
  let from = first
  let turned = 0
  let [before, guess] = [0, ballDiameter / first.speed]
  for (let ball = 1; ball < ballCount; ball++) {
    const step = stepOf(curve, from, start + turned, ballDiameter, guess)
    if (step === undefined) return mm(-ballDiameter)
    turned += step
    // steps change evenly from ball to ball, but for the first
    guess = before === 0 ? step : 2 * step - before
    before = step
    from = curve(start + turned)
  }
  if (turned > 2 * Math.PI) return mm(-ballDiameter)
  const [x, y] = [from.x - first.x, from.y - first.y]
  return mm(Math.sqrt(x * x + y * y) - ballDiameter)
}

/** A point of the curve of centres, and how fast the curve runs there: `dx`, `dy` per angle, `speed` their length. */
interface CurvePoint {
  readonly x: number
  readonly y: number
  readonly dx: number
  readonly dy: number
  readonly speed: number
}

type Curve = (angle: number) => CurvePoint

/** C(t) = P(t) - r n(t), P = (a cos t, b sin t); its speed is that of P times 1 - r / (radius of curvature). */
export function innerParallel({ along: a, across: b }: Ellipse, radius: number): Curve {
  return (angle) => {
    const [cosine, sine] = [Math.cos(angle), Math.sin(angle)]
    const speed = Math.sqrt(a * a * sine * sine + b * b * cosine * cosine)
    const slower = 1 - (radius * a * b) / (speed * speed * speed)
    return {
      x: a * cosine - (radius * b * cosine) / speed,
      y: b * sine - (radius * a * sine) / speed,
      dx: -a * sine * slower,
      dy: b * cosine * slower,
      speed: speed * slower,
    }
  }
}

const MOST_ROUNDS = 60
/** Newton's next error is about the square of a step, both by the way from ball to ball: this step is the last. */
const LAST_STEP = 3e-8

/** How far on the next centre lies, or undefined where the curve is nowhere so wide. */
export function stepOf(
  curve: Curve,
  from: Pick<CurvePoint, 'x' | 'y'>,
  at: number,
  chord: number,
  guess: number,
): number | undefined {
  let [low, high] = [0, Math.PI]
  let step = Math.min(guess, high)
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const to = curve(at + step)
    const [x, y] = [to.x - from.x, to.y - from.y]
    const beyond = (x * x + y * y - chord * chord) / 2
    if (beyond > 0) high = step
    else low = step
    const change = beyond / (x * to.dx + y * to.dy)
    const next = step - change
    if (Math.abs(change) <= LAST_STEP * step) return next
    step = next > low && next < high ? next : (low + high) / 2
  }
  return high < Math.PI ? step : undefined
}
