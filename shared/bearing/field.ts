import type { Mm } from '#shared/units/length.ts'

/*
 * The kinds of field that a design input can have. A row of `fields.ts`, or of an arrangement's own `input.ts`, states
 * everything that is known about one field; types, schemas, bounds, echoes, assumptions and suggestions follow from it.
 */

/** The range of a number. */
export interface Bounds {
  readonly min: number
  readonly max: number
}

/** A length above 0, in the caller's units. Common practice, no source. */
export const LENGTH: Bounds = { min: 0.001, max: 10_000 }
/** A gap, a play, a scatter or a film, in the caller's units: may be 0. */
export const LENGTH_OR_NONE: Bounds = { min: 0, max: LENGTH.max }

/** How sure a default is. */
export type Standing = 'common practice, no source' | 'the plain case' | 'derived here'

/** The value of a field that the caller leaves out. */
export interface Default {
  /** The value as the document states it: `1/20 of a ball`. */
  readonly stated: string
  readonly reason: string
  readonly standing: Standing
}

interface Row {
  /** The meaning of the field, for the document. */
  readonly means: string
  readonly required?: true
  readonly byDefault?: Default
}

export interface LengthField extends Row {
  readonly kind: 'length'
  readonly bounds: Bounds
}
/** A length, or null to switch something off. */
export interface OptionalLengthField extends Row {
  readonly kind: 'length-or-null'
  readonly bounds: Bounds
}
export interface LengthsField extends Row {
  readonly kind: 'lengths'
  readonly bounds: Bounds
  readonly items: Bounds
}
export interface NumberField extends Row {
  readonly kind: 'number' | 'integer'
  readonly bounds: Bounds
}
export interface ChoiceField<C extends string | number = string | number> extends Row {
  readonly kind: 'choice'
  readonly choices: readonly C[]
}
export interface FlagField extends Row {
  readonly kind: 'flag'
}
export interface Group<F extends Fields = Fields> extends Row {
  readonly kind: 'group'
  /** Its name among the schemas of the document. */
  readonly id: string
  readonly fields: F
  /** Lists of names; at most one name of each list may be given. */
  readonly oneOfEach: readonly (readonly string[])[]
}

export type Field = LengthField | OptionalLengthField | LengthsField | NumberField | ChoiceField | FlagField | Group
export interface Fields {
  readonly [name: string]: Field
}

/** The value that a field holds: in the core, lengths in millimetres, or with lengths as a caller writes them. */
export type ValueOf<F extends Field, L = Mm> = F extends { kind: 'length' }
  ? L
  : F extends { kind: 'length-or-null' }
    ? L | null
    : F extends { kind: 'lengths' }
      ? readonly L[]
      : F extends { kind: 'number' | 'integer' }
        ? number
        : F extends { kind: 'choice'; choices: readonly (infer C)[] }
          ? C
          : F extends { kind: 'flag' }
            ? boolean
            : F extends { kind: 'group'; fields: infer Inner extends Fields }
              ? InputOf<Inner, L>
              : never

/** The input type that rows describe: required fields, and optional ones that are absent and never undefined. */
export type InputOf<F extends Fields, L = Mm> = {
  readonly [Name in keyof F as F[Name] extends { required: true } ? Name : never]: ValueOf<F[Name], L>
} & { readonly [Name in keyof F as F[Name] extends { required: true } ? never : Name]?: ValueOf<F[Name], L> }

export const length = (means: string, byDefault?: Default) =>
  ({ kind: 'length', bounds: LENGTH, means, ...(byDefault && { byDefault }) }) as const satisfies LengthField
export const nonNegativeLength = (means: string, byDefault?: Default) =>
  ({ kind: 'length', bounds: LENGTH_OR_NONE, means, ...(byDefault && { byDefault }) }) as const satisfies LengthField
export const optionalLength = (means: string, byDefault: Default) =>
  ({ kind: 'length-or-null', bounds: LENGTH, means, byDefault }) as const satisfies OptionalLengthField
export const lengths = (means: string, items: Bounds) =>
  ({ kind: 'lengths', bounds: LENGTH, items, means }) as const satisfies LengthsField
export const number = (means: string, bounds: Bounds, byDefault?: Default) =>
  ({ kind: 'number', bounds, means, ...(byDefault && { byDefault }) }) as const satisfies NumberField
export const integer = (means: string, bounds: Bounds, byDefault?: Default) =>
  ({ kind: 'integer', bounds, means, ...(byDefault && { byDefault }) }) as const satisfies NumberField
export const choice = <const C extends string | number>(means: string, choices: readonly C[], byDefault: Default) =>
  ({ kind: 'choice', choices, means, byDefault }) as const satisfies ChoiceField<C>
export const flag = (means: string, byDefault: Default) =>
  ({ kind: 'flag', means, byDefault }) as const satisfies FlagField
export const group = <const F extends Fields>(
  id: string,
  means: string,
  fields: F,
  ...oneOfEach: readonly (readonly string[])[]
) => ({ kind: 'group', id, means, fields, oneOfEach }) as const satisfies Group<F>
export const required = <const F extends Field>(field: F) => ({ ...field, required: true }) as const

/** A field that holds a value of its own, and where it stands in an input. */
export interface Leaf {
  readonly path: string
  readonly names: readonly string[]
  readonly field: Exclude<Field, Group>
}

/** Every leaf of some fields, in their order. Found once for all that asks for those of a whole input. */
export function leavesOf(fields: Fields, names: readonly string[] = []): readonly Leaf[] {
  const known = names.length === 0 ? LEAVES.get(fields) : undefined
  if (known !== undefined) return known
  const leaves = Object.entries(fields).flatMap(([name, field]): readonly Leaf[] => {
    const at = [...names, name]
    return field.kind === 'group' ? leavesOf(field.fields, at) : [{ path: `/${at.join('/')}`, names: at, field }]
  })
  if (names.length === 0) LEAVES.set(fields, leaves)
  return leaves
}
const LEAVES = new WeakMap<Fields, readonly Leaf[]>()

/** The names that a JSON pointer goes through. Those of inputs have no `/` or `~` in them. */
export const namesIn = (path: string): string[] => path.split('/').slice(1)

/** The value at some names of an input; undefined where there is none. */
export function valueAt(input: unknown, names: readonly string[]): unknown {
  let at = input
  for (const name of names) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, name)) return undefined
    at = (at as Readonly<Record<string, unknown>>)[name]
  }
  return at
}

/** The same input with the value at some names set. */
export function withValue<I extends object>(input: I, [name, ...inner]: readonly string[], value: unknown): I {
  if (name === undefined) throw new RangeError('names must not be empty')
  const within = inner.length === 0 ? value : withValue(Object(valueAt(input, [name]) ?? {}), inner, value)
  return { ...input, [name]: within }
}
