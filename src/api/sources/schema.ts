import { type Static, Type } from 'typebox'
import { STANDINGS } from '#shared/data/sources.ts'
import type { Source } from '#src/api/source.ts'
import { refTo } from '#src/http/schema.ts'

const LONGEST_ID = 60

export const SourcesRequest = Type.Object(
  {
    id: Type.Optional(Type.String({ minLength: 1, maxLength: LONGEST_ID, description: 'Show only this source.' })),
    standing: Type.Optional(
      Type.Unsafe<(typeof STANDINGS)[number]>(
        Type.Enum(STANDINGS, { type: 'string', description: 'Show only sources of this standing.' }),
      ),
    ),
  },
  {
    description: 'Which sources to show. Default: all.',
    additionalProperties: false,
  },
)
export type SourcesRequest = Static<typeof SourcesRequest>

export const SourcesResponse = Type.Object(
  { sources: Type.Array(refTo<typeof Source>('Source')) },
  { $id: 'SourcesResponse', description: 'The sources of all figures of this service.' },
)
export type SourcesResponse = Static<typeof SourcesResponse>
