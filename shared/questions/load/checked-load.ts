import type { Bounds } from '#shared/bearing/field.ts'
import type { PartName } from '#shared/bearing/refusal.ts'
import type { Substitute } from '#shared/data/contact-woods.ts'
import { contactWood, substitutesFor } from '#shared/data/contact-woods.ts'
import type { Mm } from '#shared/units/length.ts'
import type { Friction } from './friction.ts'
import type { ResolvedLoadOptions } from './input.ts'
import type { Limit, Use } from './limits.ts'
import type { BallSeat, SeatLoad } from './seat-load.ts'
import type { SpeedLimits } from './speeds.ts'

/** The load below which no ball leaves a mark, by use, and what it costs when the bearing is turned by hand. */
export interface WorkingLoad<Part extends PartName> {
  readonly loads: Readonly<Record<Use, Limit<Part>>>
  /** How far the bearing gives under the load of a slow hand, beyond its play. */
  readonly gives: Mm
  /** [N mm] */
  readonly startingTorque: Bounds
  /** How far it rises and falls as balls pass, and how often in a second. */
  readonly rumble: { readonly height: Mm; readonly frequency: number }
}

/** The effect of load and speed on a bearing of any arrangement. Loads in newtons, pressures in megapascals. */
export interface CheckedLoad<Part extends PartName = PartName, Reason extends string = string> {
  readonly load: ResolvedLoadOptions & { readonly newtons: number }
  /** The most loaded ball, and what it does to each of its seats. */
  readonly most: number
  readonly seats: readonly { readonly part: Part; readonly seat: SeatLoad }[]
  /** The side that is dented: the wood of the bearing, or wooden balls that are softer. */
  readonly softer: BallSeat['softer']
  /** Hardness of that side, as a pressure, and the limit of compression of the bearing's wood across the grain. */
  readonly hardness: number
  readonly compressionLimit: number
  readonly substitutes: readonly Substitute[]
  readonly workingLoad: WorkingLoad<Part>
  readonly firstMark: Limit<Part>
  readonly ruin: Limit<Part>
  readonly friction: Friction
  /** Turns a minute that are safe by hand. */
  readonly handTurned: number
  /** All of them, the lowest first. */
  readonly speedLimits: SpeedLimits<Reason>
}

/** The wood figures of a check. */
export const woodFigures = ({ wood, ballWood }: ResolvedLoadOptions, { softer, hardness }: BallSeat) => ({
  softer,
  hardness,
  compressionLimit: contactWood(wood).compressionLimit,
  substitutes: [...new Set([wood, ballWood ?? wood])].flatMap(substitutesFor),
})
