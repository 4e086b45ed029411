import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { expectedEffort } from '#shared/questions/search/effort.ts'
import { DESIGN_SEARCH } from '#shared/questions/search/input.ts'
import { servedBy } from '#src/api/served.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { notValid, problem, refused } from '#src/http/problem.ts'
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
      summary: 'Find the best designs within limits',
      description: `Which bearing fits my space, my balls and my cutters? Send limits for the outside diameter and the bore, and lists of what is on hand. You get the best designs, ranked, each with the marks that make up its score; no better design is missed. ${servedBy(DESIGN_SEARCH)}`,
      body: refTo<typeof DesignSearchRequest>('DesignSearchRequest'),
      response: {
        200: refTo<typeof DesignSearchResponse>('DesignSearchResponse'),
        422: problem('Cannot exist, or takes more work than one request may'),
      },
    },
    handler: async (body, request) => {
      const input = toDesignSearchInput(body)
      if (!input.ok) throw notValid(input.error)
      const expected = { task: 'furtherSearch', units: expectedEffort(input.value) } as const
      const found = await app.inParts(request, expected, (runPart) => searchDesigns(input.value, runPart))
      if (found.ok) return toDesignSearchResponse(found.value, body)
      throw refused(
        NO_ANSWER,
        found.error.map((refusal) => toSearchFault(refusal, body)),
      )
    },
  })
}
