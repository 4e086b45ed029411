import type { Mm } from '#shared/units/length.ts'
import { type Group, type Leaf, leavesOf, withValue } from './field.ts'
import type { Split } from './fields.ts'

/** One number, or one choice, of the input, and what to set it to. */
export type Suggestion =
  | { readonly path: string; readonly kind: 'length'; readonly value: Mm }
  | { readonly path: string; readonly kind: 'number'; readonly value: number }
  | { readonly path: string; readonly kind: 'choice'; readonly value: Split }

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
 * @throws RangeError for a path that the input does not have
 */
export const withSuggestion = <I extends object>(input: I, group: Group, { path, value }: Suggestion): I =>
  withValue(input, leafAt(group, path), value)
