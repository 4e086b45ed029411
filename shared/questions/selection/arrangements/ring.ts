import type { FullRings } from '#shared/bearing/full-rings.ts'
import { playLimits } from '#shared/bearing/play-limits.ts'
import { IN_A_RING } from '#shared/geometry/closure.ts'
import { playByOrder } from '#shared/geometry/order-for-play.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { gapPerBottomRadius } from '#shared/geometry/unequal-balls.ts'
import type { SelectionOf } from '#shared/questions/selection/ball-place.ts'
import type { GrooveField } from '#shared/questions/selection/fields.ts'
import { mm } from '#shared/units/length.ts'
import { rounded } from '#shared/units/rounded.ts'

/** Part of the designed play that other balls and the weather may leave. Common practice, no source. */
const ENOUGH_PLAY = 1 / 2

/**
 * Between rings. Every ball is taken as if it sat as deep as one of the design's size; those larger than the groove's arc do
 * not, and `edgeShift` says what that does.
 */
export const inRings = (grooveField: GrooveField, innerField: GrooveField): SelectionOf<FullRings> => ({
  grooveField,
  innerField,
  placeIn: ({ resolved, outerRing, innerRing, radialInternalClearance }, innerAsItIs) => {
    const groove = resolved.outerGroove
    const { units, bore } = resolved.input
    const { max: mostPlay } = playLimits(radialInternalClearance, units)
    const drawn = rounded(innerRing.grooveBottomDiameter, units)
    const asItIs = innerAsItIs ?? drawn
    const innerBottomRadius = mm(asItIs / 2 + innerRing.grooveDepth - innerRing.seatDepth)
    return {
      closure: IN_A_RING,
      groove,
      designed: outerRing.grooveBottomDiameter,
      // 0 unless a ball of the mean size rides on the edges
      aboveBottom: outerRing.grooveDepth - outerRing.seatDepth,
      assemblyGap: resolved.assembly.assemblyGap,
      parts: 2,
      edgeShift: (radius, diameters) => {
        const depths = diameters.map((diameter) => seatIn(groove, mm(diameter)).depth - outerRing.seatDepth)
        const deeper = depths.reduce((sum, depth) => sum + depth, 0) / depths.length
        return mm(gapPerBottomRadius(radius, diameters) * deeper)
      },
      judge: (outerBottomRadius, diameters) => {
        const playOf = playByOrder({ outerBottomRadius, innerBottomRadius }, diameters)
        return (order) => {
          const { radialInternalClearance: margin, runOut, decisive } = playOf(order)
          return { margin, runOut, decisive }
        }
      },
      enough: radialInternalClearance * ENOUGH_PLAY,
      aims: ['advised', 'most-play', 'least-run-out', 'least-play'],
      inner: { drawn, asItIs, designedPlay: radialInternalClearance, mostPlay, bore },
      atRest: () => undefined,
    }
  },
})
