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

/** What two one-piece rings can be filled with: the inner ring aside, balls into the crescent, then spread by a cage. */
export interface EccentricFilling {
  /** Most balls whose filling angle is at most a half turn. */
  readonly mostBalls: number
  /** Whether a ball passes between the lands where they stand widest apart, the inner ring all the way to one side. */
  readonly roomBetweenLands: boolean
}

/**
 * Eccentric filling of two one-piece rings. Pushed aside until the lands meet, the inner ring leaves twice the land gap
 * at the far side: a ball needs that to be Dw, which comes to groove depths (as the balls sit) of at most half a ball
 * in sum, the play aside.
 *
 * @param landGap radial space between the lands, rings concentric [mm]
 */
export function eccentricFilling(ballDiameter: Mm, pitchDiameter: Mm, landGap: Mm): EccentricFilling {
  requireAboveZero('ballDiameter', ballDiameter)
  const perBall = fillingAngle(2, ballDiameter, pitchDiameter)
  return {
    mostBalls: 1 + Math.floor(HALF_TURN / perBall + ROUNDING),
    roomBetweenLands: 2 * landGap >= ballDiameter * (1 - ROUNDING),
  }
}
