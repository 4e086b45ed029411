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
    grooveCircleDiameter: shownLength('Across the circle in which the groove is deepest: the pitch diameter.'),
    grooveDepth: shownLength('Face to groove bottom.'),
    seatDepth: shownLength('How deep below the face the ball really sits.'),
    grooveRadius: shownLength('Of the arc in section.'),
    grooveWidth: shownLength('At the face.'),
    wall: shownLength('Wood from the edge of the groove to the outside.'),
    innerWall: shownLength('Wood from the bore to the edge of the groove.'),
    floor: shownLength('Wood under the groove.'),
    thickness: shownLength('Of the plate.'),
    seat,
  },
  { $id: 'Plate', description: 'Finished sizes.' },
)

export const ThrustDesignResponse = Type.Object(
  answerOf(['thrust'], requestRef('thrust'), {
    ...RING,
    gapPerBallDiameter,
    plates: Type.Object(
      { lower: refTo<typeof Plate>('Plate'), upper: refTo<typeof Plate>('Plate') },
      { description: 'Both are cut alike; the balls are laid in the lower one.' },
    ),
    plateGap: shownLength('Space between the faces of the plates.'),
    height: shownLength('Over both plates.'),
    gauge: refTo<typeof Gauge>('Gauge'),
    assembly: refTo<typeof StepsOfAssembly>('StepsOfAssembly'),
    dimensions: Type.Array(refTo<typeof Dimension>('Dimension')),
    stock: Type.Optional(refTo<typeof PlateStock>('PlateStock')),
  }),
  { $id: 'ThrustDesignResponse', description: 'The same of a full ring of balls between two flat plates.' },
)
export type ThrustDesignResponse = Static<typeof ThrustDesignResponse>

export const THRUST_SCHEMAS = [Plate, ThrustDesignResponse]
