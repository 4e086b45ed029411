import { type Design, design } from '#shared/bearing/arrangements.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import { foreignToStock, type StockInput, stockBeyondBounds } from '#shared/making/input.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type DesignRequest, toDesignInput } from './design-input.ts'
import { present } from './optional.ts'
import { toStockInput } from './stock-input.ts'

/** A design, and what its maker says of wood, saw and lathe, where anything. */
export interface StockedDesign {
  readonly designed: Design
  readonly stock?: StockInput
}

/** The bearing of a request with its stock, or every reason why there is none. */
export function stockedDesign(body: DesignRequest): Result<StockedDesign, readonly Refusal[]> {
  const input = toDesignInput(body)
  const designed = design(input)
  if (!designed.ok) return designed
  const stock = body.stock && toStockInput(body.stock, body.units)
  const refused = stock === undefined ? [] : [...foreignToStock(input, stock), ...stockBeyondBounds(stock, body.units)]
  return refused.length > 0 ? fail(refused) : ok(present<StockedDesign>({ designed: designed.value, stock }))
}
