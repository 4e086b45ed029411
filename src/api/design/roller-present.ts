import type { RollerBearing } from '#shared/bearing/arrangements.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import type { Ring } from '#shared/bearing/rings.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { show } from '#src/api/length.ts'
import { ROLLER_STEPS } from '#src/words/assembly.ts'
import { toAsked, toBallRing, toGauge, toNotes, toPlay } from './present.ts'
import type { RollerDesignResponse } from './roller-schema.ts'

/** A design of rollers between plain rings, in the caller's units and in words. */
export function toRollerDesignResponse(design: DesignOf<RollerBearing>): RollerDesignResponse {
  const { bearing } = design
  const { outerRing: outer, innerRing: inner, cheeks, settled } = bearing
  const { units } = settled.input
  const size = (length: Mm) => show(length, units)
  return {
    ...toAsked('roller', settled.input, settled.assumed),
    ...toBallRing(bearing, settled.assembly.assemblyGap),
    gapPerBallDiameter: bearing.gapPerBallDiameter,
    rollerLength: size(settled.rollerLength),
    outerRing: { outsideDiameter: size(outer.outsideDiameter), ...toPlainRing(outer, units) },
    innerRing: { boreDiameter: size(inner.boreDiameter), ...toPlainRing(inner, units) },
    cheeks: {
      outsideDiameter: size(cheeks.outsideDiameter),
      holeDiameter: size(cheeks.holeDiameter),
      thickness: size(cheeks.thickness),
    },
    ...toPlay(bearing),
    gauge: toGauge(bearing),
    assembly: { steps: [...ROLLER_STEPS] },
    ...toNotes(design),
  }
}

const toPlainRing = ({ grooveBottomDiameter: trackDiameter, wall, width }: Ring, units: Units) => ({
  trackDiameter: show(trackDiameter, units),
  wall: show(wall, units),
  width: show(width, units),
})
