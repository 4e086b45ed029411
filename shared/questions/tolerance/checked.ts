import type { FullRingBearing, ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { Band } from '#shared/statistics/monte-carlo.ts'
import type { ClimateMovement } from './climate-movement.ts'
import type { Differences } from './differences.ts'
import type { ToleranceCheckInput } from './input.ts'

/** A tolerance check with nothing left open, of some kind of bearing. */
interface CheckOf<B> {
  readonly input: Required<Omit<ToleranceCheckInput, 'year' | 'trials' | 'ballsAsDesigned'>> &
    Pick<ToleranceCheckInput, 'year' | 'trials'>
  readonly bearing: B
  readonly differences: Differences
  /** The movement of this bearing with the weather. Absent if the question has no year. */
  readonly climate?: ClimateMovement
  /** From where on a gap is good: the last ball is in, which is not known beforehand, and the gap is `minBallGap`. */
  readonly gapLimits: Band
  readonly playLimits: Band
}

export type RingCheck = CheckOf<FullRingBearing>
export type PlateCheck = CheckOf<ThrustBearing>
export type Check = RingCheck | PlateCheck

export const isOfPlates = (check: Check): check is PlateCheck => 'plate' in check.bearing
