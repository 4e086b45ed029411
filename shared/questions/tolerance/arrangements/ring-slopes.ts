import type { Slopes } from '#shared/questions/tolerance/check-model.ts'
import type { RingCheck } from '#shared/questions/tolerance/checked.ts'
import { innerOf, outerOf, type SeatSlopes, seatSlopes } from '#shared/questions/tolerance/seats.ts'

/** The slopes that only plates have. */
const NOT_OF_RINGS = { grooveCircleRadius: 0, grooveDepth: 0 } as const

/**
 * Slopes of the ball gap at the design, all balls alike, whatever they sit on. Centres at R, α = asin(Dw / 2R), half the
 * row H = (Z − 1) α. A ball with n neighbours in the row (1 at either end, e = 1, else 2) has
 *
 *   ∂g/∂a = e sin H − n cos H tan α      ∂g/∂r = n cos H / cos α − e
 *
 * from g = 2 R sin H − Dw: where a centre stands turns the row by −tan α / R for each neighbour, a radius by 1 / (R cos α).
 * On the bottom, at exact closure: −(1 + sin(π/Z)) per ball diameter, and 2 Z sin(π/Z) per groove radius.
 */
export function gapSlopes({ bearing }: RingCheck): Slopes {
  const { ballDiameter, input } = bearing.resolved
  const { count } = input.balls
  const alpha = Math.asin(ballDiameter / (2 * bearing.pitchRadius))
  const [sine, cosine] = [Math.sin((count - 1) * alpha), Math.cos((count - 1) * alpha)]
  const { perSeatRadius, perDepth } = outerSlopes(bearing)
  const balls = Array.from({ length: count }, (_, ball) => {
    const ends = ball === 0 || ball === count - 1 ? 1 : 0
    const neighbours = 2 - ends
    return {
      perCentre: ends * sine - neighbours * cosine * Math.tan(alpha),
      perRadius: (neighbours * cosine) / Math.cos(alpha) - ends,
    }
  })
  const perCentre = balls.reduce((sum, ball) => sum + ball.perCentre, 0)
  const eachBall = balls.map((ball) => (ball.perRadius - ball.perCentre * perSeatRadius) / 2)
  return {
    eachBall,
    of: {
      ballLotMean: eachBall.reduce((sum, slope) => sum + slope, 0),
      outerGrooveBottomRadius: perCentre * perDepth,
      innerGrooveBottomRadius: 0,
      // Of second order: on the mean over the ring the path stays where it is.
      outOfRound: 0,
      finishFilm: -perCentre * perSeatRadius,
      ...NOT_OF_RINGS,
    },
    perUnevenness: 0,
    ofRing: { outer: perCentre, inner: 0 },
  }
}

/**
 * Slopes of the play, 2 (where centres stand in the outer ring − in the inner ring), less twice the lobes of each. Which three
 * balls hold the ring depends on all of them: on the mean over the ring each takes its part, and unequal ones take more.
 */
export function playSlopes({ bearing }: RingCheck): Slopes {
  const { count } = bearing.resolved.input.balls
  const [outer, inner] = [outerSlopes(bearing), seatSlopes(innerOf(bearing), bearing.resolved.ballDiameter / 2)]
  const perSeatRadius = -2 * (outer.perSeatRadius + inner.perSeatRadius)
  return {
    eachBall: Array.from({ length: count }, () => perSeatRadius / 2 / count),
    of: {
      ballLotMean: perSeatRadius / 2,
      outerGrooveBottomRadius: 2 * outer.perDepth,
      innerGrooveBottomRadius: -2 * inner.perDepth,
      outOfRound: -2,
      finishFilm: perSeatRadius,
      ...NOT_OF_RINGS,
    },
    perUnevenness: -perSeatRadius / 4,
    ofRing: { outer: 2, inner: -2 },
  }
}

const outerSlopes = (bearing: RingCheck['bearing']): SeatSlopes =>
  seatSlopes(outerOf(bearing), bearing.resolved.ballDiameter / 2)
