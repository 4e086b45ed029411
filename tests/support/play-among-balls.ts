import type { Ellipse } from '#shared/geometry/ellipse.ts'
import { sharpestRadius } from '#shared/geometry/ellipse.ts'
import { type Measure, roundRoom, runOutOf, seeker } from '#shared/geometry/play-among-unequal-balls.ts'
import { requireDiameters } from '#shared/geometry/ring-of-balls.ts'
import { innerParallel, stepOf } from '#shared/geometry/ring-of-balls-on-ellipse.ts'
import { type BallPlaces, ballPlaces, type GapPlace, layOnCircle } from '#shared/geometry/unequal-ball-places.ts'
import { requireAboveZero, requireWithin } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/* One ring at a time, with checked ranges: the service lays its rings in blocks. Elliptic rings are judged here alone. */

/**
 * Balls on the bottom of a round groove, each touching the next, as `unequalBallGap` has them.
 *
 * @param bottomRadius Ro [mm], at least that of any two neighbours side by side: `tightestBottomRadius`
 * @param diameters in their order round the ring [mm], each above 0, three at least
 * @throws RangeError outside those ranges
 */
export function placesOnCircle(bottomRadius: Mm, diameters: readonly number[], gap: GapPlace): BallPlaces {
  requireDiameters(diameters)
  const widest = Math.max(...diameters.map((diameter, ball) => (diameter + (diameters.at(ball - 1) ?? diameter)) / 2))
  requireWithin('bottomRadius', bottomRadius, widest, Number.MAX_VALUE)
  const places = ballPlaces(diameters.length)
  places.radius.set(diameters.map((diameter) => diameter / 2))
  layOnCircle(bottomRadius, gap, places)
  return places
}

/**
 * Balls on the bottom of an elliptic groove, each touching the next, the whole gap between the last and the first. A
 * ball of radius r has its centre on the inner parallel curve at r, as in `gapOnEllipse`; here each ball has a curve of
 * its own.
 *
 * @param bottom every ball radius at most its sharpest radius
 * @param start eccentric angle at which the first ball touches the bottom, from the axis along the grain
 * @returns undefined where not all balls find room on the ellipse
 * @throws RangeError for balls outside the ranges of `placesOnCircle`, or larger than the bottom's sharpest radius
 */
export function placesOnEllipse(bottom: Ellipse, diameters: readonly number[], start: number): BallPlaces | undefined {
  requireDiameters(diameters)
  const places = ballPlaces(diameters.length)
  const sharpest = sharpestRadius(bottom)
  let [at, guess] = [start, 0]
  let before: { readonly x: number; readonly y: number; readonly radius: number } | undefined
  for (const [ball, diameter] of diameters.entries()) {
    const radius = diameter / 2
    requireWithin('each ball radius', radius, Number.MIN_VALUE, sharpest)
    const curve = innerParallel(bottom, radius)
    if (before !== undefined) {
      const touching = before.radius + radius
      const step = stepOf(curve, before, at, touching, guess > 0 ? guess : touching / curve(at).speed)
      if (step === undefined) return undefined
      at += step
      guess = step
    }
    const { x, y } = curve(at)
    before = { x, y, radius }
    places.x[ball] = x
    places.y[ball] = y
    places.radius[ball] = radius
  }
  return at - start > 2 * Math.PI ? undefined : places
}
/** An elliptic inner groove bottom, its axis along the grain turned from the direction of x by an angle. */
interface TurnedEllipse {
  readonly bottom: Ellipse
  /** [rad] */
  readonly turn: number
}

/** How the inner ring stands among the balls where it has most room. */
interface PlayAmongBalls {
  /**
   * 2 t*: whole travel that the ring has in every direction at least. Below 0 it binds, and is too large by that
   * diameter.
   */
  readonly radialInternalClearance: Mm
  /** Where the ring's centre then is, from the middle of the outer ring. */
  readonly centre: { readonly x: Mm; readonly y: Mm }
  /**
   * Twice the distance of that centre from the middle. The balls go round between the rings, and the centre with them:
   * an indicator on the inner ring shows so much from its least to its most while the set of balls goes round once.
   */
  readonly runOut: Mm
  /** The three balls that leave least room there, by their places in the order. */
  readonly supports: readonly [number, number, number]
}

/**
 * The play of an inner ring among the balls.
 *
 * @param places of the balls: `placesOnCircle`, `placesOnEllipse`
 * @param inner radius of the inner groove's bottom [mm], or its ellipse; of an ellipse no centre may lie inside its
 *   evolute
 * @returns undefined where the balls leave half a turn free, so that nothing holds the ring. The clearance is good to
 *   1e-14 of the outer radius; where a second place is as good, `centre` is one of them
 * @throws RangeError for radii that are not above 0
 */
export function playAmongBalls(places: BallPlaces, inner: Mm | TurnedEllipse): PlayAmongBalls | undefined {
  const found = seeker(places, roomRound(places, inner))()
  if (found === undefined) return undefined
  const { x, y, level, first, second, third } = found
  return {
    radialInternalClearance: mm(2 * level),
    centre: { x: mm(x), y: mm(y) },
    runOut: mm(runOutOf(found)),
    supports: [first, second, third],
  }
}

/** @throws RangeError for radii that are not above 0 */
function roomRound(places: BallPlaces, inner: Mm | TurnedEllipse): Measure {
  if (typeof inner === 'number') {
    requireAboveZero('inner radius', inner)
    return roundRoom(places, inner)
  }
  requireAboveZero('along', inner.bottom.along)
  requireAboveZero('across', inner.bottom.across)
  return ellipticRoom(places, inner)
}

/** Newton's steps towards the nearest point of an ellipse; six are enough for any that wood becomes. */
const MOST_STEPS = 60

/**
 * The point of an ellipse a, b that is nearest to (u, v) is (a² u / (t + a²), b² v / (t + b²)) with the largest root t
 * of (a u / (t + a²))² + (b v / (t + b²))² = 1, and lies |(u / (t + a²), v / (t + b²))| t away: its normal has that
 * direction. The left side is convex and falls, and is at least 1 at the smaller of a (ρ − a) and b (ρ − b), ρ = |(u,
 * v)|: from there Newton's steps rise to the root and never pass it.
 */
function ellipticRoom({ x, y, radius }: BallPlaces, { bottom, turn }: TurnedEllipse): Measure {
  const { along: a, across: b } = bottom
  const [cosine, sine] = [Math.cos(turn), Math.sin(turn)]
  return (atX, atY, { normalX, normalY, reach }) => {
    for (let ball = 0; ball < radius.length; ball++) {
      const dx = (x[ball] ?? Number.NaN) - atX
      const dy = (y[ball] ?? Number.NaN) - atY
      const u = dx * cosine + dy * sine
      const v = dy * cosine - dx * sine
      const away = Math.sqrt(u * u + v * v)
      let t = Math.min(a * (away - a), b * (away - b))
      let [p, q] = [u / (t + a * a), v / (t + b * b)]
      for (let step = 0; step < MOST_STEPS; step++) {
        const over = a * a * p * p + b * b * q * q - 1
        const slope = 2 * ((a * a * p * p) / (t + a * a) + (b * b * q * q) / (t + b * b))
        const next = t + over / slope
        // past the last digits it no longer rises
        if (!(next > t)) break
        t = next
        p = u / (t + a * a)
        q = v / (t + b * b)
      }
      const size = Math.sqrt(p * p + q * q)
      normalX[ball] = (p * cosine - q * sine) / size
      normalY[ball] = (p * sine + q * cosine) / size
      reach[ball] = t * size - (radius[ball] ?? Number.NaN)
    }
  }
}
