import { type Static, Type } from 'typebox'
import { answerOf } from '#src/api/answer.ts'
import { requestRef } from '#src/api/design-input.ts'
import type { Dimension } from '#src/api/dimension.ts'
import { shownLength } from '#src/api/length.ts'
import { shownNumber } from '#src/api/number.ts'
import { refTo } from '#src/http/schema.ts'
import type { StepsOfAssembly } from './roller-schema.ts'
import { type InnerRing, LANDS, type OuterRing, PLAY, RING } from './schema.ts'
import type { Stock } from './stock-schema.ts'

export const Cage = Type.Object(
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

export const Filling = Type.Object(
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

export const CagedDesignResponse = Type.Object(
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
export type CagedDesignResponse = Static<typeof CagedDesignResponse>

export const CAGED_SCHEMAS = [Cage, Filling, CagedDesignResponse]
