import type { ThrustDesign } from '#shared/bearing/arrangements.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { show } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { THRUST_STEPS } from '#src/words/assembly.ts'
import { designSummary } from '#src/words/summary.ts'
import { toAsked, toBallRing, toGauge, toNotes, toTable } from './present.ts'
import type { StockAnswer } from './stock.ts'
import type { PlateStock } from './stock-schema.ts'
import type { ThrustDesignResponse } from './thrust-schema.ts'

/** A design of two plates, in the caller's units and in words. */
export function toThrustDesignResponse(design: ThrustDesign, stock?: StockAnswer<PlateStock>): ThrustDesignResponse {
  const { bearing } = design
  const { units } = bearing.resolved.input
  return answer(
    { ...toAsked('thrust', bearing.resolved, stock), summary: designSummary(design) },
    {
      ...toBallRing(bearing),
      gapPerBallDiameter: showNumber(bearing.gapPerBallDiameter),
      plates: { lower: toPlate(bearing.plate, units), upper: toPlate(bearing.plate, units) },
      plateGap: show(bearing.plateGap, units),
      height: show(bearing.height, units),
      gauge: toGauge(bearing),
      assembly: { steps: [...THRUST_STEPS] },
      ...toTable(design, stock),
    },
    toNotes(design, stock),
  )
}

function toPlate(
  { seat, ...sizes }: ThrustDesign['bearing']['plate'],
  units: Units,
): ThrustDesignResponse['plates']['lower'] {
  const size = (length: Mm) => show(length, units)
  return {
    outsideDiameter: size(sizes.outsideDiameter),
    boreDiameter: size(sizes.boreDiameter),
    grooveCircleDiameter: size(sizes.grooveCircleDiameter),
    grooveDepth: size(sizes.grooveDepth),
    seatDepth: size(sizes.seatDepth),
    grooveRadius: size(sizes.grooveRadius),
    grooveWidth: size(sizes.grooveWidth),
    wall: size(sizes.wall),
    innerWall: size(sizes.innerWall),
    floor: size(sizes.floor),
    thickness: size(sizes.thickness),
    seat,
  }
}
