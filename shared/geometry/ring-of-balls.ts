import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { requireAboveZero, requireWhole } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/** A full ring needs a triangle of balls at least. */
export const FEWEST_BALLS = 3

/** @throws RangeError unless the diameters of a ring of balls are three at least, each above 0 and finite */
export function requireDiameters(diameters: readonly number[]): void {
  requireWhole('number of balls', diameters.length, FEWEST_BALLS)
  for (const diameter of diameters) requireAboveZero('each diameter', diameter)
}

function requireBalls(ballDiameter: number, ballCount: number): void {
  requireAboveZero('ballDiameter', ballDiameter)
  requireWhole('ballCount', ballCount, FEWEST_BALLS)
}

/**
 * Pitch radius at which a full ring of equal, touching balls exactly closes:  Rc = Dw / (2 sin(π / Z))
 * Neighbouring centres are Dw apart and subtend 2π/Z at the ring's centre; half that isosceles triangle gives it.
 * The same as the chord for Z equal spaces on a circle (Machinery's Handbook, lengths of chords).
 *
 * @param ballDiameter Dw [mm], above 0
 * @param ballCount Z, whole, at least 3
 * @throws RangeError outside those ranges
 */
export function closedPitchRadius(ballDiameter: Mm, ballCount: number): Mm {
  requireBalls(ballDiameter, ballCount)
  return mm(ballDiameter / (2 * Math.sin(Math.PI / ballCount)))
}

/**
 * Least pitch radius at which the ring of Z balls can be spoken of at all: there the other Z − 1 balls alone close it,
 * and the ball gap is −Dw.
 */
export function leastPitchRadius(ballDiameter: Mm, ballCount: number): Mm {
  requireBalls(ballDiameter, ballCount)
  return mm(ballDiameter / (2 * Math.sin(Math.PI / (ballCount - 1))))
}

/**
 * Half the angle from the first ball's centre to the last one's, all pushed together:  (Z − 1) α, α = asin(Dw / 2R).
 * It is a half turn at `leastPitchRadius` and smaller in a wider ring.
 */
function halfRow(pitchRadius: number, ballDiameter: Mm, ballCount: number): number {
  requireBalls(ballDiameter, ballCount)
  const half = (ballCount - 1) * Math.asin(ballDiameter / (2 * pitchRadius))
  // NaN where not even two balls fit
  if (!(half > 0 && half <= Math.PI + ROUNDING)) {
    const least = leastPitchRadius(ballDiameter, ballCount)
    throw new RangeError(`pitchRadius must be at least ${least} mm and finite, got ${pitchRadius}`)
  }
  return half
}

/** The rounding that the arcsine and the product may add to a half turn. */
const ROUNDING = 8 * Number.EPSILON

/** tan α of α = asin(Dw / 2R). */
const tangent = (pitchRadius: number, ballDiameter: number): number =>
  ballDiameter / Math.sqrt((2 * pitchRadius - ballDiameter) * (2 * pitchRadius + ballDiameter))

/**
 * Straight-line gap between the last ball and the first when all others are pushed together:
 * g(R) = 2 R sin(π − (Z − 1) asin(Dw / 2R)) − Dw. Below 0 the ring does not close. It grows with R all the way.
 * The sine of π − x is taken as that of x: no digit is lost where the ring is wide and x small.
 *
 * @param pitchRadius R [mm], at least `leastPitchRadius`
 * @param ballDiameter Dw [mm], above 0
 * @param ballCount Z, whole, at least 3
 * @returns from −Dw up to (Z − 2) Dw, to within 4 Z Dw × 2^-52
 * @throws RangeError outside those ranges
 */
export function ballGap(pitchRadius: Mm, ballDiameter: Mm, ballCount: number): Mm {
  return mm(2 * pitchRadius * Math.sin(halfRow(pitchRadius, ballDiameter, ballCount)) - ballDiameter)
}

/**
 * How fast the ball gap opens with the pitch radius:  dg/dR = 2 sin ψ + 2 (Z − 1) cos ψ tan α,
 * with α = asin(Dw / 2R) and ψ = π − (Z − 1) α. At exact closure it is 2 Z sin(π / Z): about 2π.
 *
 * @returns mm of gap per mm of pitch radius; same ranges as `ballGap`
 */
export function gapPerPitchRadius(pitchRadius: Mm, ballDiameter: Mm, ballCount: number): number {
  const half = halfRow(pitchRadius, ballDiameter, ballCount)
  return 2 * Math.sin(half) - 2 * (ballCount - 1) * Math.cos(half) * tangent(pitchRadius, ballDiameter)
}

/**
 * How the ball gap moves when all balls grow together and their centres stay on the same circle:
 * ∂g/∂Dw = −1 − (Z − 1) cos ψ / cos α. At exact closure it is −Z. What the seat adds is in `seat.ts`.
 *
 * @returns mm of gap per mm of ball diameter; same ranges as `ballGap`
 */
export function gapPerBallDiameterAtPitchRadius(pitchRadius: Mm, ballDiameter: Mm, ballCount: number): number {
  const half = halfRow(pitchRadius, ballDiameter, ballCount)
  const cosine = ballDiameter / (2 * pitchRadius * tangent(pitchRadius, ballDiameter))
  return -1 + ((ballCount - 1) * Math.cos(half)) / cosine
}

/**
 * The pitch radius that leaves a given ball gap: the way back of `ballGap`, by a bracketed root find.
 *
 * @param gap g [mm], above −Dw and below (Z − 2) Dw, which a groove of any size never quite reaches
 * @returns R [mm], to 1e-12 relative for gaps up to Dw (0.9 Dw for three balls); nearer to (Z − 2) Dw the gap
 *   hardly depends on the radius any more, and the radius is as uncertain as that makes it
 * @throws RangeError outside those ranges
 */
export function pitchRadiusForGap(gap: Mm, ballDiameter: Mm, ballCount: number): Mm {
  const closed = closedPitchRadius(ballDiameter, ballCount)
  if (!(gap > -ballDiameter && gap < (ballCount - 2) * ballDiameter)) {
    throw new RangeError(
      `gap must be above ${-ballDiameter} and below ${(ballCount - 2) * ballDiameter} mm, got ${gap}`,
    )
  }
  const beyond = (radius: number): number => ballGap(mm(radius), ballDiameter, ballCount) - gap
  const low = gap < 0 ? leastPitchRadius(ballDiameter, ballCount) : closed
  // a gap that is 0 within rounding, or as good as −Dw
  if (beyond(low) >= 0) return low
  let high = closed + Math.max(0, gap)
  while (beyond(high) < 0) high *= 2
  return mm(bracketedRoot(beyond, low, high))
}
