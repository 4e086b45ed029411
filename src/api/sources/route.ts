import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { referenceRoute } from '#src/http/computing-route.ts'
import { notValid } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { toSourcesResponse } from './present.ts'
import { SourcesRequest, SourcesResponse } from './schema.ts'

export const SOURCES_SCHEMAS = [SourcesResponse]

export const sourcesRoute: FastifyPluginAsyncTypebox = async (app) => {
  referenceRoute(app, {
    path: '/sources',
    schema: {
      operationId: 'sources',
      tags: ['reference'],
      summary: 'The sources of every figure and formula',
      description:
        'Where does a figure come from, and how sure is it? You get every source with its standing: published, quoted, from memory (not checked in print), derived here, or common practice. Parameters narrow the list.',
      body: SourcesRequest,
      response: { 200: refTo<typeof SourcesResponse>('SourcesResponse') },
    },
    handler: (query) => {
      const answer = toSourcesResponse(query)
      if ('path' in answer) throw notValid([answer])
      return answer
    },
  })
}
