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
      summary: 'Wood screws with their holes',
      description:
        'Which screw fits, and which holes does it need? You get wood screws by gauge (inches) and by diameter (millimetres), with head, clearance hole and pilot holes; parameters narrow the list. Each row names its sources.',
      body: FastenersRequest,
      response: { 200: refTo<typeof FastenersResponse>('FastenersResponse') },
    },
    handler: toFastenersResponse,
  })
}
