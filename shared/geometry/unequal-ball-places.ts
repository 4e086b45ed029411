import { pastHalfTurns } from './balls-on-a-path.ts'

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
 * Place of the ball gap: all of it between the last ball and the first, or an equal part of it between all neighbours.
 * A gap below 0 is an overlap, and is shared in the same way.
 */
export type GapPlace = 'whole' | 'spread'

export const ballPlaces = (count: number): BallPlaces => ({
  x: new Float64Array(count),
  y: new Float64Array(count),
  radius: new Float64Array(count),
})

/**
 * Lays balls on the bottom of a round groove, each touching the next, as `unequalBallGap` has them. Checks no ranges and
 * creates no object: reads `places.radius`, writes `x` and `y`. Neighbours subtend θ with sin²(θ/2) = ((rᵢ + rⱼ)² − (aᵢ − aⱼ)²) / 4 aᵢ aⱼ by the law of cosines; the steps are multiplied as
 * complex numbers. A spread gap takes one arctangent, one sine and one cosine.
 *
 * @param bottomRadius Ro [mm], at least that of any two neighbours side by side: `tightestBottomRadius`
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
