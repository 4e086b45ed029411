import { normalCdf } from '#shared/statistics/normal.ts'
import { ENTRY_DEVIATION, ENTRY_MEAN } from './entry-gap.ts'

/** How far wood gives when a ball is pressed in, in ball diameters: for rings where rigid balls need no gap. Common practice, no source. */
const PRESSED_IN = 0.002

/**
 * The gap at which the last ball of a ring goes in: one number for one ring, not known beforehand. Rigid balls in rigid wood need the
 * assembly gap; wood gives part of it.
 */
export interface Threshold {
  readonly mean: number
  readonly deviation: number
}

export const thresholdOf = (assemblyGap: number, ballDiameter: number): Threshold => ({
  mean: ENTRY_MEAN * assemblyGap,
  deviation: Math.max(ENTRY_DEVIATION * assemblyGap, PRESSED_IN * ballDiameter),
})

/** Words that contradict one another leave this much chance, less and less the more they do. */
const CONTRADICTION = 1e-9

/** The chance that the threshold lies above every gap that refused the ball and below every one that took it. */
export function chanceBetween({ mean, deviation }: Threshold, refusedAt: number, takenAt: number): number {
  const high = takenAt === Number.POSITIVE_INFINITY ? 1 : normalCdf((takenAt - mean) / deviation)
  const low = refusedAt === Number.NEGATIVE_INFINITY ? 0 : normalCdf((refusedAt - mean) / deviation)
  const off = Math.max(0, refusedAt - takenAt) / deviation
  return Math.max(high - low, CONTRADICTION / (1 + off * off))
}

/** The chance that a gap takes the ball, when the threshold is known to lie between those two. */
export function chanceTaken(threshold: Threshold, refusedAt: number, takenAt: number, gap: number): number {
  if (!(gap > refusedAt)) return 0
  if (!(gap < takenAt)) return 1
  return Math.min(1, chanceBetween(threshold, refusedAt, gap) / chanceBetween(threshold, refusedAt, takenAt))
}
