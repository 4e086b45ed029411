import { type Static, Type } from 'typebox'
import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import { arrangementTag } from '#src/api/answer.ts'
import type { Assumption } from '#src/api/assumption.ts'
import type { Caution } from '#src/api/caution.ts'
import { requestRef } from '#src/api/design-input.ts'
import type { Dimension } from '#src/api/dimension.ts'
import { shownLength } from '#src/api/length.ts'
import type { Source } from '#src/api/source.ts'
import type { UnitsName } from '#src/api/units.ts'
import type { Warning } from '#src/api/warning.ts'
import { refTo } from '#src/http/schema.ts'
import { STOCK_SCHEMAS, type Stock } from './stock-schema.ts'

export const seat = Type.Enum(['bottom', 'edges'], {
  type: 'string',
  description:
    'Where the ball touches: the bottom of the groove, or its two edges when the groove is tighter than the ball.',
})

const ring = {
  landDiameter: shownLength('The cylinder on both sides of the groove.'),
  grooveBottomDiameter: shownLength('Across the bottoms of the groove.'),
  grooveDepth: shownLength('Land to groove bottom.'),
  seatDepth: shownLength('How deep below the land the ball really sits.'),
  grooveRadius: shownLength('Of the arc in section.'),
  grooveWidth: shownLength('At the land.'),
  wall: shownLength('Wood left behind the groove: to the outside (outer ring), to the bore (inner ring).'),
  width: shownLength('Of the ring, along the axis.'),
  seat,
}

export const OuterRing = Type.Object(
  { outsideDiameter: shownLength('Outside diameter.'), ...ring },
  { $id: 'OuterRing', description: 'Finished sizes.' },
)
export const InnerRing = Type.Object(
  { boreDiameter: shownLength('Bore.'), ...ring },
  { $id: 'InnerRing', description: 'Finished sizes.' },
)

export const Gauge = Type.Object(
  {
    nominalDiameter: shownLength('The circle inside the balls seated in the outer groove.'),
    goDiameter: shownLength('The plug at `minBallGap`: it must enter.'),
    noGoDiameter: shownLength('The plug at `maxBallGap`: it must not enter.'),
    gapPerBallDiameter: Type.Number({
      description: 'At a fixed plug the ball gap still moves by this much per unit of mean ball diameter.',
    }),
    note: Type.String({ description: 'What the plug is right for, in words.' }),
  },
  { $id: 'Gauge', description: 'Turned plugs that check the outer groove with the balls in it.' },
)

export const Assembly = Type.Object(
  {
    split: Type.Enum(['inner-ring', 'outer-ring', 'none'], {
      type: 'string',
      description: 'Which ring comes apart at mid groove.',
    }),
    easiestWay: Type.Enum(['from-inside', 'over-land', 'open-side'], {
      type: 'string',
      description: 'How the last ball goes in with least gap.',
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
    steps: Type.Array(Type.String(), { description: 'What to do, in order.' }),
  },
  { $id: 'Assembly', description: 'How the bearing goes together.' },
)

/** What every design's answer begins with. */
export const askedOf = <Name extends ArrangementName>(arrangement: Name) => ({
  arrangement: arrangementTag(arrangement),
  units: refTo<typeof UnitsName>('Units'),
  input: requestRef(arrangement),
  assumed: Type.Array(refTo<typeof Assumption>('Assumption'), {
    description: 'What the input left open, with the reason for each value.',
  }),
})
export const RING = {
  ballDiameter: shownLength(
    'The diameter that closes the ring: the mean of the measured balls, or else the nominal one.',
  ),
  closedPitchRadius: shownLength('Pitch radius at which the touching balls exactly close.'),
  pitchRadius: shownLength('Pitch radius that leaves the asked ball gap.'),
  pitchDiameter: shownLength('Circle through the centres of the seated balls.'),
  ballGap: shownLength('Gap between the last ball and the first, all others pushed together.'),
  assemblyGap: shownLength('Least ball gap at which the last ball goes in without force: an estimate, wood gives.'),
  gapPerPitchRadius: Type.Number({ description: 'How much the ball gap opens per unit of pitch radius: about 2π.' }),
}
export const gapPerBallDiameter = Type.Number({
  description: 'How much the ball gap moves when all balls grow, the groove staying as it is.',
})
export const PLAY = {
  radialInternalClearance: shownLength('Play: the whole travel of one ring from side to side.'),
  axialPlay: shownLength('The whole travel of one ring along the axis.'),
  tilt: Type.Number({ description: "How far the inner ring's axis can lean, either way, in degrees: an estimate." }),
}
export const LANDS = {
  landGap: shownLength('Space between the lands, rings concentric.'),
  leastLandGap: shownLength('The same with the inner ring all the way to one side.'),
}
export const NOTES = {
  warnings: Type.Array(refTo<typeof Warning>('Warning')),
  cautions: Type.Array(refTo<typeof Caution>('Caution')),
  sources: Type.Array(refTo<typeof Source>('Source')),
}

export const RadialDesignResponse = Type.Object(
  {
    ...askedOf('radial'),
    ...RING,
    gapPerGrooveDepth: Type.Number({ description: 'The same per unit of groove depth, through the seat.' }),
    gapPerBallDiameter,
    outerRing: refTo<typeof OuterRing>('OuterRing'),
    innerRing: refTo<typeof InnerRing>('InnerRing'),
    ...LANDS,
    ...PLAY,
    gauge: refTo<typeof Gauge>('Gauge'),
    assembly: refTo<typeof Assembly>('Assembly'),
    dimensions: Type.Array(refTo<typeof Dimension>('Dimension')),
    stock: Type.Optional(refTo<typeof Stock>('Stock')),
    ...NOTES,
  },
  { $id: 'RadialDesignResponse', description: 'Every size to cut, the gauges, and what to watch.' },
)
export type RadialDesignResponse = Static<typeof RadialDesignResponse>

export const DESIGN_ANSWER_SCHEMAS = [...STOCK_SCHEMAS, OuterRing, InnerRing, Gauge, Assembly, RadialDesignResponse]
