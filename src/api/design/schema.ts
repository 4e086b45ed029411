import { type Static, Type } from 'typebox'
import { answerOf } from '#src/api/answer.ts'
import { requestRef } from '#src/api/design-input.ts'
import type { Dimension } from '#src/api/dimension.ts'
import { shownLength } from '#src/api/length.ts'
import { shownNumber } from '#src/api/number.ts'
import { refTo } from '#src/http/schema.ts'
import { STOCK_SCHEMAS, type Stock } from './stock-schema.ts'

export const seat = Type.Enum(['bottom', 'edges'], {
  type: 'string',
  description:
    'The place where the ball touches: the bottom of the groove, or its two edges where the groove is tighter than the ball.',
})

const ring = {
  landDiameter: shownLength('Diameter of the land, the cylinder on both sides of the groove.'),
  grooveBottomDiameter: shownLength('Diameter across the bottoms of the groove.'),
  grooveDepth: shownLength('Depth from the land to the groove bottom.'),
  seatDepth: shownLength('Depth of the ball below the land.'),
  grooveRadius: shownLength('Radius of the groove in section.'),
  grooveWidth: shownLength('Width of the groove at the land.'),
  wall: shownLength('Wood left behind the groove: to the outside (outer ring), to the bore (inner ring).'),
  width: shownLength('Width of the ring along the axis.'),
  seat,
}

export const OuterRing = Type.Object(
  { outsideDiameter: shownLength('Outside diameter.'), ...ring },
  { $id: 'OuterRing', description: 'Finished sizes of the ring.' },
)
export const InnerRing = Type.Object(
  { boreDiameter: shownLength('Bore.'), ...ring },
  { $id: 'InnerRing', description: 'Finished sizes of the ring.' },
)

export const Gauge = Type.Object(
  {
    nominalDiameter: shownLength('The circle inside the balls seated in the outer groove.'),
    goDiameter: shownLength('Diameter of the go plug, at the larger of `minBallGap` and `assemblyGap`. It must enter.'),
    noGoDiameter: shownLength('Diameter of the no-go plug, at `maxBallGap`. It must not enter.'),
    gapPerBallDiameterAtPlug: shownNumber(
      'Change of the ball gap per unit of mean ball diameter when the groove is cut to this plug.',
    ),
    note: Type.String({ description: 'What the plug is right for, in words.' }),
  },
  { $id: 'Gauge', description: 'Turned plugs that check the outer groove with the balls in it.' },
)

export const Assembly = Type.Object(
  {
    split: Type.Enum(['inner-ring', 'outer-ring', 'none'], {
      type: 'string',
      description: 'The ring that comes apart at the middle of its groove.',
    }),
    easiestWay: Type.Enum(['from-inside', 'over-land', 'open-side'], {
      type: 'string',
      description: 'The way in that needs the smallest gap for the last ball.',
    }),
    waysIn: Type.Object(
      {
        fromInside: shownLength('Ball gap needed to push the last ball straight out from the middle.'),
        overLand: shownLength("Ball gap needed to bring it in from the side, over the outer ring's land."),
      },
      { description: 'The ball gap that each way in needs.' },
    ),
    eccentricFilling: Type.Object(
      {
        mostBalls: Type.Integer({
          description:
            'Balls that lie in half a turn, or a little more by the play: all that two one-piece rings could take.',
        }),
        roomBetweenLands: Type.Boolean({
          description: 'Whether a ball passes between the lands with the inner ring set aside.',
        }),
      },
      { description: 'How many balls go in with the inner ring all the way to one side.' },
    ),
    steps: Type.Array(Type.String(), { description: 'Steps in order.' }),
  },
  { $id: 'Assembly', description: 'Assembly of the bearing.' },
)

export const RING = {
  ballDiameter: shownLength(
    'The diameter that closes the ring: the mean of the measured balls, or else the nominal one.',
  ),
  closedPitchRadius: shownLength('Pitch radius at which the touching balls exactly close.'),
  pitchRadius: shownLength('Pitch radius that leaves `ballGap`.'),
  pitchDiameter: shownLength('Circle through the centres of the seated balls.'),
  ballGap: shownLength('Gap between the last ball and the first when all others are pushed together.'),
  assemblyGap: shownLength('Least ball gap at which the last ball goes in without force: an estimate, wood gives.'),
  gapPerPitchRadius: shownNumber('Change of the ball gap per unit of pitch radius: about 2π.'),
}
export const gapPerBallDiameter = shownNumber(
  'Change of the ball gap per unit of diameter when all balls grow and the groove stays.',
)
export const PLAY = {
  radialInternalClearance: shownLength('Play: how far one ring moves from side to side.'),
  axialPlay: shownLength('How far one ring moves along the axis.'),
  tilt: shownNumber('Angle by which the axis of the inner ring can lean either way, in degrees: an estimate.'),
}
export const LANDS = {
  landGap: shownLength('Space between the lands of concentric rings.'),
  leastLandGap: shownLength('Smallest space between the lands, with the inner ring all the way to one side.'),
}

export const RadialDesignResponse = Type.Object(
  answerOf(['radial'], requestRef('radial'), {
    ...RING,
    gapPerGrooveDepth: shownNumber('Change of the ball gap per unit of groove depth.'),
    gapPerBallDiameter,
    outerRing: refTo<typeof OuterRing>('OuterRing'),
    innerRing: refTo<typeof InnerRing>('InnerRing'),
    ...LANDS,
    ...PLAY,
    gauge: refTo<typeof Gauge>('Gauge'),
    assembly: refTo<typeof Assembly>('Assembly'),
    dimensions: Type.Array(refTo<typeof Dimension>('Dimension')),
    stock: Type.Optional(refTo<typeof Stock>('Stock')),
  }),
  { $id: 'RadialDesignResponse', description: 'Every size to cut, the gauges, and what to watch.' },
)
export type RadialDesignResponse = Static<typeof RadialDesignResponse>

export const DESIGN_ANSWER_SCHEMAS = [...STOCK_SCHEMAS, OuterRing, InnerRing, Gauge, Assembly, RadialDesignResponse]
