import { requireWithin } from '#shared/precondition.ts'
import type { Mm } from '#shared/units/length.ts'
import { pastHalfTurns } from './balls-on-a-path.ts'
import { type Ellipse, sharpestRadius } from './ellipse.ts'
import { requireDiameters } from './ring-of-balls.ts'
import { innerParallel, stepOf } from './ring-of-balls-on-ellipse.ts'

/**
 * Centres and radii of the balls of a ring, from the middle of the outer ring, in their order round it [mm]. The first
 * ball lies in the direction of x.
 */
export interface BallPlaces {
  readonly x: Float64Array
  readonly y: Float64Array
  readonly radius: Float64Array
}

/**
 * Where the ball gap is: all of it between the last ball and the first, or an equal part of it between all neighbours.
 * A gap below 0 is an overlap, and is shared in the same way.
 */
export type GapPlace = 'whole' | 'spread'

export const ballPlaces = (count: number): BallPlaces => ({
  x: new Float64Array(count),
  y: new Float64Array(count),
  radius: new Float64Array(count),
})

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
 * `placesOnCircle` without its guards and without a new object: reads `places.radius`, writes `x` and `y`. Neighbours
 * subtend θ with sin²(θ/2) = ((rᵢ + rⱼ)² − (aᵢ − aⱼ)²) / 4 aᵢ aⱼ by the law of cosines; the steps are multiplied as
 * complex numbers. A spread gap takes one arctangent, one sine and one cosine.
 *
 * @param centres a: how far each ball's centre stands from the middle [mm]; without them a = Ro − r, on the bottom
 */
export function layOnCircle(
  bottomRadius: number,
  gap: GapPlace,
  { x, y, radius }: BallPlaces,
  centres?: Float64Array,
): void {
  const count = radius.length
  const centreOf = (ball: number): number =>
    centres === undefined ? bottomRadius - (radius[ball] ?? Number.NaN) : (centres[ball] ?? Number.NaN)
  let [cosine, sine, halfTurns] = [1, 0, 0]
  let [before, beside] = [centreOf(0), radius[0] ?? Number.NaN]
  x[0] = 1
  y[0] = 0
  const last = gap === 'spread' ? count : count - 1
  for (let ball = 1; ball <= last; ball++) {
    const place = ball === count ? 0 : ball
    const away = centreOf(place)
    const own = radius[place] ?? Number.NaN
    const touching = beside + own
    const half = ((touching - before + away) * (touching + before - away)) / (4 * before * away)
    const stepCosine = 1 - 2 * half
    const stepSine = 2 * Math.sqrt(Math.max(0, half * (1 - half)))
    const turned = sine * stepCosine + cosine * stepSine
    cosine = cosine * stepCosine - sine * stepSine
    // no step is more than a half turn, so none is missed
    if (turned < 0 !== sine < 0) halfTurns++
    sine = turned
    before = away
    beside = own
    if (ball === count) break
    x[ball] = cosine
    y[ball] = sine
  }
  if (gap === 'spread') spread(halfTurns * Math.PI + pastHalfTurns(cosine, sine), x, y)
  for (let ball = 0; ball < count; ball++) {
    const away = centreOf(ball)
    x[ball] = (x[ball] ?? Number.NaN) * away
    y[ball] = (y[ball] ?? Number.NaN) * away
  }
}

/** Turns each direction on by its part of what the closed row leaves of a turn. */
function spread(total: number, x: Float64Array, y: Float64Array): void {
  const share = (2 * Math.PI - total) / x.length
  const [stepCosine, stepSine] = [Math.cos(share), Math.sin(share)]
  let [cosine, sine] = [1, 0]
  for (let ball = 1; ball < x.length; ball++) {
    const next = cosine * stepCosine - sine * stepSine
    sine = cosine * stepSine + sine * stepCosine
    cosine = next
    const [along, across] = [x[ball] ?? Number.NaN, y[ball] ?? Number.NaN]
    x[ball] = along * cosine - across * sine
    y[ball] = along * sine + across * cosine
  }
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
