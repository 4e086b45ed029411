import type { Static } from 'typebox'
import { ALL_SOURCES, type SourceId } from '#shared/data/sources.ts'
import { named, text } from '#src/api/schema.ts'

export const Source = named('Source', 'The source of a formula or a figure, with its standing.', {
  id: text('A name for programs.'),
  title: text('Author and title.'),
  usedFor: text('The figures or formulas taken from it.'),
  standing: text(
    'Published (read in the original), quoted (by a page that was read), from memory, derived here, or common practice, no source.',
  ),
})

export const toSource = (id: SourceId): Static<typeof Source> => ({ id, ...ALL_SOURCES[id] })
