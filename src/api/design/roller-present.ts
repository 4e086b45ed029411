import type { RollerBearing } from '#shared/bearing/arrangements.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import type { Ring } from '#shared/bearing/rings.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { show } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { ROLLER_STEPS } from '#src/words/assembly.ts'
import { designSummary } from '#src/words/summary.ts'
import { toAsked, toBallRing, toGauge, toNotes, toPlay, toTable } from './present.ts'
import type { RollerDesignResponse } from './roller-schema.ts'
import type { StockAnswer } from './stock.ts'
import type { Stock } from './stock-schema.ts'

/** A design of rollers between plain rings, in the caller's units and in words. */
export function toRollerDesignResponse(
  design: DesignOf<RollerBearing>,
  stock?: StockAnswer<Stock>,
): RollerDesignResponse {
  const { bearing } = design
  const { outerRing: outer, innerRing: inner, cheeks, resolved } = bearing
  const { units } = resolved.input
  const size = (length: Mm) => show(length, units)
  return answer(
    { ...toAsked('roller', bearing.resolved, stock), summary: designSummary(design) },
    {
      ...toBallRing(bearing),
      gapPerBallDiameter: showNumber(bearing.gapPerBallDiameter),
      rollerLength: size(resolved.rollerLength),
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
      ...toTable(design, stock),
    },
    toNotes(design, stock),
  )
}

const toPlainRing = ({ grooveBottomDiameter: trackDiameter, wall, width }: Ring, units: Units) => ({
  trackDiameter: show(trackDiameter, units),
  wall: show(wall, units),
  width: show(width, units),
})
