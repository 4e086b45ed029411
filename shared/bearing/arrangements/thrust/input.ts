import { group, type InputOf, length } from '#shared/bearing/field.ts'
import * as fields from '#shared/bearing/fields.ts'

const PLATES = group(
  'PlatesRequest',
  'Options for both plates, which are identical.',
  {
    ...fields.depthFields(fields.trade('0.3', 'deep enough to hold the ball, and the plates stay well apart'), 'face'),
    ...fields.outsideFields(
      'Least wood between the edge of the groove and the outside.',
      fields.trade('a ball diameter', 'wood round the groove as wide as a ball'),
    ),
    thickness: length(
      'Thickness of each plate.',
      fields.trade('a ball diameter', 'most of the thickness is left under the groove'),
    ),
  },
  fields.DEPTH_CHOICE,
  ...fields.OUTSIDE_CHOICES,
)

/** A full ring of balls between two flat plates with an upright axis. */
export const THRUST_FIELDS = group(
  'ThrustDesignRequest',
  'A full ring of balls between two flat plates, each with a groove. The axis is upright.',
  {
    balls: fields.BALLS,
    bore: fields.BORE,
    plates: PLATES,
    groove: fields.GROOVE,
    ...fields.gapFields('open-side'),
    finishAllowance: fields.FINISH_ALLOWANCE,
    shopDenominator: fields.SHOP_DENOMINATOR,
  },
)

export type ThrustInput = fields.Tagged<'thrust'> & InputOf<typeof THRUST_FIELDS.fields>
