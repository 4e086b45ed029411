import { type Static, Type } from 'typebox'
import { answerOf } from '#src/api/answer.ts'
import { requestRef } from '#src/api/design-input.ts'
import type { Dimension } from '#src/api/dimension.ts'
import { shownLength } from '#src/api/length.ts'
import { refTo } from '#src/http/schema.ts'
import { type Gauge, gapPerBallDiameter, PLAY, RING } from './schema.ts'
import type { Stock } from './stock-schema.ts'

const plainRing = {
  trackDiameter: shownLength('Diameter of the plain cylinder on which the rollers run.'),
  wall: shownLength('Wood left behind the track: to the outside (outer ring), to the bore (inner ring).'),
  width: shownLength('Width of the ring along the axis.'),
}

export const PlainOuterRing = Type.Object(
  { outsideDiameter: shownLength('Outside diameter.'), ...plainRing },
  { $id: 'PlainOuterRing', description: 'Finished sizes of the ring.' },
)
export const PlainInnerRing = Type.Object(
  { boreDiameter: shownLength('Bore.'), ...plainRing },
  { $id: 'PlainInnerRing', description: 'Finished sizes. It is as wide as the rollers are long.' },
)
export const Cheeks = Type.Object(
  {
    outsideDiameter: shownLength('Outside diameter: that of the outer ring.'),
    holeDiameter: shownLength('Diameter of the hole: the cheek also keeps the inner ring in, and clears the bore.'),
    thickness: shownLength('Thickness of each cheek.'),
  },
  { $id: 'Cheeks', description: 'Two discs on the sides of the outer ring that keep the rollers in.' },
)
export const StepsOfAssembly = Type.Object(
  { steps: Type.Array(Type.String(), { description: 'Steps in order.' }) },
  { $id: 'StepsOfAssembly', description: 'Assembly of the bearing.' },
)

export const RollerDesignResponse = Type.Object(
  answerOf(['roller'], requestRef('roller'), {
    ...RING,
    gapPerBallDiameter,
    rollerLength: shownLength('Length of each roller.'),
    outerRing: refTo<typeof PlainOuterRing>('PlainOuterRing'),
    innerRing: refTo<typeof PlainInnerRing>('PlainInnerRing'),
    cheeks: refTo<typeof Cheeks>('Cheeks'),
    ...PLAY,
    gauge: refTo<typeof Gauge>('Gauge'),
    assembly: refTo<typeof StepsOfAssembly>('StepsOfAssembly'),
    dimensions: Type.Array(refTo<typeof Dimension>('Dimension')),
    stock: Type.Optional(refTo<typeof Stock>('Stock')),
  }),
  {
    $id: 'RollerDesignResponse',
    description: 'Sizes of a bearing of rollers between plain rings, and its warnings. `balls` are the rollers.',
  },
)
export type RollerDesignResponse = Static<typeof RollerDesignResponse>

export const ROLLER_SCHEMAS = [PlainOuterRing, PlainInnerRing, Cheeks, StepsOfAssembly, RollerDesignResponse]
