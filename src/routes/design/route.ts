import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { design } from '#shared/bearing/design.ts'
import { stockBeyondBounds } from '#shared/bearing/stock/input.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { answerTypeOf } from '#src/wire/arrangement-answer.ts'
import { wordedFor } from '#src/wire/arrangement-words.ts'
import { type DesignRequest, toDesignInput } from '#src/wire/design-input.ts'
import { refuseDesign } from '#src/wire/refusal.ts'
import { toStockInput } from '#src/wire/stock-input.ts'
import { answerTo, DESIGN_ANSWERS } from './answers.ts'
import { withStock } from './stock.ts'
import { toDesignResponse } from './translate.ts'

export const designRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/design',
    get: true,
    mediaTypes: ({ method, body, query }) => [answerTypeOf(method === 'POST' ? body : query)],
    schema: {
      operationId: 'design',
      tags: ['bearing'],
      summary: 'Every size to cut, from balls, count and bore',
      body: refTo<typeof DesignRequest>('DesignRequest'),
      response: {
        200: { description: 'Every size, the gauges, and what to watch', content: DESIGN_ANSWERS },
        422: problem('Cannot exist'),
      },
    },
    handler: (body, _request, reply) => {
      if (body.stock === undefined) {
        const answer = answerTo(toDesignInput(body))
        return answer.ok ? wordedFor(body, answer.value) : refuseDesign(reply, answer.error, body)
      }
      const designed = design(toDesignInput(body), 'stock')
      if (!designed.ok) return refuseDesign(reply, designed.error, body)
      const answer = toDesignResponse(designed.value)
      const stock = toStockInput(body.stock, body.units)
      const beyond = stockBeyondBounds(stock, body.units)
      return beyond.length > 0 ? refuseDesign(reply, beyond, body) : withStock(answer, designed.value.bearing, stock)
    },
  })
}
