import { Type } from 'typebox'
import type { Units } from '#shared/units/length.ts'
import { PAPERS, type Paper } from '#src/drawings/papers.ts'

/** Fields that every path has which gives sheets of paper. */
export const paper = Type.Optional(
  Type.Unsafe<Paper>(
    Type.Enum(PAPERS, {
      type: 'string',
      description: 'The paper to print on. Default: letter for inches, a4 for millimetres.',
    }),
  ),
)

export const engine = Type.Optional(
  Type.String({
    maxLength: 20,
    pattern: '^[0-9]+\\.[0-9]+\\.[0-9]+$',
    description:
      'The version of this service, `info.version` of its description: then the answer may be kept for ever.',
  }),
)

export const paperFor = ({ paper: said, units }: { readonly paper?: Paper; readonly units: Units }): Paper =>
  said ?? (units === 'in' ? 'letter' : 'a4')
