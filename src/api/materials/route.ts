import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { referenceRoute } from '#src/http/computing-route.ts'
import { notValid } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { toMaterialsResponse } from './present.ts'
import { BallSubstance, MaterialsRequest, MaterialsResponse, Wood, WoodMovement, WoodStrength } from './schema.ts'

export const MATERIALS_SCHEMAS = [WoodMovement, WoodStrength, Wood, BallSubstance, MaterialsResponse]

export const materialsRoute: FastifyPluginAsyncTypebox = async (app) => {
  referenceRoute(app, {
    path: '/materials',
    schema: {
      operationId: 'materials',
      tags: ['reference'],
      summary: 'Woods and ball materials',
      description:
        'How do woods and ball materials move, and how hard are they? You get one row a material; parameters narrow the list. Each figure names its source.',
      body: MaterialsRequest,
      response: { 200: refTo<typeof MaterialsResponse>('MaterialsResponse') },
    },
    handler: (query) => {
      const answer = toMaterialsResponse(query)
      if ('path' in answer) throw notValid([answer])
      return answer
    },
  })
}
