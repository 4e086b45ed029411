import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { rounded } from '#shared/units/rounded.ts'

export const TRIALS = 100_000
export const FEWEST_TRIALS = 1000
export const MOST_TRIALS = 2_000_000
export const SEED = 1

/** Two digits of an uncertainty are what anyone reports (JCGM 100:2008, 7.2.6). More than two take more than `MOST_TRIALS`. */
export const SIGNIFICANT_DIGITS = 2
export const MOST_SIGNIFICANT_DIGITS = 2

/** Common practice, no source. */
export const OVERSHOOT_RISK = 0.05

/** Plates half as far apart again as designed, or half as far, still turn free: common practice, no source. */
export const plateGapLimits = (gap: Mm, units: Units): { readonly min: Mm; readonly max: Mm } => ({
  min: rounded(mm(gap / 2), units),
  max: rounded(mm((3 / 2) * gap), units),
})
