import { type Static, Type } from 'typebox'
import type { Dimension as CoreDimension, DimensionKey } from '#shared/bearing/dimensions.ts'
import type { Units } from '#shared/units/length.ts'
import { refTo } from '#src/http/schema.ts'
import { type ShownLength, show } from './length.ts'
import { written } from './optional.ts'

const length = refTo<typeof ShownLength>('ShownLength')

export const Dimension = Type.Object(
  {
    symbol: Type.String({ description: "A bearing maker's symbol where there is one." }),
    name: Type.String(),
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

/** The trade's name for each size, and the symbol of ISO 15241 (from memory) or our own. */
const NAMES: Readonly<Record<DimensionKey, readonly [symbol: string, name: string]>> = {
  pitchDiameter: ['Dpw', 'pitch diameter'],
  outsideDiameter: ['D', 'outer ring, outside diameter'],
  outerLandDiameter: ['D1', 'outer ring, land diameter (the hole)'],
  outerGrooveBottomDiameter: ['De', 'outer ring, groove bottom diameter'],
  outerGrooveDepth: ['he', 'outer ring, groove depth'],
  outerGrooveRadius: ['re', 'outer ring, groove radius'],
  outerGrooveWidth: ['be', 'outer ring, groove width at the land'],
  outerWall: ['we', 'outer ring, wood behind the groove'],
  outerWidth: ['C', 'outer ring, width'],
  boreDiameter: ['d', 'inner ring, bore'],
  innerLandDiameter: ['d1', 'inner ring, land diameter (the outside)'],
  innerGrooveBottomDiameter: ['di', 'inner ring, groove bottom diameter'],
  innerGrooveDepth: ['hi', 'inner ring, groove depth'],
  innerGrooveRadius: ['ri', 'inner ring, groove radius'],
  innerGrooveWidth: ['bi', 'inner ring, groove width at the land'],
  innerWall: ['wi', 'inner ring, wood between bore and groove'],
  innerWidth: ['B', 'inner ring, width'],
  gaugeNominalDiameter: ['Dg', 'plug inside the seated balls'],
  gaugeGoDiameter: ['Dgo', 'go plug: enters'],
  gaugeNoGoDiameter: ['Dng', 'no-go plug: must not enter'],
  ballGap: ['g', 'ball gap'],
  assemblyGap: ['ga', 'least ball gap to get the last ball in (estimate)'],
  landGap: ['s', 'space between the lands'],
  radialInternalClearance: ['Gr', 'play, side to side'],
  axialPlay: ['Ga', 'play along the axis'],
}

export function toDimension(row: CoreDimension, units: Units): Static<typeof Dimension> {
  const [symbol, name] = NAMES[row.key]
  return written<Static<typeof Dimension>>({
    symbol,
    name,
    value: show(row.value, units),
    cutTo: row.cutTo === undefined ? undefined : show(row.cutTo, units),
    shop: row.shop.text,
    shopError: show(row.shop.error, units),
    cutToShop: row.cutToShop?.text,
    gapPerUnit: row.gapPerUnit,
    gapChangeAtShop: row.gapChangeAtShop === undefined ? undefined : show(row.gapChangeAtShop, units),
  })
}
