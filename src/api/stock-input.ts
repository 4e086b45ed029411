import { type Static, Type } from 'typebox'
import { LUMBERS, type Lumber, type ResolvedStock, STOCK_DEFAULTS, type StockInput } from '#shared/making/input.ts'
import { SCREW_GAUGES } from '#shared/making/split-ring.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { choiceOf, namedRequest, requestObject } from '#src/api/schema.ts'
import { SEGMENT_COUNT } from './climate.ts'
import { echo, type Length, length, nonNegativeLength, toMm } from './length.ts'
import { present } from './optional.ts'

const usually = (means: string, path: keyof typeof STOCK_DEFAULTS): string =>
  `${means} Default: ${STOCK_DEFAULTS[path].stated}.`

const SCREWS = { minimum: 2, maximum: 48 } as const

const gluedRing = (ring: string) =>
  requestObject(`The wood of the ${ring} ring.`, {
    segments: requestObject('A ring glued up of straight pieces with miter joints.', {
      count: Type.Integer({ ...SEGMENT_COUNT, description: 'Pieces in one layer.' }),
    }),
  })

export const StockRequest = namedRequest(
  'StockRequest',
  'Wood, saw, lathe and screws. /v1/job-sheet and /v1/drawings follow it, and /v1/design answers with blanks, boards, screws and work holding; other paths do not read it. An empty object takes every default, all common practice.',
  {
    lumber: Type.Optional(
      choiceOf<Lumber>(usually('Kind of lumber, which decides sizes and pilot holes.', '/lumber'), LUMBERS),
    ),
    turningAllowance: Type.Optional(
      nonNegativeLength(usually('Left for the lathe on each cylinder, by radius.', '/turningAllowance')),
    ),
    sideAllowance: Type.Optional(nonNegativeLength(usually('Left on each side of a ring.', '/sideAllowance'))),
    sawKerf: Type.Optional(nonNegativeLength(usually('Kerf of the saw that cuts the circles.', '/sawKerf'))),
    miterKerf: Type.Optional(nonNegativeLength(usually('Kerf of the saw that cuts miters.', '/miterKerf'))),
    entryHoleDiameter: Type.Optional(
      length(usually('Through which a saw enters to cut the hole.', '/entryHoleDiameter')),
    ),
    boardLength: Type.Optional(length(usually('Length of a board.', '/boardLength'))),
    woods: Type.Optional(
      requestObject('How the rings are glued up.', {
        outerRing: Type.Optional(gluedRing('outer')),
        innerRing: Type.Optional(gluedRing('inner')),
      }),
    ),
    screws: Type.Optional(
      requestObject('Screws that hold the halves of the split ring, or the cheeks at its sides.', {
        count: Type.Optional(Type.Integer({ ...SCREWS, description: usually('How many of them.', '/screws/count') })),
        gauge: Type.Optional(
          Type.Unsafe<number>(
            Type.Enum(SCREW_GAUGES, {
              type: 'integer',
              description: usually('How thick they are.', '/screws/gauge'),
            }),
          ),
        ),
      }),
    ),
    chuck: Type.Optional(
      requestObject('Sizes that the chuck grips.', {
        min: length('Smallest diameter.'),
        max: length('Largest diameter.'),
      }),
    ),
    swing: Type.Optional(length('Largest diameter that turns over the bed.')),
  },
)
export type StockRequest = Static<typeof StockRequest>

/** Added once by `app.ts`, before the design's own. */
export const STOCK_INPUT_SCHEMAS = [StockRequest]

export function toStockInput(request: StockRequest, units: Units): StockInput {
  const size = (value: Length | undefined): Mm | undefined => (value === undefined ? undefined : toMm(value, units))
  const { chuck, woods, screws } = request
  return present<StockInput>({
    lumber: request.lumber,
    turningAllowance: size(request.turningAllowance),
    sideAllowance: size(request.sideAllowance),
    sawKerf: size(request.sawKerf),
    miterKerf: size(request.miterKerf),
    entryHoleDiameter: size(request.entryHoleDiameter),
    boardLength: size(request.boardLength),
    woods:
      woods && present<NonNullable<StockInput['woods']>>({ outerRing: woods.outerRing, innerRing: woods.innerRing }),
    screws: screws && present<NonNullable<StockInput['screws']>>({ count: screws.count, gauge: screws.gauge }),
    chuck: chuck && { min: toMm(chuck.min, units), max: toMm(chuck.max, units) },
    swing: size(request.swing),
  })
}

/** With every default filled in: sent again, it means the same. */
export function toStockRequest(stock: ResolvedStock, units: Units): StockRequest {
  const { chuck, swing, woods, screws } = stock
  return present<StockRequest>({
    lumber: stock.lumber,
    turningAllowance: echo(stock.turningAllowance, units),
    sideAllowance: echo(stock.sideAllowance, units),
    sawKerf: echo(stock.sawKerf, units),
    miterKerf: echo(stock.miterKerf, units),
    entryHoleDiameter: echo(stock.entryHoleDiameter, units),
    boardLength: echo(stock.boardLength, units),
    woods,
    screws: screws && { ...screws },
    chuck: chuck && { min: echo(chuck.min, units), max: echo(chuck.max, units) },
    swing: swing === undefined ? undefined : echo(swing, units),
  })
}
