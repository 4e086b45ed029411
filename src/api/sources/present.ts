import { ALL_SOURCES, type SourceId } from '#shared/data/sources.ts'
import { toSource } from '#src/api/source.ts'
import { notKnown } from '#src/http/nearest-name.ts'
import type { Fault } from '#src/http/problem.ts'
import type { SourcesRequest, SourcesResponse } from './schema.ts'

const IDS = Object.keys(ALL_SOURCES) as SourceId[]

/** The sources asked for, or the fault of an unknown name. */
export function toSourcesResponse({ id, standing }: SourcesRequest): SourcesResponse | Fault {
  if (id !== undefined && !Object.hasOwn(ALL_SOURCES, id)) return { path: '/id', message: notKnown(id, IDS) }
  const found = IDS.map(toSource).filter(
    (source) => (id === undefined || source.id === id) && (standing === undefined || source.standing === standing),
  )
  return { sources: found }
}
