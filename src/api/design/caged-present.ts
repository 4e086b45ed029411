import type { CagedDesign } from '#shared/bearing/arrangements.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { show } from '#src/api/length.ts'
import { CAGED_STEPS } from '#src/words/assembly.ts'
import type { CagedDesignResponse } from './caged-schema.ts'
import { toAsked, toLands, toNotes, toPlay, toRings } from './present.ts'

/** A design of balls in a cage, in the caller's units and in words. */
export function toCagedDesignResponse(design: CagedDesign): CagedDesignResponse {
  const { bearing } = design
  const { settled, cage, eccentricFilling } = bearing
  const { units } = settled.input
  const size = (length: Mm) => show(length, units)
  return {
    ...toAsked('caged', settled.input, settled.assumed),
    ballDiameter: size(settled.ballDiameter),
    pitchRadius: size(bearing.pitchRadius),
    pitchDiameter: size(mm(2 * bearing.pitchRadius)),
    ballSpacing: size(bearing.ballSpacing),
    ...toRings(bearing),
    cage: {
      boreDiameter: size(cage.boreDiameter),
      outsideDiameter: size(cage.outsideDiameter),
      thickness: size(cage.thickness),
      width: size(cage.width),
      pocketDiameter: size(cage.pocketDiameter),
      web: size(cage.web),
      rim: size(cage.rim),
      pieces: cage.pieces,
    },
    ...toLands(bearing),
    ...toPlay(bearing),
    plugDiameter: size(bearing.plugDiameter),
    filling: {
      angle: bearing.fillingAngle,
      limit: eccentricFilling.limit,
      mostBalls: eccentricFilling.mostBalls,
      roomBetweenLands: eccentricFilling.roomBetweenLands,
    },
    assembly: { steps: [...CAGED_STEPS[settled.split]] },
    ...toNotes(design),
  }
}
