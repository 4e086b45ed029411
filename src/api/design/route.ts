import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { foreignToStock, stockBeyondBounds } from '#shared/making/input.ts'
import { designRef, toDesignInput } from '#src/api/design-input.ts'
import { refuseDesign } from '#src/api/refusal.ts'
import { EVERY_ARRANGEMENT, servedBy } from '#src/api/served.ts'
import { toStockInput } from '#src/api/stock-input.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { answerTo, type DesignResponse } from './answers.ts'

export const designRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/design',
    get: true,
    schema: {
      operationId: 'design',
      tags: ['bearing'],
      summary: 'Design a bearing: every size to cut',
      description: `What must I cut? Send the number of balls, their diameter and the bore; every other value has a default, and \`assumed\` lists the defaults that were used. You get the finished sizes, the sizes to cut to, the gauges, and warnings with a change that clears each of them. ${servedBy(EVERY_ARRANGEMENT)}`,
      body: designRef,
      response: { 200: refTo<typeof DesignResponse>('DesignResponse'), 422: problem('Cannot exist') },
    },
    handler: (body, _request, reply) => {
      const input = toDesignInput(body)
      const stock = body.stock && toStockInput(body.stock, body.units)
      const answered = answerTo(input, stock)
      if (!answered.ok) return refuseDesign(reply, answered.error, body)
      if (stock === undefined) return answered.value
      const refused = [...foreignToStock(input, stock), ...stockBeyondBounds(stock, body.units)]
      return refused.length > 0 ? refuseDesign(reply, refused, body) : answered.value
    },
  })
}
