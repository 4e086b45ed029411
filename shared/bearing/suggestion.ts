import { NEXT, significant } from '#shared/numbers/significant.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { rounded, roundedDown, roundedUp } from '#shared/units/rounded.ts'
import { type Group, type Leaf, leavesOf, withValue } from './field.ts'
import type { Split } from './fields.ts'

/** One number, or one choice, of the input, and what to set it to. */
export type Suggestion =
  | { readonly path: string; readonly kind: 'length'; readonly value: Mm }
  | { readonly path: string; readonly kind: 'number'; readonly value: number }
  | { readonly path: string; readonly kind: 'choice'; readonly value: Split }

/**
 * A computed suggestion as an answer can state it: the nearest figure first, then the next above and below. Whoever offers one
 * tries them, as it may be the last digit that clears the warning.
 */
export function asStated(suggestion: Suggestion, units: Units): readonly Suggestion[] {
  const { path, kind, value } = suggestion
  switch (kind) {
    case 'length':
      return [...new Set([rounded, roundedUp, roundedDown].map((round) => round(value, units)))].map((stated) => ({
        path,
        kind,
        value: stated,
      }))
    case 'number':
      if (Number.isInteger(value)) return [suggestion]
      return [...new Set([1, 1 + NEXT, 1 - NEXT].map((part) => significant(value * part)))].map((stated) => ({
        path,
        kind,
        value: stated,
      }))
    default:
      return [suggestion]
  }
}

/** Fields are constants: their leaves are listed once. */
const LEAVES = new WeakMap<Group, ReadonlyMap<string, Leaf>>()

/**
 * The field at a path of an input.
 *
 * @throws RangeError for a path that the input does not have
 */
export function leafAt(group: Group, path: string): Leaf {
  const known = LEAVES.get(group) ?? new Map(leavesOf(group.fields).map((leaf) => [leaf.path, leaf]))
  LEAVES.set(group, known)
  const leaf = known.get(path)
  if (leaf === undefined) throw new RangeError(`path must be that of a field of ${group.id}, got ${path}`)
  return leaf
}

/**
 * The input with one suggestion taken: what a caller does who puts `value` at `path` and asks again.
 *
 * @throws RangeError for a path that the input does not have, and for a value of another kind than is there
 */
export function withSuggestion<I extends object>(input: I, group: Group, { path, kind, value }: Suggestion): I {
  const { field, names } = leafAt(group, path)
  if (kindOf(field) !== kind) throw new RangeError(`path must be that of a ${kind} of ${group.id}, got ${path}`)
  return withValue(input, names, value)
}

/** The kind of a suggestion for a field; nothing suggests a list. */
function kindOf(field: Leaf['field']): Suggestion['kind'] | undefined {
  switch (field.kind) {
    case 'length':
    case 'length-or-null':
      return 'length'
    case 'number':
    case 'integer':
      return 'number'
    case 'choice':
      return field.choices.every((each) => typeof each === 'number') ? 'number' : 'choice'
    default:
      return undefined
  }
}
