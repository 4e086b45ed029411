import { type Static, type TArray, type TObject, type TProperties, type TSchema, type TUnsafe, Type } from 'typebox'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { type JsonSchema, refTo } from '#src/http/schema.ts'
import { type ShownLength, show } from './length.ts'
import { type ShownNumber, showNumber } from './number.ts'

/*
 * Short forms of the schemas that nearly every request and answer is made of. The description comes first, as in the rows of
 * fields: a reader of the code and of the document needs it before the shape.
 */

/** An object of an answer that only one place has. */
export const object = <Properties extends TProperties>(description: string, properties: Properties) =>
  Type.Object(properties, { description })

/** An object of an answer, added by its name and referred to by it. */
export const named = <Properties extends TProperties>($id: string, description: string, properties: Properties) =>
  Type.Object(properties, { $id, description })

/** An object of a request: it refuses every field that it does not have. */
export const requestObject = <Properties extends TProperties>(description: string, properties: Properties) =>
  Type.Object(properties, { description, additionalProperties: false })

/** An object of a request, added by its name and referred to by it. */
export const namedRequest = <Properties extends TProperties>(
  $id: string,
  description: string,
  properties: Properties,
) => Type.Object(properties, { $id, description, additionalProperties: false })

export const text = (description: string) => Type.String({ description })
export const integer = (description: string) => Type.Integer({ description })
export const flag = (description: string) => Type.Boolean({ description })

/** One of several names. */
export const choiceOf = <const Choice extends string>(description: string, choices: readonly Choice[]) =>
  Type.Unsafe<Choice>(Type.Enum([...choices], { type: 'string', description }))

/** One of several numbers. */
export const numberOf = (choices: readonly number[], description: string) =>
  Type.Unsafe<number>(Type.Enum([...choices], { type: 'number', description }))

/** A schema by its name, with a description for this place. */
export const described = <T extends TSchema>($id: string, description: string) =>
  Type.Unsafe<Static<T>>({ ...refTo<T>($id), description })

/** A list of what a schema, by its name, describes. */
export const listOf = <T extends TSchema>($id: string, description: string) =>
  Type.Array(refTo<T>($id), { description })

/** Leads from a reference to the schema itself. No document and no validator sees a key that is a symbol. */
const TARGET = Symbol('target')
type Ref<T> = { readonly [TARGET]: T }

/** A schema by its name, for `shownBy` to go on into, with a description for this place if it needs one. */
export const ref = <T extends TSchema>(target: T, description?: string) =>
  Type.Unsafe<Static<T>>({
    ...refTo<T>(String(Reflect.get(target, '$id'))),
    ...(description !== undefined && { description }),
    [TARGET]: target,
  }) as TUnsafe<Static<T>> & Ref<T>

/** The figures of an answer before they are shown: lengths in millimetres, other numbers with all their digits. */
export type Raw<S> =
  S extends Ref<infer T>
    ? Raw<T>
    : S extends TObject<infer Properties>
      ? RawObject<Properties>
      : S extends TArray<infer Item>
        ? readonly Raw<Item>[]
        : S extends TSchema
          ? Static<S> extends ShownLength
            ? Mm
            : Static<S> extends ShownNumber
              ? number
              : Static<S>
          : never
type RawObject<Properties extends TProperties> = {
  readonly [Name in keyof Static<TObject<Properties>>]: Name extends keyof Properties
    ? Raw<Properties[Name]> | undefined
    : never
}

/** Every field of an object of an answer, those that may be left out too. */
type Complete<T> = {
  readonly [Name in keyof Required<T>]: Record<never, never> extends Pick<T, Name> ? T[Name] | undefined : T[Name]
}

/**
 * An object of an answer from all its fields, so that none is forgotten. What is undefined is left out as the answer is written;
 * until then all such objects have one shape, which is written at twice the speed.
 */
export const complete = <T>(fields: Complete<T>): T => fields as T

/**
 * An object of an answer by its schema, with all that is in it: every length in the caller's units, every other number rounded,
 * anything else as it is, and so what another schema describes unless `ref` leads there. Values that the schema does not name
 * are left out, and so are those that are undefined.
 */
export const shownBy = <Properties extends TProperties>(
  schema: TObject<Properties>,
  values: RawObject<Properties>,
  units: Units,
): Static<TObject<Properties>> =>
  // The type of the values has a value for each property, of the kind that the schema shows.
  showing(schema as JsonSchema)(values, units) as Static<TObject<Properties>>

type Show = (value: unknown, units: Units) => unknown

/** How values of a schema are shown. To read a schema takes longer than to show by it, and an answer has many of each. */
const SHOWING = new WeakMap<JsonSchema, Show>()

function showing(schema: JsonSchema): Show {
  const known = SHOWING.get(schema)
  if (known !== undefined) return known
  const made = showingOf(schema)
  SHOWING.set(schema, made)
  return made
}

function showingOf({ [TARGET]: target, $ref, type, items, properties }: JsonSchema & Partial<Ref<JsonSchema>>): Show {
  // Not before it is asked for: a schema may lead back to itself.
  if (target !== undefined) return (value, units) => showing(target)(value, units)
  if ($ref === 'ShownLength') return (value, units) => show(mm(Number(value)), units)
  if (type === 'number') return (value) => showNumber(Number(value))
  if (items !== undefined) {
    const showItem = showing(items)
    return (values, units) => Array.from(values as readonly unknown[], (item) => showItem(item, units))
  }
  if (properties === undefined) return (value) => value
  const parts = Object.entries(properties).map(([name, property]) => [name, showing(property)] as const)
  return (values, units) => {
    const shown: Record<string, unknown> = {}
    for (const [name, showPart] of parts) {
      const part = (values as Readonly<Record<string, unknown>>)[name]
      if (part !== undefined) shown[name] = showPart(part, units)
    }
    return shown
  }
}
