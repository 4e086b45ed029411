import type { Static } from 'typebox'
import type { ThrustDesign } from '#shared/bearing/arrangements.ts'
import { plateMakingAnswer } from '#src/api/design/making.ts'
import type { PlateMaking } from '#src/api/design/making-schema.ts'
import * as parts from '#src/api/design/parts.ts'
import { designResponse, toDesignAnswer } from '#src/api/design/present.ts'
import { show, shownLength } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { named, object, shownBy } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'
import { THRUST_STEPS } from '#src/words/assembly.ts'

const Plate = named('Plate', 'Finished sizes of the plate.', {
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
  seat: parts.seat,
})

const ThrustDesignResponse = designResponse(
  'thrust',
  {
    $id: 'ThrustDesignResponse',
    description: 'Sizes of a turntable, a full ring of balls between two flat plates, and its warnings.',
  },
  {
    ...parts.BALL_RING,
    gapPerBallDiameter: parts.gapPerBallDiameter,
    plates: object('The two plates, cut alike. The balls lie in the lower one.', {
      lower: refTo<typeof Plate>('Plate'),
      upper: refTo<typeof Plate>('Plate'),
    }),
    plateGap: shownLength('Space between the faces of the plates.'),
    height: shownLength('Height over both plates.'),
    gauge: parts.gauge,
    assembly: parts.stepsOfAssembly,
  },
  refTo<typeof PlateMaking>('PlateMaking'),
)

function toResponse(design: ThrustDesign): Static<typeof ThrustDesignResponse> {
  const { bearing } = design
  const { units } = bearing.resolved.input
  const plate = shownBy(Plate, bearing.plate, units)
  const body = {
    ...parts.toBallRing(bearing),
    gapPerBallDiameter: showNumber(bearing.gapPerBallDiameter),
    plates: { lower: plate, upper: plate },
    plateGap: show(bearing.plateGap, units),
    height: show(bearing.height, units),
    gauge: parts.toGauge(bearing),
    assembly: { steps: [...THRUST_STEPS] },
  }
  return toDesignAnswer('thrust', design, body, plateMakingAnswer(bearing))
}

export const THRUST = { response: ThrustDesignResponse, schemas: [Plate, ThrustDesignResponse], toResponse }
