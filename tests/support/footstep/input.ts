import { group, type InputOf, length } from '#shared/bearing/field.ts'
import * as fields from '#shared/bearing/fields.ts'

const CUP = group('CupRequest', 'Options for the cup.', {
  floor: length(
    'Wood under the balls.',
    fields.trade('half a ball diameter', 'half a ball of wood carries what stands on the balls'),
  ),
  wall: length('Wood round the balls.', fields.trade('2/3 of a ball diameter', 'two thirds of a ball of wood')),
})

/** A full ring of balls in a flat cup, the axis upright. */
export const FOOTSTEP_FIELDS = group('FootstepDesignRequest', 'A full ring of balls in a flat cup, the axis upright.', {
  balls: fields.BALLS,
  bore: fields.BORE,
  cup: CUP,
  ...fields.gapFields('open-side'),
  shopDenominator: fields.SHOP_DENOMINATOR,
})

export type FootstepInput = fields.Tagged<'footstep'> & InputOf<typeof FOOTSTEP_FIELDS.fields>
