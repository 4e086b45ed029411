import type { CagedDesign } from '#shared/bearing/arrangements.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { show } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { CAGED_STEPS } from '#src/words/assembly.ts'
import { designSummary } from '#src/words/summary.ts'
import type { CagedDesignResponse } from './caged-schema.ts'
import { toAsked, toLands, toNotes, toPlay, toRings, toTable } from './present.ts'
import type { StockAnswer } from './stock.ts'
import type { Stock } from './stock-schema.ts'

/** A design of balls in a cage, in the caller's units and in words. */
export function toCagedDesignResponse(design: CagedDesign, stock?: StockAnswer<Stock>): CagedDesignResponse {
  const { bearing } = design
  const { resolved, cage, eccentricFilling } = bearing
  const { units } = resolved.input
  const size = (length: Mm) => show(length, units)
  return answer(
    { ...toAsked('caged', bearing.resolved, stock), summary: designSummary(design) },
    {
      ballDiameter: size(resolved.ballDiameter),
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
        angle: showNumber(bearing.fillingAngle),
        limit: showNumber(eccentricFilling.limit),
        mostBalls: eccentricFilling.mostBalls,
        roomBetweenLands: eccentricFilling.roomBetweenLands,
      },
      assembly: { steps: [...CAGED_STEPS[resolved.split]] },
      ...toTable(design, stock),
    },
    toNotes(design, stock),
  )
}
