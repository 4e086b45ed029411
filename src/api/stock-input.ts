import { type Static, Type } from 'typebox'
import { LUMBERS, type Lumber, type SettledStock, type StockInput } from '#shared/making/input.ts'
import { SCREW_GAUGES } from '#shared/making/split-ring.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { refTo } from '#src/http/schema.ts'
import { type Length, type NonNegativeLength, show, toMm } from './length.ts'
import { present } from './optional.ts'

const length = (description: string) => Type.Unsafe<Length>({ ...refTo<typeof Length>('Length'), description })
const size0 = (description: string) =>
  Type.Unsafe<NonNegativeLength>({ ...refTo<typeof NonNegativeLength>('NonNegativeLength'), description })

/** Fewer are no ring, more are a round one. */
const SEGMENTS = { minimum: 3, maximum: 96 } as const
const SCREWS = { minimum: 2, maximum: 48 } as const

export const StockRequest = Type.Object(
  {
    lumber: Type.Optional(
      Type.Unsafe<Lumber>(
        Type.Enum(LUMBERS, { type: 'string', description: 'Which sizes and pilot holes count. Default: hardwood.' }),
      ),
    ),
    turningAllowance: Type.Optional(size0('Left for the lathe on each cylinder, by radius. Default: 1/4 in or 6 mm.')),
    sideAllowance: Type.Optional(size0('Left on each side of a ring. Default: 0, the sides as planed.')),
    sawKerf: Type.Optional(size0('Of the saw that cuts the circles. Default: 1/16 in or 1.5 mm.')),
    miterKerf: Type.Optional(size0('Of the saw that cuts miters. Default: 1/8 in or 3 mm.')),
    entryHoleDiameter: Type.Optional(length('Through which a saw enters to cut the hole. Default: 3/8 in or 10 mm.')),
    boardLength: Type.Optional(length('Of a board. Default: 96 in or 2400 mm.')),
    segments: Type.Optional(
      Type.Object(
        {
          outerRing: Type.Optional(Type.Integer({ ...SEGMENTS, description: 'Pieces of a segmented outer ring.' })),
          innerRing: Type.Optional(Type.Integer({ ...SEGMENTS, description: 'Pieces of a segmented inner ring.' })),
        },
        { description: 'For rings glued up of segments.', additionalProperties: false },
      ),
    ),
    screws: Type.Optional(
      Type.Object(
        {
          count: Type.Optional(Type.Integer({ ...SCREWS, description: 'Default: 4, 6 or 8 by the size of the ring.' })),
          gauge: Type.Optional(
            Type.Unsafe<number>(
              Type.Enum(SCREW_GAUGES, {
                type: 'integer',
                description: 'Default: the thickest for which there is wood.',
              }),
            ),
          ),
        },
        { description: 'That hold the halves of the split ring.', additionalProperties: false },
      ),
    ),
    chuck: Type.Optional(
      Type.Object(
        { least: length('Smallest diameter.'), most: length('Largest diameter.') },
        { description: 'What the chuck grips.', additionalProperties: false },
      ),
    ),
    swing: Type.Optional(length('Largest diameter that turns over the bed.')),
  },
  {
    $id: 'StockRequest',
    description:
      'Asks /v1/design for blanks, boards, screws and work holding too; other paths do not look at it. An empty object takes every default, all common practice.',
    additionalProperties: false,
  },
)
export type StockRequest = Static<typeof StockRequest>

/** Added once by `app.ts`, before the design's own. */
export const STOCK_INPUT_SCHEMAS = [StockRequest]

export function toStockInput(request: StockRequest, units: Units): StockInput {
  const size = (given: Length | undefined): Mm | undefined => (given === undefined ? undefined : toMm(given, units))
  const { chuck, segments, screws } = request
  return present<StockInput>({
    lumber: request.lumber,
    turningAllowance: size(request.turningAllowance),
    sideAllowance: size(request.sideAllowance),
    sawKerf: size(request.sawKerf),
    miterKerf: size(request.miterKerf),
    entryHoleDiameter: size(request.entryHoleDiameter),
    boardLength: size(request.boardLength),
    segments:
      segments &&
      present<NonNullable<StockInput['segments']>>({ outerRing: segments.outerRing, innerRing: segments.innerRing }),
    screws: screws && present<NonNullable<StockInput['screws']>>({ count: screws.count, gauge: screws.gauge }),
    chuck: chuck && { least: toMm(chuck.least, units), most: toMm(chuck.most, units) },
    swing: size(request.swing),
  })
}

/** With every default filled in: sent again, it means the same. */
export function toStockRequest(stock: SettledStock, units: Units): StockRequest {
  const { chuck, swing, segments, screws } = stock
  return present<StockRequest>({
    lumber: stock.lumber,
    turningAllowance: show(stock.turningAllowance, units),
    sideAllowance: show(stock.sideAllowance, units),
    sawKerf: show(stock.sawKerf, units),
    miterKerf: show(stock.miterKerf, units),
    entryHoleDiameter: show(stock.entryHoleDiameter, units),
    boardLength: show(stock.boardLength, units),
    segments: segments && { ...segments },
    screws: screws && { ...screws },
    chuck: chuck && { least: show(chuck.least, units), most: show(chuck.most, units) },
    swing: swing === undefined ? undefined : show(swing, units),
  })
}
