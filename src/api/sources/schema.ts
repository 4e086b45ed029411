import { type Static, Type } from 'typebox'
import { STANDINGS } from '#shared/data/sources.ts'
import { choiceOf, named, requestObject } from '#src/api/schema.ts'
import type { Source } from '#src/api/source.ts'
import { refTo } from '#src/http/schema.ts'

const LONGEST_ID = 60

export const SourcesRequest = requestObject('Which sources to show. Default: all.', {
  id: Type.Optional(Type.String({ minLength: 1, maxLength: LONGEST_ID, description: 'Show only this source.' })),
  standing: Type.Optional(
    Type.Unsafe<(typeof STANDINGS)[number]>(choiceOf('Show only sources of this standing.', STANDINGS)),
  ),
})
export type SourcesRequest = Static<typeof SourcesRequest>

export const SourcesResponse = named('SourcesResponse', 'The sources of all figures of this service.', {
  sources: Type.Array(refTo<typeof Source>('Source')),
})
export type SourcesResponse = Static<typeof SourcesResponse>
