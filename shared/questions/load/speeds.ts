import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import type { ContactWood } from '#shared/data/contact-woods.ts'
import type { TurningRing } from './fields.ts'
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

/** The same of plates, the one standing still like the other: as many balls pass a point of either. */
export interface PlateTurnRatios extends Pick<TurnRatios, 'ballSet' | 'ballSpin'> {
  readonly passes: number
}

/**
 * Rolling between flat plates, one of which turns: a contact angle of 90° in the usual (1 − γ cos α)/2, (1 − γ² cos² α)/2γ and
 * Z (1 ∓ γ cos α)/2, γ = Dw/Dpw (Harris, chapter 8; from memory). The ball set turns half as fast as the plate, and a ball
 * rolls on what lies ρ above its lowest point: R / 2ρ turns. Across the groove it slides a little, which is left out.
 *
 * @param rollingRadius ρ: of the ball, or less where it sits on edges [mm]
 */
export const plateTurnRatios = (pitchRadius: number, rollingRadius: number, ballCount: number): PlateTurnRatios => ({
  ballSet: 1 / 2,
  ballSpin: pitchRadius / (2 * rollingRadius),
  passes: ballCount / 2,
})

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
  bearing: RingPair,
  ball: BallBody,
  wood: ContactWood,
  ratios: TurnRatios,
  turning: TurningRing,
): SpinLoads {
  const { outerRing: outer, innerRing: inner, resolved } = bearing
  const ballForce = outwardForce(bearing, ball, ratios.ballSet)
  const press = (resolved.input.balls.count * ballForce) / (2 * Math.PI * outer.wall * outer.width)
  return {
    ballForce,
    outerRimStress: press + (turning === 'outer-ring' ? ownPull(wood, outer.landDiameter, outer.outsideDiameter) : 0),
    innerRimStress: turning === 'inner-ring' ? ownPull(wood, inner.boreDiameter, inner.landDiameter) : 0,
  }
}

/** The same of plates, at one turn a minute of one of them. */
export interface PlateSpinLoads {
  /** One ball outward [N]: each plate's groove takes half of it, on its outer flank. */
  readonly ballForce: number
  /** Largest pull round the plate that turns: its own, and that of the balls on the wood outside its groove [MPa]. */
  readonly rimStress: number
}

/** As `spinLoads`, the wood outside the groove as thick as the plate. */
export function plateSpinLoads(
  bearing: ThrustBearing,
  ball: BallBody,
  wood: ContactWood,
  { ballSet }: PlateTurnRatios,
): PlateSpinLoads {
  const { plate, resolved } = bearing
  const ballForce = outwardForce(bearing, ball, ballSet)
  const press = (resolved.input.balls.count * (ballForce / 2)) / (2 * Math.PI * plate.wall * plate.thickness)
  return { ballForce, rimStress: press + ownPull(wood, plate.boreDiameter, plate.outsideDiameter) }
}

/** m ω² R of one ball. */
function outwardForce(
  { resolved, pitchRadius }: Pick<RingPair, 'pitchRadius'> & { readonly resolved: ResolvedBalls },
  ball: BallBody,
  ballSet: number,
): number {
  const diameter = resolved.ballDiameter
  const set = ballSet * PER_RPM
  const { length } = resolved.input.balls
  const volume = length === undefined ? sphere(diameter) : (Math.PI / 4) * diameter * diameter * length
  return ball.density * volume * TO_KG_M * set * set * pitchRadius
}

/** Of a disc that turns, at its hole [MPa]. */
function ownPull({ density, poissonsRatio: ratio }: ContactWood, hole: number, outside: number): number {
  const squares = (3 + ratio) * outside * outside + (1 - ratio) * hole * hole
  return (density * TO_MPA * PER_RPM * PER_RPM * squares) / 16
}

const sphere = (diameter: number): number => (Math.PI / 6) * diameter * diameter * diameter

/** Where the balls touch, for `turnRatios`. */
export const rollingRadii = (bearing: RingPair, outer: BallSeat, inner: BallSeat) => ({
  outer: outer.contactRadius,
  pitch: bearing.pitchRadius,
  inner: inner.contactRadius,
})
