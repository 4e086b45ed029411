import { group, type InputOf, length, nonNegativeLength } from '#shared/bearing/field.ts'
import * as fields from '#shared/bearing/fields.ts'

const CAGE = group(
  'CageRequest',
  'Options for the cage.',
  {
    web: length(
      'Least wood between two pockets.',
      fields.trade(
        'a quarter of a ball, and more where the balls would not go in between rings of one piece',
        'a quarter of a ball of wood between two pockets, and more where the balls would otherwise not go in',
      ),
    ),
    pitchDiameter: length('Diameter of the circle through the centres of the balls. Instead of `web`.'),
    pocketClearance: nonNegativeLength(
      'How much wider than a ball a pocket is.',
      fields.trade('1/20 of a ball', 'a ball that rolls freely in its pocket and does not rattle'),
    ),
    landClearance: nonNegativeLength(
      'Space between the cage and the land of either ring.',
      fields.trade('1/25 of a ball', 'clear of both lands when the rings stand aside and the wood moves'),
    ),
    width: length(
      'Width of the cage, along the axis.',
      fields.trade('the width of the rings', 'as wide as the rings: nothing stands out'),
    ),
  },
  ['web', 'pitchDiameter'],
)

/** Fewer balls than fill the ring, held evenly by a cage. */
export const CAGED_FIELDS = group(
  'CagedDesignRequest',
  'Fewer balls than fill the ring, held evenly by a cage between rings that need no split.',
  {
    balls: fields.BALLS,
    bore: fields.BORE,
    outerRing: fields.outerRingGroup(
      'CagedOuterRingRequest',
      fields.trade('0.2', 'shallow: a ball passes between the lands with the inner ring aside'),
    ),
    innerRing: fields.innerRingGroup(
      'CagedInnerRingRequest',
      fields.trade('0.25', 'no deeper: both grooves together stay within half a ball, so that balls go in'),
    ),
    cage: CAGE,
    groove: fields.GROOVE,
    radialInternalClearance: fields.RADIAL_INTERNAL_CLEARANCE,
    finishAllowance: fields.FINISH_ALLOWANCE,
    width: fields.widthField(fields.trade('1 1/2 balls', 'one and a half balls: shoulders that do not chip')),
    split: fields.splitField(fields.trade('none', 'fewer balls than a full ring go in between one-piece rings')),
    shopDenominator: fields.SHOP_DENOMINATOR,
  },
)

export type CagedInput = fields.Tagged<'caged'> & InputOf<typeof CAGED_FIELDS.fields>
