import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { loadCheck } from '#shared/bearing/load-check/load-check.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { wordedFor } from '#src/wire/arrangement-words.ts'
import { refuseInnerDesign } from '#src/wire/refusal.ts'
import {
  AtSpeed,
  LoadCheckRequest,
  LoadCheckResponse,
  LoadLimit,
  LoadSharing,
  SeatLoad,
  SpeedLimit,
  TurnRatios,
} from './schema.ts'
import { spokenOf, toLoadCheckInput, toLoadCheckResponse } from './translate.ts'

export const LOAD_CHECK_SCHEMAS = [
  LoadCheckRequest,
  LoadSharing,
  SeatLoad,
  LoadLimit,
  SpeedLimit,
  TurnRatios,
  AtSpeed,
  LoadCheckResponse,
]

export const loadCheckRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/load-check',
    schema: {
      operationId: 'loadCheck',
      tags: ['bearing'],
      summary: 'What a load does to the balls and the wood, how fast it may turn, and why: an estimate',
      body: refTo<typeof LoadCheckRequest>('LoadCheckRequest'),
      response: { 200: refTo<typeof LoadCheckResponse>('LoadCheckResponse'), 422: problem('Cannot exist') },
    },
    handler: (body, _request, reply) => {
      const check = loadCheck(toLoadCheckInput(body))
      if (check.ok) return wordedFor(body.design, toLoadCheckResponse(check.value, spokenOf(body)))
      return refuseInnerDesign(reply, check.error, body.design)
    },
  })
}
