import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { Type } from 'typebox'
import { sizeTable } from '#shared/bearing/size-table.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { refuseDesign } from '#src/wire/refusal.ts'
import { SizeTableRequest, SizeTableResponse, SizeTableRow } from './schema.ts'
import { toSizeTableCsv, toSizeTableInput, toSizeTableResponse } from './translate.ts'

const CSV_TYPE = 'text/csv'

export const SIZE_TABLE_SCHEMAS = [SizeTableRow, SizeTableRequest, SizeTableResponse]

export const sizeTableRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/size-table',
    get: true,
    mediaTypes: [JSON_TYPE, CSV_TYPE],
    schema: {
      operationId: 'sizeTable',
      tags: ['bearing'],
      summary: 'Pitch, gauge, land and outside diameters for ball diameters × counts',
      body: refTo<typeof SizeTableRequest>('SizeTableRequest'),
      response: {
        200: {
          description: 'A row for each diameter and count',
          content: {
            [JSON_TYPE]: { schema: refTo<typeof SizeTableResponse>('SizeTableResponse') },
            [CSV_TYPE]: { schema: Type.String({ description: 'The same table, RFC 4180, the unit in each heading.' }) },
          },
        },
        422: problem('Cannot exist'),
      },
    },
    handler: (body, _request, reply, mediaType) => {
      const table = sizeTable(toSizeTableInput(body))
      if (!table.ok) return refuseDesign(reply, table.error, body)
      const answer = toSizeTableResponse(table.value, body.units)
      return mediaType === CSV_TYPE ? toSizeTableCsv(answer) : answer
    },
  })
}
