import { type Static, Type } from 'typebox'
import { answerOf } from '#src/api/answer.ts'
import { requestRef } from '#src/api/design-input.ts'
import type { Dimension } from '#src/api/dimension.ts'
import { shownLength } from '#src/api/length.ts'
import { refTo } from '#src/http/schema.ts'
import type { StepsOfAssembly } from './roller-schema.ts'
import { type Gauge, gapPerBallDiameter, RING, seat } from './schema.ts'
import type { PlateStock } from './stock-schema.ts'

export const Plate = Type.Object(
  {
    outsideDiameter: shownLength('Outside diameter.'),
    boreDiameter: shownLength('Bore.'),
    grooveCircleDiameter: shownLength('Diameter of the circle in which the groove is deepest: the pitch diameter.'),
    grooveDepth: shownLength('Depth from the face to the groove bottom.'),
    seatDepth: shownLength('Depth of the ball below the face.'),
    grooveRadius: shownLength('Radius of the groove in section.'),
    grooveWidth: shownLength('Width of the groove at the face.'),
    wall: shownLength('Wood from the edge of the groove to the outside.'),
    innerWall: shownLength('Wood from the bore to the edge of the groove.'),
    floor: shownLength('Wood under the groove.'),
    thickness: shownLength('Thickness of the plate.'),
    seat,
  },
  { $id: 'Plate', description: 'Finished sizes of the plate.' },
)

export const ThrustDesignResponse = Type.Object(
  answerOf(['thrust'], requestRef('thrust'), {
    ...RING,
    gapPerBallDiameter,
    plates: Type.Object(
      { lower: refTo<typeof Plate>('Plate'), upper: refTo<typeof Plate>('Plate') },
      { description: 'The two plates, cut alike. The balls lie in the lower one.' },
    ),
    plateGap: shownLength('Space between the faces of the plates.'),
    height: shownLength('Height over both plates.'),
    gauge: refTo<typeof Gauge>('Gauge'),
    assembly: refTo<typeof StepsOfAssembly>('StepsOfAssembly'),
    dimensions: Type.Array(refTo<typeof Dimension>('Dimension')),
    stock: Type.Optional(refTo<typeof PlateStock>('PlateStock')),
  }),
  {
    $id: 'ThrustDesignResponse',
    description: 'Sizes of a turntable, a full ring of balls between two flat plates, and its warnings.',
  },
)
export type ThrustDesignResponse = Static<typeof ThrustDesignResponse>

export const THRUST_SCHEMAS = [Plate, ThrustDesignResponse]
