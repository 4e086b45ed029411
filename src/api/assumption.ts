import { type Static, Type } from 'typebox'
import { ARRANGEMENTS, type ArrangementName } from '#shared/bearing/arrangements.ts'
import { type Group, valueAt } from '#shared/bearing/field.ts'
import { leafAt } from '#shared/bearing/suggestion.ts'

type Leaf = number | string | null

export const Assumption = Type.Object(
  {
    path: Type.String({ description: 'A JSON pointer into `input`.' }),
    value: Type.Unsafe<Leaf>({
      type: ['number', 'string', 'null'],
      description: 'A length is in the `units` of the answer.',
    }),
    reason: Type.String({ description: 'Why this value.' }),
    standing: Type.String({ description: 'Whether this is common practice or only the plain case.' }),
  },
  { $id: 'Assumption', description: 'A default that was used, because the input did not give the value.' },
)

/** What was assumed, each value with its reason, taken from the echoed input. */
export const toAssumptions = (
  assumed: readonly string[],
  arrangement: ArrangementName,
  echoed: object,
): Static<typeof Assumption>[] => assumptionsBy(ARRANGEMENTS[arrangement].fields, assumed, echoed)

/** The same by the rows of whichever arrangement. */
export const assumptionsBy = (fields: Group, assumed: readonly string[], echoed: object): Static<typeof Assumption>[] =>
  assumed.map((path) => {
    const { field, names } = leafAt(fields, path)
    if (field.byDefault === undefined) throw new RangeError(`path must be that of a default, got ${path}`)
    const { reason, standing } = field.byDefault
    return { path, value: leafOf(valueAt(echoed, names)), reason, standing }
  })

const leafOf = (value: unknown): Leaf => (typeof value === 'number' || typeof value === 'string' ? value : null)
