import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { referenceRoute } from '#src/http/computing-route.ts'
import { refTo } from '#src/http/schema.ts'
import { toFastenersResponse } from './present.ts'
import { DrilledHole, FastenersRequest, FastenersResponse, WoodScrew } from './schema.ts'

export const FASTENERS_SCHEMAS = [DrilledHole, WoodScrew, FastenersResponse]

export const fastenersRoute: FastifyPluginAsyncTypebox = async (app) => {
  referenceRoute(app, {
    path: '/fasteners',
    schema: {
      operationId: 'fasteners',
      tags: ['reference'],
      summary: 'Wood screws by gauge, with head, clearance and pilot holes',
      body: FastenersRequest,
      response: { 200: refTo<typeof FastenersResponse>('FastenersResponse') },
    },
    handler: toFastenersResponse,
  })
}
