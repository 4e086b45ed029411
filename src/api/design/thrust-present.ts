import type { ThrustDesign } from '#shared/bearing/arrangements.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { show } from '#src/api/length.ts'
import { THRUST_STEPS } from '#src/words/assembly.ts'
import { toAsked, toBallRing, toGauge, toNotes } from './present.ts'
import type { ThrustDesignResponse } from './thrust-schema.ts'

/** A design of two plates, in the caller's units and in words. */
export function toThrustDesignResponse(design: ThrustDesign): ThrustDesignResponse {
  const { bearing } = design
  const { units } = bearing.settled.input
  return {
    ...toAsked('thrust', bearing.settled.input, bearing.settled.assumed),
    ...toBallRing(bearing, mm(0)),
    gapPerBallDiameter: bearing.gapPerBallDiameter,
    plates: { lower: toPlate(bearing.plate, units), upper: toPlate(bearing.plate, units) },
    plateGap: show(bearing.plateGap, units),
    height: show(bearing.height, units),
    gauge: toGauge(bearing),
    assembly: { steps: [...THRUST_STEPS] },
    ...toNotes(design),
  }
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
