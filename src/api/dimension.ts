import { type Static, Type } from 'typebox'
import { type Dimension as CoreDimension, DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import type { Units } from '#shared/units/length.ts'
import { refTo } from '#src/http/schema.ts'
import { DIMENSION_NAMES } from '#src/words/dimension-names.ts'
import { type ShownLength, show } from './length.ts'
import { written } from './optional.ts'

const length = refTo<typeof ShownLength>('ShownLength')

export const Dimension = Type.Object(
  {
    symbol: Type.String({ description: "A bearing maker's symbol where there is one." }),
    name: Type.String({ description: 'The size in words.' }),
    value: Type.Unsafe<ShownLength>({ ...length, description: 'The finished size.' }),
    cutTo: Type.Optional(
      Type.Unsafe<ShownLength>({
        ...length,
        description: 'The size to turn to, so that film or raised grain bring it to `value`.',
      }),
    ),
    shop: Type.String({ description: 'The nearest figure of the rule or caliper to `value`.' }),
    cutToShop: Type.Optional(
      Type.String({
        description: 'The nearest figure of the rule or caliper to `cutTo`, where a finish makes it another.',
      }),
    ),
    shopError: Type.Unsafe<ShownLength>({
      ...length,
      description: 'Shop figure less `value`: above 0 when the shop figure is the larger.',
    }),
    gapPerUnit: Type.Optional(
      Type.Number({
        description:
          'How much the ball gap moves per unit of this size, all else staying: at the land the groove depth, at the groove the land.',
      }),
    ),
    gapChangeAtShop: Type.Optional(
      Type.Unsafe<ShownLength>({
        ...length,
        description: 'By how much the ball gap changes when the shop figure is cut.',
      }),
    ),
  },
  { $id: 'Dimension', description: 'One size to work to.' },
)

export function toDimension(row: CoreDimension, units: Units): Static<typeof Dimension> {
  return written<Static<typeof Dimension>>({
    symbol: DIMENSION_SYMBOLS[row.key],
    name: DIMENSION_NAMES[row.key],
    value: show(row.value, units),
    cutTo: row.cutTo === undefined ? undefined : show(row.cutTo, units),
    shop: row.shop.text,
    shopError: show(row.shop.error, units),
    cutToShop: row.cutToShop?.text,
    gapPerUnit: row.gapPerUnit,
    gapChangeAtShop: row.gapChangeAtShop === undefined ? undefined : show(row.gapChangeAtShop, units),
  })
}
