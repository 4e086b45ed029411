import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { design } from '#shared/bearing/design.ts'
import { stockBeyondBounds } from '#shared/bearing/stock/input.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { type DesignRequest, toDesignInput } from '#src/wire/design-input.ts'
import { refuseDesign } from '#src/wire/refusal.ts'
import { toStockInput } from '#src/wire/stock-input.ts'
import { Assembly, DesignResponse, Gauge, InnerRing, OuterRing } from './schema.ts'
import { withStock } from './stock.ts'
import { STOCK_SCHEMAS } from './stock-schema.ts'
import { toDesignResponse } from './translate.ts'

export const DESIGN_SCHEMAS = [...STOCK_SCHEMAS, OuterRing, InnerRing, Gauge, Assembly, DesignResponse]

export const designRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/design',
    get: true,
    schema: {
      operationId: 'design',
      tags: ['bearing'],
      summary: 'Every size to cut, from balls, count and bore',
      body: refTo<typeof DesignRequest>('DesignRequest'),
      response: { 200: refTo<typeof DesignResponse>('DesignResponse'), 422: problem('Cannot exist') },
    },
    handler: (body, _request, reply) => {
      const designed = design(toDesignInput(body))
      if (!designed.ok) return refuseDesign(reply, designed.error, body.units)
      const answer = toDesignResponse(designed.value)
      if (body.stock === undefined) return answer
      const stock = toStockInput(body.stock, body.units)
      const beyond = stockBeyondBounds(stock, body.units)
      return beyond.length > 0
        ? refuseDesign(reply, beyond, body.units)
        : withStock(answer, designed.value.bearing, stock)
    },
  })
}
