import { group, type InputOf } from '#shared/bearing/field.ts'
import * as fields from '#shared/bearing/fields.ts'

/** A full ring of balls between two grooved rings. */
export const RADIAL_FIELDS = group('RadialDesignRequest', 'A full ring of balls between two grooved rings.', {
  balls: fields.BALLS,
  bore: fields.BORE,
  outerRing: fields.outerRingGroup(
    'OuterRingRequest',
    fields.trade('0.2', 'shallow: the last ball still goes in over the land, and sanding to fit is quick'),
  ),
  innerRing: fields.innerRingGroup(
    'InnerRingRequest',
    fields.trade('0.4', 'deep: it holds the balls once the split ring is closed'),
  ),
  groove: fields.GROOVE,
  ...fields.gapFields('into-groove'),
  radialInternalClearance: fields.radialInternalClearance('ball'),
  finishAllowance: fields.FINISH_ALLOWANCE,
  width: fields.GROOVED_WIDTH,
  split: fields.splitField(fields.trade('inner-ring', 'the ring with the deep groove is the one to split')),
  shopDenominator: fields.SHOP_DENOMINATOR,
})

export type RadialInput = Partial<Pick<fields.Tagged<'radial'>, 'arrangement'>> &
  Omit<fields.Tagged<'radial'>, 'arrangement'> &
  InputOf<typeof RADIAL_FIELDS.fields>
