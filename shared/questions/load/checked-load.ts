import type { BearingByArrangement } from '#shared/bearing/arrangements.ts'
import type { LoadByBall, SharedLoad } from '#shared/contact/load-distribution.ts'
import type { ResolvedLoad, RING_LOAD_CHECK } from './input.ts'
import type { DentLimit, Limit } from './limits.ts'
import type { BallSeat, SeatLoad } from './seat-load.ts'
import type { SpeedLimits } from './speed-limits.ts'
import type { SpinLoads, TurnRatios } from './speeds.ts'

export const SPEED_REASONS = ['balls-dent-groove', 'ring-splits'] as const
export type SpeedReason = (typeof SPEED_REASONS)[number]

/** What the load and the speed do to a bearing. Loads in newtons, pressures in megapascals. */
export interface CheckedLoad {
  readonly load: ResolvedLoad
  readonly bearing: BearingByArrangement[(typeof RING_LOAD_CHECK.serves)[number]]
  readonly sharing: {
    /** A ball right under the load. */
    readonly underBall: LoadByBall
    /** Two balls astride it. */
    readonly astride: LoadByBall
    readonly byIntegral: SharedLoad
  }
  readonly outerRing: SeatLoad
  readonly innerRing: SeatLoad
  /** Which side is dented: the rings, or wooden balls that are softer. */
  readonly softer: BallSeat['softer']
  /** Of that side, as a pressure, and the limit of compression of the ring's wood across the grain. */
  readonly hardness: number
  readonly compressionLimit: number
  readonly firstMark: Limit
  readonly dent: DentLimit
  readonly ratios: TurnRatios
  /** At one turn a minute. */
  readonly spin: SpinLoads
  /** At the speed asked about. */
  readonly spun?: SeatLoad
  /** All of them, the lowest first. */
  readonly speedLimits: SpeedLimits<SpeedReason>
}
