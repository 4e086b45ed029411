import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { SIZE_TABLE, sizeTable } from '#shared/questions/size-table/size-table.ts'
import { refusedDesign } from '#src/api/refusal.ts'
import { servedBy } from '#src/api/served.ts'
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
      summary: 'Sizes for every pair of ball diameter and ball count',
      description: `Which bearings can I make from the balls that I have? Send lists of ball diameters and ball counts, with the gap and the groove that all of them share. You get a row for each pair, with the pitch circle, the gauge and the main diameters, as JSON or as CSV. ${servedBy(SIZE_TABLE)}`,
      body: refTo<typeof SizeTableRequest>('SizeTableRequest'),
      response: {
        200: { description: 'A row for each diameter and count', content: ANSWERS },
        422: problem('Cannot be made'),
      },
    },
    handler: (body, _request, mediaType) => {
      const table = sizeTable(toSizeTableInput(body))
      if (!table.ok) throw refusedDesign(table.error, body)
      const answer = toTableAnswer(table.value, body)
      return mediaType === CSV_TYPE ? answer.csv() : answer.json
    },
  })
}
