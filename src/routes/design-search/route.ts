import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { computingRoute } from '#src/http/computing-route.ts'
import { notValid, problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import {
  BallStock,
  BoreLimits,
  CountLimits,
  DesignSearchRequest,
  DesignSearchResponse,
  DroppedCandidates,
  LengthLimits,
  RankedDesign,
  SearchCriterion,
  SearchLoad,
  SearchWeights,
} from './schema.ts'
import { toDesignSearchInput, toDesignSearchResponse } from './translate.ts'

const INPUTS = [BallStock, LengthLimits, BoreLimits, CountLimits, SearchWeights, SearchLoad, DesignSearchRequest]
const OUTPUTS = [SearchCriterion, RankedDesign, DroppedCandidates, DesignSearchResponse]

export const DESIGN_SEARCH_SCHEMAS = [...INPUTS, ...OUTPUTS]

export const designSearchRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/design-search',
    schema: {
      operationId: 'designSearch',
      tags: ['bearing'],
      summary: 'From limits and what is on hand: the best designs, ranked, each with its reasons',
      body: refTo<typeof DesignSearchRequest>('DesignSearchRequest'),
      response: { 200: refTo<typeof DesignSearchResponse>('DesignSearchResponse'), 503: problem('Too busy') },
    },
    handler: async (body, request) => {
      const input = toDesignSearchInput(body)
      if (!input.ok) throw notValid(input.error)
      return toDesignSearchResponse(await app.runTask('designSearch', input.value, request))
    },
  })
}
