import { itemAt } from '#shared/numbers/item-at.ts'
import { varianceOf } from '#shared/statistics/distribution.ts'
import { playLawError } from '#shared/statistics/play-of-random-balls.ts'
import { type Part, type Pieces, spreadOf } from '#shared/statistics/sum-of-parts.ts'
import { mm } from '#shared/units/length.ts'
import type { Check } from './checked.ts'
import { TRIALS } from './defaults.ts'
import { type LinearLaw, linearLaw, roundPlayMean } from './linear-law.ts'
import { linearParts } from './linear-sample.ts'
import { hasLobes, lobedLosses } from './lobed-losses.ts'
import { modelOf } from './model-of.ts'
import { sampleError } from './sample-error.ts'

export type Line = Pick<LinearLaw, 'mean' | 'standardDeviation'>

/** Gap and play as straight lines: the sums that they are, and the law of the play's. */
export interface Lines {
  readonly parts: readonly (Part | Pieces)[]
  readonly play: Line
  /** How far off the law of the play's is, as a length: by the place in it, in standard deviations. */
  readonly errorAt: (place: number) => number
}

/** Rings of balls by the chunk, where some are out of round: a few tell how many it takes; and the most. */
const FIRST_CHUNKS = 4
const MOST_CHUNKS = 128
/** The few tell it only roughly. */
const TO_BE_SURE = 1.2
/** As near as the usual trials come, with some to spare for what the curves add. */
const ENOUGH = 1.5 * TRIALS

/** @returns why not, where there is no such law, or none that comes as near as the usual trials */
export function linesOf(check: Check): Lines | 'uneven-balls' | 'out-of-round' {
  if (hasLobes(check)) return lobedLines(check, FIRST_CHUNKS)
  const parts = linearParts(check)
  return parts === undefined ? 'uneven-balls' : { parts, play: linearLaw(check, 'play'), errorAt: tableErrorOf(check) }
}

function lobedLines(check: Check, chunks: number): Lines | 'uneven-balls' | 'out-of-round' {
  const losses = lobedLosses(check, chunks)
  const parts = linearParts(check, losses)
  const pieces = parts?.find((part) => 'pieces' in part)
  if (parts === undefined || pieces === undefined) return 'uneven-balls'
  const [variance, ofPieces] = [varianceOfPlay(parts), varianceOfPlay([pieces])]
  if (!(variance > ofPieces)) return 'out-of-round'
  const standardDeviation = mm(Math.sqrt(variance))
  const { at, asGoodAs } = sampleError(pieces, standardDeviation, Math.sqrt(variance - ofPieces))
  if (asGoodAs >= ENOUGH)
    return { parts, play: { mean: mm(roundPlayMean(check) - losses.mean), standardDeviation }, errorAt: at }
  const needed = Math.ceil(TO_BE_SURE * chunks * (ENOUGH / asGoodAs))
  return chunks === FIRST_CHUNKS && needed <= MOST_CHUNKS ? lobedLines(check, needed) : 'out-of-round'
}

const varianceOfPlay = (parts: readonly (Part | Pieces)[]): number =>
  itemAt(spreadOf(parts, { variances: [0, 0], covariance: 0 }).variances, 1)

/** Error of the tabulated law of the play among unequal balls. */
function tableErrorOf(check: Check): (place: number) => number {
  const balls = check.differences.get('ballDiameter')
  const { perUnevenness } = modelOf(check).slopes.play
  if (balls === undefined || perUnevenness === 0) return () => 0
  const scatter = perUnevenness * Math.sqrt(varianceOf(balls))
  const { count } = check.bearing.resolved.input.balls
  return (place) => scatter * playLawError(count, place)
}
