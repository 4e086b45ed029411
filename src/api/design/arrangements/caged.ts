import type { Static } from 'typebox'
import type { CagedDesign } from '#shared/bearing/arrangements.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { makingAnswer } from '#src/api/design/making.ts'
import type { Making } from '#src/api/design/making-schema.ts'
import * as parts from '#src/api/design/parts.ts'
import { designResponse, toDesignAnswer } from '#src/api/design/present.ts'
import { show, shownLength } from '#src/api/length.ts'
import { shownNumber } from '#src/api/number.ts'
import { flag, integer, named, shownBy } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'
import { CAGED_STEPS } from '#src/words/assembly.ts'

const Cage = named('Cage', 'The ring of wood that holds the balls apart. Finished sizes.', {
  boreDiameter: shownLength('Bore of the cage, clear of the inner land.'),
  outsideDiameter: shownLength('Outside diameter of the cage, clear of the outer land.'),
  thickness: shownLength('Radial thickness of the cage.'),
  width: shownLength('Along the axis.'),
  pocketDiameter: shownLength('Diameter of the pockets, which are drilled towards the axis, evenly round the cage.'),
  web: shownLength('Wood between two pockets where it is least: at the bore, at mid width.'),
  rim: shownLength('Wood between a pocket and the side of the cage.'),
  pieces: integer(
    '2: halves with half of every pocket each, closed over the balls from both sides. 1 where a ring is split.',
  ),
})

const Filling = named('Filling', 'How rings of one piece are filled: eccentrically, then the balls are spread.', {
  angle: shownNumber('The arc that the balls fill side by side, from the first centre to the last, in degrees.'),
  limit: shownNumber(
    'The arc that they may fill for the inner ring to come back to the middle: 180 without play, a little more with it. Rigid balls.',
  ),
  mostBalls: integer('Most balls that fill no more than that.'),
  roomBetweenLands: flag('Whether a ball passes between the lands with the inner ring all the way to one side.'),
})

const CagedDesignResponse = designResponse(
  'caged',
  {
    $id: 'CagedDesignResponse',
    description: 'Sizes of a bearing with fewer balls, held evenly by a cage, and its warnings.',
  },
  {
    ballDiameter: parts.BALL_RING.ballDiameter,
    pitchRadius: shownLength('Radius of the circle through the centres of the balls.'),
    pitchDiameter: parts.BALL_RING.pitchDiameter,
    ballSpacing: shownLength('Space between neighbouring balls, as the cage holds them.'),
    ...parts.RINGS,
    cage: refTo<typeof Cage>('Cage'),
    ...parts.LANDS,
    ...parts.PLAY,
    plugDiameter: shownLength('The circle inside the balls seated in the outer groove: a plug to turn the groove by.'),
    filling: refTo<typeof Filling>('Filling'),
    assembly: parts.stepsOfAssembly,
  },
  refTo<typeof Making>('Making'),
)

function toResponse(design: CagedDesign): Static<typeof CagedDesignResponse> {
  const { bearing } = design
  const { resolved, cage, eccentricFilling } = bearing
  const { units } = resolved.input
  const size = (length: Mm) => show(length, units)
  const body = {
    ballDiameter: size(resolved.ballDiameter),
    pitchRadius: size(bearing.pitchRadius),
    pitchDiameter: size(mm(2 * bearing.pitchRadius)),
    ballSpacing: size(bearing.ballSpacing),
    ...parts.toRings(bearing),
    cage: shownBy(Cage, cage, units),
    ...parts.toLands(bearing),
    ...parts.toPlay(bearing),
    plugDiameter: size(bearing.plugDiameter),
    filling: shownBy(Filling, { ...eccentricFilling, angle: bearing.fillingAngle }, units),
    assembly: { steps: [...CAGED_STEPS[resolved.split]] },
  }
  return toDesignAnswer('caged', design, body, makingAnswer(bearing))
}

export const CAGED = { response: CagedDesignResponse, schemas: [Cage, Filling, CagedDesignResponse], toResponse }
