import { requireAboveZero, requireWhole } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'

const HALF_TURN = 180
/** A filling angle that is a half turn within rounding is a half turn. */
const ROUNDING = 1e-9

/**
 * The arc that balls lying side by side fill:  φ = 2 (Z − 1) asin(Dw / Dpw), from the first centre to the last
 * (Harris, Rolling Bearing Analysis, assembly angle, exact form).
 *
 * @param ballCount whole, at least 1
 * @param pitchDiameter Dpw, at least Dw
 * @returns degrees
 * @throws RangeError outside those ranges
 */
export function fillingAngle(ballCount: number, ballDiameter: Mm, pitchDiameter: Mm): number {
  requireWhole('ballCount', ballCount, 1)
  requireAboveZero('ballDiameter', ballDiameter)
  if (!(pitchDiameter >= ballDiameter))
    throw new RangeError(`pitchDiameter must be at least ${ballDiameter} mm, got ${pitchDiameter}`)
  return (2 * (ballCount - 1) * Math.asin(ballDiameter / pitchDiameter) * HALF_TURN) / Math.PI
}

/**
 * The pitch diameter on which so many balls, lying side by side, fill just a half turn: the way back of `fillingAngle`.
 *
 * @param ballCount whole, at least 2
 */
export function pitchDiameterForHalfTurn(ballCount: number, ballDiameter: Mm): Mm {
  requireWhole('ballCount', ballCount, 2)
  return mm(ballDiameter / Math.sin(Math.PI / (2 * (ballCount - 1))))
}

/** Two rings of one piece that are to be filled, the inner ring set aside in the outer one. */
export interface RingsToFill {
  readonly ballDiameter: Mm
  readonly pitchDiameter: Mm
  /** Radial space between the lands, rings concentric. */
  readonly landGap: Mm
  /** Radial internal clearance, the whole travel from side to side. */
  readonly play: Mm
}

/** The filling of two one-piece rings: the inner ring aside, balls into the crescent, then spread by a cage. */
export interface EccentricFilling {
  /** The arc that balls side by side may fill, from the first centre to the last, in degrees: 180 and above. */
  readonly limit: number
  /** Most balls whose filling angle is within that. */
  readonly mostBalls: number
  /** Whether a ball passes between the lands where they stand widest apart, the inner ring all the way to one side. */
  readonly roomBetweenLands: boolean
}

/**
 * Eccentric filling of two one-piece rings. Pushed aside until the lands meet, the inner ring leaves twice the land gap
 * at the far side: a ball needs that to be Dw, which comes to groove depths (as the balls sit) of at most half a ball
 * in sum, the play aside.
 *
 * @throws RangeError as `fillingAngle`
 */
export function eccentricFilling(rings: RingsToFill): EccentricFilling {
  const { ballDiameter, pitchDiameter, landGap } = rings
  requireAboveZero('ballDiameter', ballDiameter)
  const perBall = fillingAngle(2, ballDiameter, pitchDiameter)
  const limit = fillingLimit(rings)
  const beside = 1 + Math.floor(limit / perBall + ROUNDING)
  return {
    limit,
    mostBalls: Math.min(beside, Math.floor((2 * HALF_TURN) / perBall + ROUNDING)),
    roomBetweenLands: 2 * landGap >= ballDiameter * (1 - ROUNDING),
  }
}

/**
 * How far round the balls may reach while the inner ring comes back to the middle. Set aside by δ it stands clear of a ball
 * seated outside, at the angle θ from the wide side, where R² + δ² + 2 R δ cos θ ≥ (R − Gr/2)², which with q = R Gr − Gr²/4 is
 *
 *   −cos θ ≤ (δ + q/δ) / 2R
 *
 * and hardest to keep at δ = √q, if it comes by there from the least δ that lets a ball in, Dw − s. Without play that is a half
 * turn, as the handbooks have it; a little play lets the last balls reach a little past it. Rigid balls. Derived here, no
 * source; tested by coordinates.
 */
function fillingLimit({ ballDiameter, pitchDiameter, landGap, play }: RingsToFill): number {
  const radius = pitchDiameter / 2
  const least = ballDiameter - landGap
  // Lands a ball apart let one in anywhere.
  if (!(least > 0)) return 2 * HALF_TURN
  const freed = radius * play - (play * play) / 4
  const hardest = Math.min(least, Math.sqrt(freed))
  const past = hardest > 0 ? (hardest + freed / hardest) / (2 * radius) : 0
  return HALF_TURN + (2 * Math.asin(Math.min(1, past)) * HALF_TURN) / Math.PI
}
