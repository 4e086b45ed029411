import { group, type InputOf, length, nonNegativeLength } from '#shared/bearing/field.ts'
import * as fields from '#shared/bearing/fields.ts'

const CAGE = group(
  'CageRequest',
  'Options for the cage.',
  {
    web: length(
      'Least wood between two pockets.',
      fields.trade(
        'a quarter of a ball, and more where the balls would otherwise not go in between one-piece rings',
        'enough wood between two pockets, and enough space for the balls to go in',
      ),
    ),
    pitchDiameter: length('Diameter of the circle through the centres of the balls. Use instead of `web`.'),
    pocketClearance: nonNegativeLength(
      'Diameter of a pocket minus the diameter of a ball.',
      fields.trade('1/20 of a ball', 'the ball rolls freely in its pocket and does not rattle'),
    ),
    landClearance: nonNegativeLength(
      'Space between the cage and the land of each ring.',
      fields.trade(
        '1/25 of a ball',
        'the cage clears both lands when a ring moves to one side and when the wood moves',
      ),
    ),
    width: length(
      'Width of the cage, along the axis.',
      fields.trade('the width of the rings', 'as wide as the rings, so that nothing stands out'),
    ),
  },
  ['web', 'pitchDiameter'],
)

/** Fewer balls than a full ring, kept apart by a cage. */
export const CAGED_FIELDS = group(
  'CagedDesignRequest',
  'Fewer balls than a full ring, kept apart by a cage, between rings that need no split.',
  {
    balls: fields.BALLS,
    bore: fields.BORE,
    outerRing: fields.outerRingGroup(
      'CagedOuterRingRequest',
      fields.trade('0.2', 'shallow: a ball passes between the lands when the inner ring is moved to one side'),
    ),
    innerRing: fields.innerRingGroup(
      'CagedInnerRingRequest',
      fields.trade('0.25', 'both grooves together are no deeper than half a ball, so that the balls go in'),
    ),
    cage: CAGE,
    groove: fields.GROOVE,
    radialInternalClearance: fields.radialInternalClearance('ball'),
    finishAllowance: fields.FINISH_ALLOWANCE,
    width: fields.GROOVED_WIDTH,
    split: fields.splitField(fields.trade('none', 'fewer balls than a full ring go in between one-piece rings')),
    shopDenominator: fields.SHOP_DENOMINATOR,
  },
)

export type CagedInput = fields.Tagged<'caged'> & InputOf<typeof CAGED_FIELDS.fields>
