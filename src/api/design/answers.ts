import type { Design } from '#shared/bearing/arrangements.ts'
import type { StockInput } from '#shared/making/input.ts'
import { answerUnion } from '#src/api/answer.ts'
import { toCagedDesignResponse } from './caged-present.ts'
import { CAGED_SCHEMAS, CagedDesignResponse } from './caged-schema.ts'
import { toRadialDesignResponse } from './present.ts'
import { toRollerDesignResponse } from './roller-present.ts'
import { ROLLER_SCHEMAS, RollerDesignResponse } from './roller-schema.ts'
import { DESIGN_ANSWER_SCHEMAS, RadialDesignResponse } from './schema.ts'
import { plateStockAnswer, stockAnswer } from './stock.ts'
import { toThrustDesignResponse } from './thrust-present.ts'
import { THRUST_SCHEMAS, ThrustDesignResponse } from './thrust-schema.ts'

export const DesignResponse = answerUnion(
  'DesignResponse',
  'Every size to cut, the gauges, and what to watch.',
  RadialDesignResponse,
  ThrustDesignResponse,
  RollerDesignResponse,
  CagedDesignResponse,
)

export const DESIGN_SCHEMAS = [
  ...DESIGN_ANSWER_SCHEMAS,
  ...ROLLER_SCHEMAS,
  ...THRUST_SCHEMAS,
  ...CAGED_SCHEMAS,
  DesignResponse,
]

type Answer = RadialDesignResponse | RollerDesignResponse | ThrustDesignResponse | CagedDesignResponse

/** A design as it is answered, with what is needed to make it where the caller asked for that. */
export function answerOf({ bearing, ...rest }: Design, stock?: StockInput): Answer {
  if ('plate' in bearing) {
    return toThrustDesignResponse({ ...rest, bearing }, stock && plateStockAnswer(bearing, stock))
  }
  const made = stock && stockAnswer(bearing, stock)
  if ('cage' in bearing) return toCagedDesignResponse({ ...rest, bearing }, made)
  return bearing.cheeks === undefined
    ? toRadialDesignResponse({ ...rest, bearing }, made)
    : toRollerDesignResponse({ ...rest, bearing }, made)
}
