import type { Bearing } from '#shared/bearing/bearing.ts'
import type { ContactWood } from '#shared/data/contact-woods.ts'
import type { TurningRing } from './input.ts'
import type { BallBody, BallSeat } from './seat-load.ts'

/*
 * What turns how fast. Per turn of the ring that turns, the other standing still; balls roll and do not slide.
 */

/** Turns, and balls that pass, for each turn of the ring. */
export interface TurnRatios {
  /** Turns of the ball set round the ring: the cage of a bearing that has one. */
  readonly ballSet: number
  /** Turns of a ball about itself, seen from the ball set. */
  readonly ballSpin: number
  /** Balls that pass a point of the outer ring, of the inner ring. */
  readonly outerPasses: number
  readonly innerPasses: number
}

/**
 * Kinematics of rolling: a ball touches at Ro and Ri, at both its surface goes with the ring's. With the outer ring still
 * and both seats on the bottom it is the usual (1 − γ)/2, (1 − γ²)/2γ, Z (1 − γ)/2, Z (1 + γ)/2, γ = Dw/Dpw (Harris,
 * Rolling Bearing Analysis, chapter 8; from memory).
 *
 * @param radii where the balls touch, and of the pitch circle between [mm]
 */
export function turnRatios(
  radii: { readonly outer: number; readonly pitch: number; readonly inner: number },
  ballCount: number,
  turning: TurningRing,
): TurnRatios {
  const across = radii.outer - radii.inner
  const [own, far] =
    turning === 'inner-ring' ? [radii.inner, radii.outer - radii.pitch] : [radii.outer, radii.pitch - radii.inner]
  const ballSet = (own * far) / (across * radii.pitch)
  const spin = (turning === 'inner-ring' ? -own : own) / across
  const [still, moving] = [ballCount * ballSet, ballCount * Math.abs(1 - ballSet)]
  return {
    ballSet,
    ballSpin: Math.abs(spin - ballSet),
    outerPasses: turning === 'inner-ring' ? still : moving,
    innerPasses: turning === 'inner-ring' ? moving : still,
  }
}

/** Radians a second at one turn a minute. */
const PER_RPM = (2 * Math.PI) / 60
/** kg/m³ times mm³ times mm is so many kg m. */
const TO_KG_M = 1e-12
/** kg/m³ times mm² is so many kg/m, which over a second squared is Pa. */
const TO_MPA = 1e-12

/** All at one turn a minute: each goes with the square of the speed. */
export interface SpinLoads {
  /** One ball on the outer groove [N]. */
  readonly ballForce: number
  /** Largest pull round the outer ring: its own where it turns, and that of the balls which press it outward [MPa]. */
  readonly outerRimStress: number
  /** The same of the inner ring, where it turns [MPa]. */
  readonly innerRimStress: number
}

/**
 * What the spinning does. A ball presses on the outer groove by m ω² R, ω of the ball set. A ring that turns pulls itself
 * apart most at its hole: σ = ρ ω² / 4 · ((3 + ν) b² + (1 − ν) a²), a and b its radii (rotating disc with a hole, any
 * handbook of strength). The balls' press Z F / 2π is borne by the wood behind the groove, as wide as the ring. Estimates:
 * grooves, grain and joints are left out.
 */
export function spinLoads(
  bearing: Bearing,
  ball: BallBody,
  wood: ContactWood,
  ratios: TurnRatios,
  turning: TurningRing,
): SpinLoads {
  const { outerRing: outer, innerRing: inner, pitchRadius, settled } = bearing
  const diameter = settled.ballDiameter
  const set = ratios.ballSet * PER_RPM
  const { length } = settled.input.balls
  const volume = length === undefined ? sphere(diameter) : (Math.PI / 4) * diameter * diameter * length
  const ballForce = ball.density * volume * TO_KG_M * set * set * pitchRadius
  const press = (settled.input.balls.count * ballForce) / (2 * Math.PI * outer.wall * outer.width)
  const own = (hole: number, outside: number): number => {
    const { density, poissonsRatio: ratio } = wood
    const squares = (3 + ratio) * outside * outside + (1 - ratio) * hole * hole
    return (density * TO_MPA * PER_RPM * PER_RPM * squares) / 16
  }
  return {
    ballForce,
    outerRimStress: press + (turning === 'outer-ring' ? own(outer.landDiameter, outer.outsideDiameter) : 0),
    innerRimStress: turning === 'inner-ring' ? own(inner.boreDiameter, inner.landDiameter) : 0,
  }
}

const sphere = (diameter: number): number => (Math.PI / 6) * diameter * diameter * diameter

/** Where the balls touch, for `turnRatios`. */
export const rollingRadii = (bearing: Bearing, outer: BallSeat, inner: BallSeat) => ({
  outer: outer.contactRadius,
  pitch: bearing.pitchRadius,
  inner: inner.contactRadius,
})
