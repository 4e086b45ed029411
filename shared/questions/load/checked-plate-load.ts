import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { Mm } from '#shared/units/length.ts'
import type { ResolvedPlateLoad } from './input.ts'
import type { DentLimit, Limit } from './limits.ts'
import type { BallSeat, SeatLoad } from './seat-load.ts'
import type { SpeedLimit } from './speed-limits.ts'
import type { PlateSpinLoads, PlateTurnRatios } from './speeds.ts'

export const PLATE_SPEED_REASONS = ['balls-dent-groove', 'balls-climb-out', 'plate-splits'] as const
export type PlateSpeedReason = (typeof PLATE_SPEED_REASONS)[number]

/** What the load and the speed do to a turntable. Loads in newtons, pressures in megapascals. */
export interface CheckedPlateLoad {
  readonly load: ResolvedPlateLoad
  readonly bearing: ThrustBearing
  readonly sharing: PlateSharing
  /** Absent where the design says that its balls are all of one size. */
  readonly uneven?: Uneven
  /** The most loaded ball in either groove. */
  readonly plates: SeatLoad
  readonly softer: BallSeat['softer']
  readonly hardness: number
  readonly compressionLimit: number
  readonly firstMark: Limit<'plates'>
  readonly dent: DentLimit<'plates'>
  readonly ratios: PlateTurnRatios
  /** At one turn a minute. */
  readonly spin: PlateSpinLoads
  /** At the speed asked about: a ball on the outer flank of either groove. */
  readonly spun?: SeatLoad
  /** All of them, the lowest first; none where the load stands beside the axis. */
  readonly speedLimits: readonly SpeedLimit<PlateSpeedReason>[]
}

/** How equal balls share the load. */
export interface PlateSharing {
  /** Of the most loaded ball [N], however the balls stand. */
  readonly most: number
  /** Of each ball [N], one of them nearest to the load, on round the circle. */
  readonly each: readonly number[]
  /** By how much the plates come together over the middle; below 0 where a load far out lifts it there. */
  readonly approach: Mm
  /** By how much more over the outside on the side of the load than on the other side. */
  readonly lean: Mm
}

/** What it changes that balls are of unequal size: at first three of the tallest carry, until the wood under them has given. */
export interface Uneven {
  /** One of the three, where they stand so that it carries most. */
  readonly tallest: SeatLoad
  /** Loads of the turntable that mark it first, and dent it as deep as is borne, if no others came to carry [N]. */
  readonly firstMark: number
  readonly dent: number
  /** From about this load on the smallest carries too, the plate level and the wood elastic [N]. */
  readonly allCarryFrom: number
}
