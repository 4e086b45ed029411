import type { CagedDesign } from '#shared/bearing/arrangements.ts'
import type { Split } from '#shared/bearing/fields.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { show } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { designSummary } from '#src/words/summary.ts'
import type { CagedDesignResponse } from './caged-schema.ts'
import { toAsked, toLands, toNotes, toPlay, toRings, toTable } from './present.ts'
import type { StockAnswer } from './stock.ts'
import type { Stock } from './stock-schema.ts'

const STEPS: Readonly<Record<Split, readonly string[]>> = {
  none: [
    'Lay the outer ring flat and push the inner ring inside it all the way to one side.',
    'Drop the balls into the wide side, push them together, and bring the inner ring to the middle.',
    'Spread the balls evenly, and close the two halves of the cage over them from both sides: hold them by thin screws or pegs through the webs.',
  ],
  'inner-ring': [
    'Stand the cage in the middle of the outer ring and push a ball out through each pocket into the groove.',
    'Close the two halves of the inner ring in from both sides.',
  ],
  'outer-ring': [
    'Slip the cage over the inner ring and push a ball in through each pocket into the groove.',
    'Close the two halves of the outer ring over the balls and screw them together.',
  ],
}

/** A design of balls in a cage, in the caller's units and in words. */
export function toCagedDesignResponse(design: CagedDesign, stock?: StockAnswer<Stock>): CagedDesignResponse {
  const { bearing } = design
  const { settled, cage, eccentricFilling } = bearing
  const { units } = settled.input
  const size = (length: Mm) => show(length, units)
  return answer(
    { ...toAsked('caged', bearing.settled, stock), summary: designSummary(design) },
    {
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
        angle: showNumber(bearing.fillingAngle),
        limit: showNumber(eccentricFilling.limit),
        mostBalls: eccentricFilling.mostBalls,
        roomBetweenLands: eccentricFilling.roomBetweenLands,
      },
      assembly: { steps: [...STEPS[settled.split]] },
      ...toTable(design, stock),
    },
    toNotes(design, stock),
  )
}
