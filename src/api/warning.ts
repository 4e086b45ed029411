import { type Static, Type } from 'typebox'
import type { Suggestion } from '#shared/bearing/suggestion.ts'
import type { Warning as CoreWarning } from '#shared/bearing/warning.ts'
import type { Units } from '#shared/units/length.ts'
import { warningSentence } from '#src/words/warning.ts'
import { show } from './length.ts'

export const Warning = Type.Object(
  {
    code: Type.String({ description: 'A name for programs: it stays when the sentence is reworded.' }),
    severity: Type.Enum(['note', 'risk', 'fault'], {
      type: 'string',
      description: '`note`: good to know. `risk`: often goes wrong. `fault`: will not work as it is.',
    }),
    message: Type.String({ description: 'The warning in words.' }),
    path: Type.String({ description: 'A JSON pointer into the input: the number to look at.' }),
    suggestion: Type.Optional(
      Type.Object(
        {
          path: Type.String({ description: 'A JSON pointer into the input.' }),
          value: Type.Unsafe<number | string>({
            type: ['number', 'string'],
            description: 'In the `units` of the answer, if it is a length.',
          }),
        },
        { description: 'One value that clears this warning; tried before it is offered.' },
      ),
    ),
  },
  { $id: 'Warning', description: 'A bearing that can be made, but not without trouble.' },
)

/** A warning in the caller's units and in words. */
export function toWarning({ severity, path, facts, suggestion }: CoreWarning, units: Units): Static<typeof Warning> {
  const said = { code: facts.code, severity, message: warningSentence(facts, units), path }
  return suggestion === undefined
    ? said
    : { ...said, suggestion: { path: suggestion.path, value: toValue(suggestion, units) } }
}

const toValue = (suggestion: Suggestion, units: Units): number | string =>
  suggestion.kind === 'length' ? show(suggestion.value, units) : suggestion.value
