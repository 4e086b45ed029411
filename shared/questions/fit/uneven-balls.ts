import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { Mm } from '#shared/units/length.ts'
import { mm } from '#shared/units/length.ts'

/** Balls from which no groove can be told. */
export interface UnevenBalls {
  readonly code: 'balls-too-uneven'
  readonly path: string
  readonly given: Mm
  readonly most: Mm
}

/**
 * Beyond this share of their diameter balls are not of one size, and their gap means nothing.
 * Common practice, no source.
 */
const MOST_SCATTER = 0.1
/** No ball may stand between two that meet over it: the exact closure's own limit on the largest over the smallest. */
const MOST_UNEVEN = 1.5

/**
 * Balls so uneven that no groove can be told from them: by the scatter that was stated, or by the balls that were measured.
 *
 * @param x where the groove is, as designed [mm]
 * @param tightest the least x in which balls of these sizes find room
 */
export function unevenBalls(
  { input, ballDiameter }: ResolvedBalls,
  x: number,
  tightest: (diameters: readonly number[]) => number,
): readonly UnevenBalls[] {
  const { count, diameters, standardDeviation } = input.balls
  if (diameters === undefined) {
    const most = mm(MOST_SCATTER * ballDiameter)
    if (standardDeviation === undefined || standardDeviation <= most) return []
    return [{ code: 'balls-too-uneven', path: '/design/balls/standardDeviation', given: standardDeviation, most }]
  }
  const [smallest, largest] = [Math.min(...diameters), Math.max(...diameters)]
  const isTight = diameters.length === count && x < tightest(diameters)
  if (largest <= MOST_UNEVEN * smallest && !isTight) return []
  return [
    {
      code: 'balls-too-uneven',
      path: '/design/balls/diameters',
      given: mm(largest - smallest),
      most: mm(smallest / 2),
    },
  ]
}
