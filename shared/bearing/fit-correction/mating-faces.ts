import { sidewaysTravel } from '#shared/geometry/axial-play.ts'
import { type Groove, grooveHalfWidth } from '#shared/geometry/groove.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/**
 * What to take off (above 0) or to put between (below 0) the mating faces of a split ring, in all, so that its play
 * changes by a given amount.
 *
 * Halves that come closer by δ bring the groove's flanks to the ball: it rises as far as it would on its way aside by
 * δ/2 in the whole groove. Halves that stand apart by s let a ball that sat on the bottom down between their inner
 * corners, rw − √(rw² − s²/4), and one on the edges down between edges that stand s further apart.
 *
 * @param playChange of the radial internal clearance: below 0 tightens
 * @returns undefined where no such change does it
 */
export function matingFaceChange(groove: Groove, ballDiameter: Mm, playChange: number): Mm | undefined {
  const seat = seatIn(groove, ballDiameter)
  const rise = -playChange / 2
  if (rise >= 0) return rise < seat.depth ? mm(2 * sidewaysTravel(groove, ballDiameter, mm(rise))) : undefined
  const radius = ballDiameter / 2
  const [halfWidth, height] = seat.on === 'bottom' ? [0, radius] : [grooveHalfWidth(groove), radius - seat.depth]
  const lower = height + rise
  return lower > 0 ? mm(-2 * (Math.sqrt((radius - lower) * (radius + lower)) - halfWidth)) : undefined
}
