import { type Static, Type } from 'typebox'
import type { CagedDesign } from '#shared/bearing/arrangements.ts'
import type { StockInput } from '#shared/making/input.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { answer, answerOf } from '#src/api/answer.ts'
import { toAsked, toLands, toNotes, toPlay, toRings, toTable } from '#src/api/design/present.ts'
import { type InnerRing, LANDS, type OuterRing, PLAY, RING, type StepsOfAssembly } from '#src/api/design/schema.ts'
import { stockAnswer } from '#src/api/design/stock.ts'
import type { Stock } from '#src/api/design/stock-schema.ts'
import { requestRef } from '#src/api/design-input.ts'
import type { Dimension } from '#src/api/dimension.ts'
import { show, shownLength } from '#src/api/length.ts'
import { showNumber, shownNumber } from '#src/api/number.ts'
import { refTo } from '#src/http/schema.ts'
import { CAGED_STEPS } from '#src/words/assembly.ts'
import { designSummary } from '#src/words/summary.ts'

const Cage = Type.Object(
  {
    boreDiameter: shownLength('Bore of the cage, clear of the inner land.'),
    outsideDiameter: shownLength('Outside diameter of the cage, clear of the outer land.'),
    thickness: shownLength('Radial thickness of the cage.'),
    width: shownLength('Along the axis.'),
    pocketDiameter: shownLength('Diameter of the pockets, which are drilled towards the axis, evenly round the cage.'),
    web: shownLength('Wood between two pockets where it is least: at the bore, at mid width.'),
    rim: shownLength('Wood between a pocket and the side of the cage.'),
    pieces: Type.Integer({
      description:
        '2: halves with half of every pocket each, closed over the balls from both sides. 1 where a ring is split.',
    }),
  },
  { $id: 'Cage', description: 'The ring of wood that holds the balls apart. Finished sizes.' },
)

const Filling = Type.Object(
  {
    angle: shownNumber('The arc that the balls fill side by side, from the first centre to the last, in degrees.'),
    limit: shownNumber(
      'The arc that they may fill for the inner ring to come back to the middle: 180 without play, a little more with it. Rigid balls.',
    ),
    mostBalls: Type.Integer({ description: 'Most balls that fill no more than that.' }),
    roomBetweenLands: Type.Boolean({
      description: 'Whether a ball passes between the lands with the inner ring all the way to one side.',
    }),
  },
  { $id: 'Filling', description: 'How rings of one piece are filled: eccentrically, then the balls are spread.' },
)

const CagedDesignResponse = Type.Object(
  answerOf(['caged'], requestRef('caged'), {
    ballDiameter: RING.ballDiameter,
    pitchRadius: shownLength('Radius of the circle through the centres of the balls.'),
    pitchDiameter: RING.pitchDiameter,
    ballSpacing: shownLength('Space between neighbouring balls, as the cage holds them.'),
    outerRing: refTo<typeof OuterRing>('OuterRing'),
    innerRing: refTo<typeof InnerRing>('InnerRing'),
    cage: refTo<typeof Cage>('Cage'),
    ...LANDS,
    ...PLAY,
    plugDiameter: shownLength('The circle inside the balls seated in the outer groove: a plug to turn the groove by.'),
    filling: refTo<typeof Filling>('Filling'),
    assembly: refTo<typeof StepsOfAssembly>('StepsOfAssembly'),
    dimensions: Type.Array(refTo<typeof Dimension>('Dimension')),
    stock: Type.Optional(refTo<typeof Stock>('Stock')),
  }),
  {
    $id: 'CagedDesignResponse',
    description: 'Sizes of a bearing with fewer balls, held evenly by a cage, and its warnings.',
  },
)
type CagedDesignResponse = Static<typeof CagedDesignResponse>

/** A design of balls in a cage, in the caller's units and in words. */
function toResponse(design: CagedDesign, input?: StockInput): CagedDesignResponse {
  const { bearing } = design
  const stock = input && stockAnswer(bearing, input)
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

export const CAGED = { response: CagedDesignResponse, schemas: [Cage, Filling, CagedDesignResponse], toResponse }
