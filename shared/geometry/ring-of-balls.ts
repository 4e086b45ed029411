import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { requireAboveZero, requireWhole } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/** A full ring needs a triangle of balls at least. */
export const FEWEST_BALLS = 3

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

/** Half the angle that two touching neighbours subtend at the ring's centre, asin(Dw / 2R). */
const halfStep = (pitchRadius: number, ballDiameter: number): number => Math.asin(ballDiameter / (2 * pitchRadius))

/**
 * Straight-line gap between the last ball and the first when all others are pushed together:
 * g(R) = 2 R sin(π − (Z − 1) asin(Dw / 2R)) − Dw. Below 0 the ring does not close. It grows with R all the way.
 *
 * @param pitchRadius R [mm], at least `leastPitchRadius`
 * @param ballDiameter Dw [mm], above 0
 * @param ballCount Z, whole, at least 3
 * @returns from −Dw up to (Z − 2) Dw, to within about Z Dw × 2^-52
 * @throws RangeError outside those ranges
 */
export function ballGap(pitchRadius: Mm, ballDiameter: Mm, ballCount: number): Mm {
  requireReach(pitchRadius, ballDiameter, ballCount)
  return mm(2 * pitchRadius * Math.sin(openHalfAngle(pitchRadius, ballDiameter, ballCount)) - ballDiameter)
}

function requireReach(pitchRadius: number, ballDiameter: Mm, ballCount: number): void {
  const least = leastPitchRadius(ballDiameter, ballCount)
  if (!(pitchRadius >= least * (1 - 4 * Number.EPSILON) && pitchRadius < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`pitchRadius must be at least ${least} mm and finite, got ${pitchRadius}`)
  }
}

/** Half the angle between the first and the last ball: π − (Z − 1) asin(Dw / 2R). */
const openHalfAngle = (pitchRadius: number, ballDiameter: number, ballCount: number): number =>
  Math.PI - (ballCount - 1) * halfStep(pitchRadius, ballDiameter)

/**
 * How fast the ball gap opens with the pitch radius:  dg/dR = 2 sin ψ + 2 (Z − 1) cos ψ tan α,
 * with α = asin(Dw / 2R) and ψ = π − (Z − 1) α. At exact closure it is 2 Z sin(π / Z): about 2π.
 *
 * @returns mm of gap per mm of pitch radius; same ranges as `ballGap`
 */
export function gapPerPitchRadius(pitchRadius: Mm, ballDiameter: Mm, ballCount: number): number {
  requireReach(pitchRadius, ballDiameter, ballCount)
  const open = openHalfAngle(pitchRadius, ballDiameter, ballCount)
  const tangent = Math.tan(halfStep(pitchRadius, ballDiameter))
  return 2 * Math.sin(open) + 2 * (ballCount - 1) * Math.cos(open) * tangent
}

/**
 * How the ball gap moves when all balls grow together and their centres stay on the same circle:
 * ∂g/∂Dw = −1 − (Z − 1) cos ψ / cos α. At exact closure it is −Z. What the seat adds is in `seat.ts`.
 *
 * @returns mm of gap per mm of ball diameter; same ranges as `ballGap`
 */
export function gapPerBallDiameterAtPitchRadius(pitchRadius: Mm, ballDiameter: Mm, ballCount: number): number {
  requireReach(pitchRadius, ballDiameter, ballCount)
  const open = openHalfAngle(pitchRadius, ballDiameter, ballCount)
  return -1 - ((ballCount - 1) * Math.cos(open)) / Math.cos(halfStep(pitchRadius, ballDiameter))
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
  const low = leastPitchRadius(ballDiameter, ballCount)
  if (!(gap > -ballDiameter && gap < (ballCount - 2) * ballDiameter)) {
    throw new RangeError(`gap must be above ${-ballDiameter} and below ${(ballCount - 2) * ballDiameter} mm, got ${gap}`)
  }
  let high = mm(closedPitchRadius(ballDiameter, ballCount) + Math.max(0, gap))
  while (ballGap(high, ballDiameter, ballCount) < gap) high = mm(high * 2)
  return mm(
    bracketedRoot(
      (radius) => [
        ballGap(mm(radius), ballDiameter, ballCount) - gap,
        gapPerPitchRadius(mm(radius), ballDiameter, ballCount),
      ],
      low,
      high,
    ),
  )
}
