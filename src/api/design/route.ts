import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { design } from '#shared/bearing/arrangements.ts'
import { answerOf, type DesignResponse } from '#src/api/design/arrangements/all.ts'
import { designRef, toDesignInput } from '#src/api/design-input.ts'
import { refusedDesign } from '#src/api/refusal.ts'
import { seasonedDesign } from '#src/api/seasoned.ts'
import { EVERY_ARRANGEMENT, servedBy } from '#src/api/served.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'

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
      response: {
        200: refTo<typeof DesignResponse>('DesignResponse'),
        422: problem('Cannot exist'),
        503: problem('Too busy'),
      },
    },
    handler: async (body, request) => {
      const made = design(toDesignInput(await seasonedDesign(app, body, request)))
      if (!made.ok) throw refusedDesign(made.error, body)
      return answerOf(made.value)
    },
  })
}
