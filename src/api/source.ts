import type { Static } from 'typebox'
import { ALL_SOURCES, type SourceId } from '#shared/data/sources.ts'
import { named, text } from '#src/api/schema.ts'

export const Source = named('Source', 'The source of a formula or a figure, with its standing.', {
  id: text('A name for programs.'),
  title: text('Author and title.'),
  usedFor: text('The figures or formulas taken from it.'),
  standing: text(
    'Published (read in the original), quoted (by a page that was read), from memory (a handbook figure that was not checked in print), derived here, or common practice, no source.',
  ),
})

const ROWS = new Map(
  Object.entries(ALL_SOURCES).map(([id, row]): [string, Static<typeof Source>] => [id, { id, ...row }]),
)

/** @throws RangeError for a source that there is not */
export function toSource(id: SourceId): Static<typeof Source> {
  const row = ROWS.get(id)
  if (row === undefined) throw new RangeError(`there is no source ${id}`)
  return row
}
