import { type Static, Type } from 'typebox'
import { ALL_SOURCES, type SourceId } from '#shared/data/sources.ts'

export const Source = Type.Object(
  {
    id: Type.String({ description: 'A name for programs.' }),
    title: Type.String({ description: 'Author and title.' }),
    usedFor: Type.String({ description: 'The figures or formulas taken from it.' }),
    standing: Type.String({
      description:
        'Published (read in the original), quoted (by a page that was read), from memory, derived here, or common practice, no source.',
    }),
  },
  { $id: 'Source', description: 'The source of a formula or a figure, with its standing.' },
)

export const toSource = (id: SourceId): Static<typeof Source> => ({ id, ...ALL_SOURCES[id] })
