import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { foreignToStock, stockBeyondBounds } from '#shared/making/input.ts'
import { answerTypeOf } from '#src/api/arrangement-answer.ts'
import { type DesignRequest, toDesignInput } from '#src/api/design-input.ts'
import { refuseDesign } from '#src/api/refusal.ts'
import { toStockInput } from '#src/api/stock-input.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { wordedFor } from '#src/words/arrangement-words.ts'
import { answerTo, DESIGN_ANSWERS } from './answers.ts'

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
      const { stock: asked } = body
      const answered = answerTo(toDesignInput(body))
      if (!answered.ok) return refuseDesign(reply, answered.error, body)
      const { answer, withStock } = answered.value
      if (asked === undefined) return wordedFor(body, answer)
      const stock = toStockInput(asked, body.units)
      const refused = [...foreignToStock(toDesignInput(body), stock), ...stockBeyondBounds(stock, body.units)]
      return refused.length > 0 ? refuseDesign(reply, refused, body) : wordedFor(body, withStock(stock))
    },
  })
}
