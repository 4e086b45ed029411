import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { Traits } from '#shared/bearing/traits.ts'
import { GRAVITY } from '#shared/contact/turntable.ts'
import type { ContactWood } from '#shared/data/contact-woods.ts'
import type { Mm } from '#shared/units/length.ts'
import type { TurningRing } from './fields.ts'
import type { BallBody } from './seat-load.ts'

/*
 * Turns of each part per turn of one ring while the other is at rest; balls roll and do not slide.
 */

/** Turns, and balls that pass, for each turn of the ring. */
export interface TurnRatios {
  /** Turns of the ball set round the ring, with whatever keeps the balls apart. */
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
 * Rolling Bearing Analysis, chapter 8, as quoted: `harris-rolling`).
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
export const PER_RPM = (2 * Math.PI) / 60
/** kg/m³ times mm³ is so many kg. */
const TO_KG = 1e-9
/** kg/m³ times mm² is so many kg/m, which over a second squared is Pa. */
const TO_MPA = 1e-12

/** Mass of one rolling element [kg]. */
export function ballMass({ ballDiameter: diameter, input }: ResolvedBalls, { density }: BallBody): number {
  const { length } = input.balls
  const across = (Math.PI / 4) * diameter * diameter
  return density * TO_KG * across * (length ?? (2 / 3) * diameter)
}

/** m ω² R of one ball at one turn a minute of the part that turns [N]. */
export const outwardForce = (mass: number, pitchRadius: number, ballSet: number): number =>
  (mass * ballSet * PER_RPM * ballSet * PER_RPM * pitchRadius) / 1000

/**
 * Hoop stress of a spinning disc at its hole, where it is highest, at one turn a minute [MPa]:
 * σ = ρ ω² / 4 · ((3 + ν) b² + (1 − ν) a²), a and b its radii (any handbook of strength). Grooves, grain and joints are left out.
 */
export function ownPull({ density, poissonsRatio: ratio }: ContactWood, hole: number, outside: number): number {
  const squares = (3 + ratio) * outside * outside + (1 - ratio) * hole * hole
  return (density * TO_MPA * PER_RPM * PER_RPM * squares) / 16
}

/** A speed that should not be passed [1/min]. */
export interface SpeedLimit<Reason extends string> {
  readonly reason: Reason
  readonly speed: number
}

/** Limits from the lowest on. */
export type SpeedLimits<Reason extends string> = readonly [SpeedLimit<Reason>, ...SpeedLimit<Reason>[]]

/** A limit that is endless never happens, and is left out. */
export function lowestFirst<Reason extends string>(limits: readonly SpeedLimit<Reason>[]): SpeedLimits<Reason> {
  const [lowest, ...others] = limits
    .filter(({ speed }) => speed < Number.POSITIVE_INFINITY)
    .toSorted((one, other) => one.speed - other.speed)
  if (lowest === undefined) throw new RangeError('there must be a limit')
  return [lowest, ...others]
}

/** Highest speed of a finger or a crank [1/min]. Common practice, no source. */
export const BY_HAND = 120
/** A hand keeps to this part of the speed at which something goes wrong: to half of its force. Common practice, no source. */
const HAND_SHARE = Math.SQRT1_2

/** How fast the bearing may be turned by hand: nothing may happen there yet, and no limit is known exactly. */
export const handSpeed = ([lowest]: SpeedLimits<string>): number => Math.min(BY_HAND, HAND_SHARE * lowest.speed)

export const SHARED_SPEED_REASONS = ['balls-rub', 'runs-out', 'glass-at-risk', 'balls-dent-groove'] as const
type SharedReason = (typeof SHARED_SPEED_REASONS)[number]

/** Faster than that, dry surfaces that rub wear, squeal and grow warm [mm/s]. Common practice, no source. */
const RUBBING = 1000
/** Two glass balls that meet faster than that may chip: a fall of 50 mm [mm/s]. Common practice, no source. */
const MEETING = 1000
/** Least run-out of turned parts [mm]. Common practice, no source. */
const RUNOUT = 0.2
/** From this part of the weight on, what runs out shakes the stand. Common practice, no source. */
const SHAKING = 1 / 4
/** The part of the strength across the grain that is expected of wood with a groove and glue lines. Common practice, no source. */
const SPLITTING_SHARE = 0.1

/** The surfaces that meet where balls are kept apart, and where they keep themselves apart, each turning against the other. */
export const rubbingSurfaces = ({ ballSet }: Traits): 1 | 2 => (ballSet === 'full' ? 2 : 1)

/** How fast balls rub at one turn a minute, on one another or on what keeps them apart [mm/s]. */
export const rubbingSpeed = (
  { traits, ballDiameter }: ResolvedBalls,
  { ballSpin }: Pick<TurnRatios, 'ballSpin'>,
): number => (rubbingSurfaces(traits) * ballSpin * PER_RPM * ballDiameter) / 2

/** The speed limits of any bearing: rubbing, run-out, glass, and balls that dent the groove by their own force. */
export function sharedSpeedLimits(
  bearing: { readonly resolved: ResolvedBalls; readonly pitchRadius: Mm },
  ratios: Pick<TurnRatios, 'ballSet' | 'ballSpin'>,
  dented: { readonly play: number; readonly ballLoad: number; readonly atOneTurn: number },
): readonly SpeedLimit<SharedReason>[] {
  const { resolved, pitchRadius } = bearing
  const runout = RUNOUT + dented.play / 2 + resolved.ballScatter
  const limits: readonly SpeedLimit<SharedReason>[] = [
    { reason: 'balls-rub', speed: RUBBING / rubbingSpeed(resolved, ratios) },
    { reason: 'runs-out', speed: Math.sqrt((SHAKING * GRAVITY) / runout) / PER_RPM },
    { reason: 'balls-dent-groove', speed: Math.sqrt(dented.ballLoad / dented.atOneTurn) },
  ]
  return resolved.input.balls.material === 'glass'
    ? [...limits, { reason: 'glass-at-risk', speed: MEETING / (ratios.ballSet * PER_RPM * pitchRadius) }]
    : limits
}

/**
 * The speed at which the wood at the rim is at risk.
 *
 * @param rimStress at one turn a minute [MPa]
 */
export const splittingSpeed = ({ tensionStrength }: ContactWood, rimStress: number): number =>
  Math.sqrt((SPLITTING_SHARE * tensionStrength) / rimStress)
