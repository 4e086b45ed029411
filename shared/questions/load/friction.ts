import type { Bounds } from '#shared/bearing/field.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import { LEVER_ARM, RUBBING } from '#shared/data/rolling.ts'
import { PER_RPM, rubbingSpeed, rubbingSurfaces, type TurnRatios } from './speeds.ts'

/** The torque that turns the bearing, from a smooth one to a rough one. */
export interface Friction {
  /** [N mm] under the load. */
  readonly startingTorque: Bounds
  readonly coasting: Coasting
  /** Surface speed of balls on one another, or on what keeps them apart, turned by hand [mm/s]. */
  readonly rubbingSpeed: number
  /** Whether balls rub on one another, each turning against the other. */
  readonly ballsRub: boolean
}

/** How a bearing that was spun by hand runs on. */
export interface Coasting {
  /** Turns a minute at which the hand lets go. */
  readonly from: number
  readonly turns: Bounds
  readonly seconds: Bounds
}

/**
 * The moment that holds the turning part back. At each of its two contacts a ball is held back by f Q, f the lever arm of rolling,
 * and turns `ballSpin` times a turn of the part: 2 f ΣQ · ballSpin. A ball that takes 2 f Q / Rb to roll presses its neighbour by as
 * much at the most, and rubs on it at twice its own surface speed: μ times that moment once more for each surface. Derived here.
 *
 * @param pressing ΣQ of all balls [N]
 */
export function startingTorque(
  { input, traits }: ResolvedBalls,
  { ballSpin }: Pick<TurnRatios, 'ballSpin'>,
  pressing: number,
): Bounds {
  const { min, max } = LEVER_ARM[input.balls.material ?? 'wood']
  const perArm = 2 * pressing * ballSpin
  return { min: min * perArm, max: max * perArm * (1 + rubbingSurfaces(traits) * RUBBING.max) }
}

/** A body that the hand spins: its moment of inertia [kg mm²], and what presses on the balls then [N]. */
export interface Spun {
  readonly inertia: number
  readonly pressing: number
}

export function frictionOf(
  resolved: ResolvedBalls,
  ratios: Pick<TurnRatios, 'ballSpin'>,
  pressing: number,
  { hand, spun, spunRatios }: { readonly hand: number; readonly spun: Spun; readonly spunRatios: typeof ratios },
): Friction {
  const turn = hand * PER_RPM
  const torque = startingTorque(resolved, spunRatios, spun.pressing)
  // kg mm²/s² is a thousandth of N mm
  const [energy, swing] = [(spun.inertia * turn * turn) / 2000, (spun.inertia * turn) / 1000]
  const range = (of: number, per = 1): Bounds => ({ min: of / (per * torque.max), max: of / (per * torque.min) })
  return {
    startingTorque: startingTorque(resolved, ratios, pressing),
    coasting: { from: hand, turns: range(energy, 2 * Math.PI), seconds: range(swing) },
    rubbingSpeed: hand * rubbingSpeed(resolved, ratios),
    ballsRub: rubbingSurfaces(resolved.traits) === 2,
  }
}
