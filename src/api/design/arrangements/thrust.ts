import { type Static, Type } from 'typebox'
import type { ThrustDesign } from '#shared/bearing/arrangements.ts'
import type { StockInput } from '#shared/making/input.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { answer, answerOf } from '#src/api/answer.ts'
import { toAsked, toBallRing, toGauge, toNotes, toTable } from '#src/api/design/present.ts'
import { type Gauge, gapPerBallDiameter, RING, type StepsOfAssembly, seat } from '#src/api/design/schema.ts'
import { plateStockAnswer } from '#src/api/design/stock.ts'
import type { PlateStock } from '#src/api/design/stock-schema.ts'
import { requestRef } from '#src/api/design-input.ts'
import type { Dimension } from '#src/api/dimension.ts'
import { show, shownLength } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { refTo } from '#src/http/schema.ts'
import { THRUST_STEPS } from '#src/words/assembly.ts'
import { designSummary } from '#src/words/summary.ts'

const Plate = Type.Object(
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

const ThrustDesignResponse = Type.Object(
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
type ThrustDesignResponse = Static<typeof ThrustDesignResponse>

/** A design of two plates, in the caller's units and in words. */
function toResponse(design: ThrustDesign, input?: StockInput): ThrustDesignResponse {
  const { bearing } = design
  const stock = input && plateStockAnswer(bearing, input)
  const { units } = bearing.resolved.input
  return answer(
    { ...toAsked('thrust', bearing.resolved, stock), summary: designSummary(design) },
    {
      ...toBallRing(bearing),
      gapPerBallDiameter: showNumber(bearing.gapPerBallDiameter),
      plates: { lower: toPlate(bearing.plate, units), upper: toPlate(bearing.plate, units) },
      plateGap: show(bearing.plateGap, units),
      height: show(bearing.height, units),
      gauge: toGauge(bearing),
      assembly: { steps: [...THRUST_STEPS] },
      ...toTable(design, stock),
    },
    toNotes(design, stock),
  )
}

function toPlate({ seat, ...sizes }: ThrustDesign['bearing']['plate'], units: Units): Static<typeof Plate> {
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

export const THRUST = { response: ThrustDesignResponse, schemas: [Plate, ThrustDesignResponse], toResponse }
