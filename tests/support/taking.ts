import { arrangementOf, type DesignInput } from '#shared/bearing/arrangements.ts'
import { isWithinBounds } from '#shared/bearing/bounds.ts'
import { type Suggestion, withSuggestion } from '#shared/bearing/suggestion.ts'

/** An input with a suggestion taken, whatever its arrangement. */
export const taking = <I extends DesignInput>(input: I, suggestion: Suggestion): I =>
  withSuggestion(input, arrangementOf(input).fields, suggestion)

/** Whether a caller could send what is suggested for an input. */
export const canBeSent = (input: DesignInput, suggestion: Suggestion): boolean =>
  isWithinBounds(suggestion, arrangementOf(input).fields, input.units)
