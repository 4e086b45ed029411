import { type Static, Type } from 'typebox'
import type { Suggestion } from '#shared/bearing/suggestion.ts'
import type { Warning as CoreWarning } from '#shared/bearing/warning.ts'
import type { Units } from '#shared/units/length.ts'
import { choiceOf, named, object, text } from '#src/api/schema.ts'
import type { Terms } from '#src/words/terms.ts'
import { warningSentence } from '#src/words/warning.ts'
import { show } from './length.ts'

export const Warning = named('Warning', 'A risk or fault of a bearing that can be made.', {
  code: text('A name for programs: it does not change when the sentence does.'),
  severity: choiceOf('`note`: good to know. `risk`: often goes wrong. `fault`: will not work like this.', [
    'note',
    'risk',
    'fault',
  ]),
  message: text('The warning in words.'),
  path: text('A JSON pointer into the input: the value to check.'),
  suggestion: Type.Optional(
    object('One value that clears this warning. It was tried before it is offered.', {
      path: text('A JSON pointer into the input.'),
      value: Type.Unsafe<number | string>({
        type: ['number', 'string'],
        description: 'A length is in the `units` of the answer.',
      }),
    }),
  ),
})

/** A warning in the caller's units and in words. */
export function toWarning(
  { severity, path, facts, suggestion }: CoreWarning,
  units: Units,
  terms: Terms,
): Static<typeof Warning> {
  const warning = { code: facts.code, severity, message: warningSentence(facts, units, terms), path }
  return suggestion === undefined
    ? warning
    : { ...warning, suggestion: { path: suggestion.path, value: toValue(suggestion, units) } }
}

const toValue = (suggestion: Suggestion, units: Units): number | string =>
  suggestion.kind === 'length' ? show(suggestion.value, units) : suggestion.value
