/** A speed that should not be passed [1/min]. */
export interface SpeedLimit<Reason extends string> {
  readonly reason: Reason
  readonly speed: number
}

/** The part of the strength across the grain that is asked of wood with a groove and glue lines. Common practice, no source. */
const SPLITTING_SHARE = 0.1
/**
 * @param tensionStrength across the grain [MPa]
 * @param rimStress at one turn a minute [MPa]
 */
export const splittingSpeed = (tensionStrength: number, rimStress: number): number =>
  Math.sqrt((SPLITTING_SHARE * tensionStrength) / rimStress)

/** Limits from the lowest on. */
export type SpeedLimits<Reason extends string> = readonly [SpeedLimit<Reason>, ...SpeedLimit<Reason>[]]

export function lowestFirst<Reason extends string>(limits: readonly SpeedLimit<Reason>[]): SpeedLimits<Reason> {
  const [lowest, ...others] = limits.toSorted((one, other) => one.speed - other.speed)
  if (lowest === undefined) throw new RangeError('there must be a limit')
  return [lowest, ...others]
}
