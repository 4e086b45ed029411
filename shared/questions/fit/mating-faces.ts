import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { sidewaysTravel } from '#shared/geometry/axial-play.ts'
import { type Groove, grooveHalfWidth } from '#shared/geometry/groove.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/** The change at the mating faces of a split ring, and whether it is less work than the groove or a new ring. */
export interface MatingFaceAdjustment {
  /** To take off in all (above 0), or to put between (below 0). */
  readonly change: Mm
  readonly isWorthIt: boolean
}

/**
 * Up to here, in ball diameters, faces are sanded or parted: beyond it the ball runs on four narrow flanks, and cutting
 * deeper or a new ring is less work. Common practice, no source.
 */
const WORTH_ADJUSTING = 1 / 8

/**
 * How the mating faces of a split inner ring bring its play to the aim.
 *
 * @returns undefined for an inner ring in one piece, or where no change of the faces does it
 */
export function matingFaceAdjustment(
  { resolved }: Pick<RingPair, 'resolved'>,
  play: number,
  aim: number,
): MatingFaceAdjustment | undefined {
  const { innerGroove, ballDiameter, split } = resolved
  if (split !== 'inner-ring') return undefined
  const change = matingFaceChange(innerGroove, ballDiameter, aim - play)
  return change === undefined ? undefined : { change, isWorthIt: Math.abs(change) <= WORTH_ADJUSTING * ballDiameter }
}

/**
 * Thickness to remove from (above 0) or to put between (below 0) the mating faces of a split ring, in all, so that its play
 * changes by a given amount.
 *
 * Halves that come closer by δ bring the groove's flanks to the ball: it rises as far as it would on its way aside by
 * δ/2 in the whole groove. Halves that stand apart by s let a ball that sat on the bottom down between their inner
 * corners, rw − √(rw² − s²/4), and one on the edges down between edges that stand s further apart.
 *
 * @param playChange of the radial internal clearance: below 0 tightens
 * @returns undefined where no such change does it
 */
function matingFaceChange(groove: Groove, ballDiameter: Mm, playChange: number): Mm | undefined {
  const seat = seatIn(groove, ballDiameter)
  const rise = -playChange / 2
  if (rise >= 0) return rise < seat.depth ? mm(2 * sidewaysTravel(groove, ballDiameter, mm(rise))) : undefined
  const radius = ballDiameter / 2
  const [halfWidth, height] = seat.on === 'bottom' ? [0, radius] : [grooveHalfWidth(groove), radius - seat.depth]
  const lower = height + rise
  return lower > 0 ? mm(-2 * (Math.sqrt((radius - lower) * (radius + lower)) - halfWidth)) : undefined
}
