import { Type } from 'typebox'
import { plain } from '#shared/bearing/fields.ts'
import type { Units } from '#shared/units/length.ts'
import { choiceOf } from '#src/api/schema.ts'
import { PAPERS, type Paper } from '#src/drawings/papers.ts'

export const PAPER_DEFAULT = plain('letter for inches, a4 for millimetres', 'the paper that goes with the units')

/** Fields that every path has which gives sheets of paper. */
export const paper = Type.Optional(choiceOf<Paper>(`The paper to print on. Default: ${PAPER_DEFAULT.stated}.`, PAPERS))

export const engine = Type.Optional(
  Type.String({
    maxLength: 20,
    pattern: '^([0-9a-f]{12}|[0-9]+\\.[0-9]+\\.[0-9]+)$',
    description:
      'The build that you want the answer from, as `X-Engine` of an earlier answer says it. The answer of that very ' +
      'build may be kept for ever; any other build answers too, and its answer has to be checked each time it is used.',
  }),
)

export const paperFor = ({ paper: chosen, units }: { readonly paper?: Paper; readonly units: Units }): Paper =>
  chosen ?? (units === 'in' ? 'letter' : 'a4')
