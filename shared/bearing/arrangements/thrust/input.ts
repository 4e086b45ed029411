import { group, type InputOf, length } from '#shared/bearing/field.ts'
import * as fields from '#shared/bearing/fields.ts'

const PLATES = group(
  'PlatesRequest',
  'Options for both plates, which are cut alike.',
  {
    ...fields.depthFields(
      fields.trade('0.3', 'three tenths of a ball: deep enough to hold it, and the plates stay well apart'),
    ),
    ...fields.outsideFields(
      'Least wood from the edge of the groove outward.',
      fields.trade('a ball diameter', 'a ball of wood round the groove'),
    ),
    thickness: length(
      'Thickness of each plate.',
      fields.trade('a ball diameter', 'as thick as a ball: most of it is left under the groove'),
    ),
  },
  fields.DEPTH_CHOICE,
  ...fields.OUTSIDE_CHOICES,
)

/** A full ring of balls between two flat plates, the axis upright. */
export const THRUST_FIELDS = group(
  'ThrustDesignRequest',
  'A full ring of balls between two flat plates with a groove each, the axis upright.',
  {
    balls: fields.BALLS,
    bore: fields.BORE,
    plates: PLATES,
    groove: fields.GROOVE,
    ...fields.gapFields(fields.trade('1/20 of a ball', 'a gap that shows')),
    finishAllowance: fields.FINISH_ALLOWANCE,
    shopDenominator: fields.SHOP_DENOMINATOR,
  },
)

export type ThrustInput = fields.Tagged<'thrust'> & InputOf<typeof THRUST_FIELDS.fields>
