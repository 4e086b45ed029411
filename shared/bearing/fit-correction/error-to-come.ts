import type { ReadingError } from '#shared/statistics/likelihood.ts'
import { usualError } from './defaults.ts'
import type { FitCorrectionInput, Reading, ReadingKind } from './input.ts'

/** The error that the next reading of a kind will have, or of one like it. */
export type ErrorToCome = (kind: ReadingKind, ...like: readonly ReadingKind[]) => ReadingError

/** A maker reads on with the same rule: the error of the latest such reading, and without one what is usual. */
export function errorToCome({ readings, earlier, design }: FitCorrectionInput): ErrorToCome {
  const inOrder: readonly Reading[] = [...earlier.flatMap((state) => state.readings), ...readings]
  return (kind, ...like) => {
    const latest = inOrder.findLast((reading) => reading.kind === kind || like.includes(reading.kind))
    return latest !== undefined && 'error' in latest ? latest.error : usualError(kind, design.units)
  }
}
