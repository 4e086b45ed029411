import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { sizeTable } from '#shared/questions/size-table/size-table.ts'
import { refuseDesign } from '#src/api/refusal.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { toSizeTableInput, toTableAnswer } from './present.ts'
import { ANSWERS, CSV_TYPE, type SizeTableRequest } from './schema.ts'

export const sizeTableRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/size-table',
    get: true,
    mediaTypes: [JSON_TYPE, CSV_TYPE],
    schema: {
      operationId: 'sizeTable',
      tags: ['bearing'],
      summary: 'Pitch, gauge, land and outside diameters for a table of ball diameters and counts',
      body: refTo<typeof SizeTableRequest>('SizeTableRequest'),
      response: {
        200: { description: 'A row for each diameter and count', content: ANSWERS },
        422: problem('Cannot be made'),
      },
    },
    handler: (body, _request, reply, mediaType) => {
      const table = sizeTable(toSizeTableInput(body))
      if (!table.ok) return refuseDesign(reply, table.error, body)
      const answer = toTableAnswer(table.value, body)
      return mediaType === CSV_TYPE ? answer.csv() : answer.json
    },
  })
}
