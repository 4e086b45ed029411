import { type Static, Type } from 'typebox'
import {
  type Dimension as CoreDimension,
  DIMENSION_SYMBOLS,
  type DimensionKey,
  isByCaliper,
} from '#shared/bearing/dimensions.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import { complete, named, text } from '#src/api/schema.ts'
import { dimensionName } from '#src/words/dimension-names.ts'
import type { Terms } from '#src/words/terms.ts'
import { show, shownLength } from './length.ts'
import { showNumber, shownNumber } from './number.ts'

export const Dimension = named('Dimension', 'One size to work to.', {
  key: Type.Unsafe<DimensionKey>(text('A name for programs that never changes: the path of the value in this answer.')),
  symbol: text('The symbol of bearing standards, where there is one.'),
  name: text('The size in words.'),
  value: shownLength('The finished size.'),
  cutTo: Type.Optional(shownLength('The size to turn to, so that the finish or raised grain brings it to `value`.')),
  shop: text('`value` to the nearest figure of the rule or caliper.'),
  cutToShop: Type.Optional(
    text('`cutTo` to the nearest figure of the rule or caliper, where a finish makes it differ.'),
  ),
  shopError: shownLength('Shop figure minus `value`: above 0 where the shop figure is larger.'),
  byCaliper: Type.Optional(
    Type.Boolean({
      description:
        'Whether a caliper must be set to this size, because the rounding of a rule would spoil the gap, the play, the seat of the balls, or a seat on its shaft or in its housing.',
    }),
  ),
  gapPerUnit: Type.Optional(
    shownNumber(
      'Change of the ball gap per unit of this size, with everything else fixed: for the land the groove depth, for the groove the land.',
    ),
  ),
  gapChangeAtShop: Type.Optional(shownLength('Change of the ball gap when you cut to the shop figure.')),
})

/** An answer has some thirty of these: each is written out, and not shown by its schema, which takes three times as long. */
export function toDimension(row: CoreDimension, resolved: ResolvedBalls, terms: Terms): Static<typeof Dimension> {
  const { key, value, cutTo, shop, cutToShop, gapPerUnit, gapChangeAtShop } = row
  const { units } = resolved.input
  return complete<Static<typeof Dimension>>({
    key,
    symbol: DIMENSION_SYMBOLS[key],
    name: dimensionName(key, terms),
    value: show(value, units),
    cutTo: cutTo === undefined ? undefined : show(cutTo, units),
    shop: shop.text,
    cutToShop: cutToShop?.text,
    shopError: show(shop.error, units),
    byCaliper: isByCaliper(key, resolved) ? true : undefined,
    gapPerUnit: gapPerUnit === undefined ? undefined : showNumber(gapPerUnit),
    gapChangeAtShop: gapChangeAtShop === undefined ? undefined : show(gapChangeAtShop, units),
  })
}
