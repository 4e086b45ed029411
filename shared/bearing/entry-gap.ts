import { normalQuantileBetween } from '#shared/statistics/normal.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/*
 * The gap at which the last ball of a ring goes in: one number for one ring, not known before it is tried. Rigid balls in
 * rigid rings need the assembly gap; wood gives a part of it that nobody can foretell.
 */

/** Mean and standard deviation over the assembly gap, before 0 and 1 cut both tails off: common practice, no source. */
export const ENTRY_MEAN = 0.65
export const ENTRY_DEVIATION = 0.2

/** So many gaps stand for all: between two of them lies a share that nobody misses. */
const PARTS = 64

/** Gaps of which each is as likely to be the one at which the last ball goes in, in ascending order. */
export function entryGaps(assemblyGap: Mm): readonly Mm[] {
  if (assemblyGap === 0) return [mm(0)]
  const entry = { mean: ENTRY_MEAN, deviation: ENTRY_DEVIATION }
  return Array.from({ length: PARTS }, (_, part) =>
    mm(assemblyGap * normalQuantileBetween(entry, 0, 1, (part + 0.5) / PARTS)),
  )
}
