import { type Static, Type } from 'typebox'
import { answerOf } from '#src/api/answer.ts'
import { requestRef } from '#src/api/design-input.ts'
import type { Dimension } from '#src/api/dimension.ts'
import { shownLength } from '#src/api/length.ts'
import { refTo } from '#src/http/schema.ts'
import { type Gauge, gapPerBallDiameter, PLAY, RING } from './schema.ts'
import type { Stock } from './stock-schema.ts'

const plainRing = {
  trackDiameter: shownLength('The plain cylinder on which the rollers run.'),
  wall: shownLength('Wood left behind the track: to the outside (outer ring), to the bore (inner ring).'),
  width: shownLength('Of the ring, along the axis.'),
}

export const PlainOuterRing = Type.Object(
  { outsideDiameter: shownLength('Outside diameter.'), ...plainRing },
  { $id: 'PlainOuterRing', description: 'Finished sizes.' },
)
export const PlainInnerRing = Type.Object(
  { boreDiameter: shownLength('Bore.'), ...plainRing },
  { $id: 'PlainInnerRing', description: 'Finished sizes. It is as wide as the rollers are long.' },
)
export const Cheeks = Type.Object(
  {
    outsideDiameter: shownLength("The outer ring's own."),
    holeDiameter: shownLength("Within the inner ring's wood: the cheek keeps that ring, too, and clears the bore."),
    thickness: shownLength('Of each.'),
  },
  { $id: 'Cheeks', description: 'Two discs on the sides of the outer ring that keep the rollers in.' },
)
export const StepsOfAssembly = Type.Object(
  { steps: Type.Array(Type.String(), { description: 'What to do, in order.' }) },
  { $id: 'StepsOfAssembly', description: 'How the bearing goes together.' },
)

export const RollerDesignResponse = Type.Object(
  answerOf(['roller'], requestRef('roller'), {
    ...RING,
    gapPerBallDiameter,
    rollerLength: shownLength('Of each roller.'),
    outerRing: refTo<typeof PlainOuterRing>('PlainOuterRing'),
    innerRing: refTo<typeof PlainInnerRing>('PlainInnerRing'),
    cheeks: refTo<typeof Cheeks>('Cheeks'),
    ...PLAY,
    gauge: refTo<typeof Gauge>('Gauge'),
    assembly: refTo<typeof StepsOfAssembly>('StepsOfAssembly'),
    dimensions: Type.Array(refTo<typeof Dimension>('Dimension')),
    stock: Type.Optional(refTo<typeof Stock>('Stock')),
  }),
  { $id: 'RollerDesignResponse', description: 'The same of rollers between plain rings: `balls` are the rollers.' },
)
export type RollerDesignResponse = Static<typeof RollerDesignResponse>

export const ROLLER_SCHEMAS = [PlainOuterRing, PlainInnerRing, Cheeks, StepsOfAssembly, RollerDesignResponse]
