import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { expectedEffort } from '#shared/questions/search/effort.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { notValid, problem, refuse } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { NO_ANSWER } from '#src/words/problem.ts'
import { searchDesigns } from '#src/workers/design-search.ts'
import { toDesignSearchInput, toDesignSearchResponse, toSearchFault } from './present.ts'
import type { DesignSearchRequest, DesignSearchResponse } from './schema.ts'

export const designSearchRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/design-search',
    schema: {
      operationId: 'designSearch',
      tags: ['bearing'],
      summary: 'The best designs within limits and from stock on hand, ranked, each with its reasons',
      body: refTo<typeof DesignSearchRequest>('DesignSearchRequest'),
      response: {
        200: refTo<typeof DesignSearchResponse>('DesignSearchResponse'),
        422: problem('Cannot exist, or takes more work than one request may'),
        503: problem('Too busy'),
      },
    },
    handler: async (body, request, reply) => {
      const input = toDesignSearchInput(body)
      if (!input.ok) throw notValid(input.error)
      const expected = { task: 'furtherSearch', units: expectedEffort(input.value) } as const
      const found = await app.inParts(request, expected, (runPart) => searchDesigns(input.value, runPart))
      if (found.ok) return toDesignSearchResponse(found.value, body)
      return refuse(
        reply,
        NO_ANSWER,
        found.error.map((refusal) => toSearchFault(refusal, body)),
      )
    },
  })
}
