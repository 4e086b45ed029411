import { type Static, type TObject, type TProperties, type TSchema, Type } from 'typebox'
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

/** The figures of an answer before they are shown: lengths in millimetres, other numbers with all their digits. */
type Raw<Shown> = {
  readonly [Name in keyof Shown]: Shown[Name] extends ShownLength | undefined
    ? Mm | Extract<Shown[Name], undefined> | undefined
    : Shown[Name] extends ShownNumber | undefined
      ? number | undefined
      : Shown[Name] | undefined
}

/**
 * An object of an answer by its schema: every length in the caller's units, every other number rounded, anything else as it is.
 * Values that the schema does not name are left out, and so are those that are undefined.
 */
export function shownBy<Properties extends TProperties>(
  { properties }: TObject<Properties>,
  values: Raw<Static<TObject<Properties>>>,
  units: Units,
): Static<TObject<Properties>> {
  const shown: Record<string, unknown> = {}
  for (const [name, schema] of Object.entries<JsonSchema>(properties)) {
    const value: unknown = Reflect.get(values, name)
    if (value === undefined) continue
    if (schema.$ref === 'ShownLength') shown[name] = show(mm(Number(value)), units)
    else shown[name] = schema.type === 'number' ? showNumber(Number(value)) : value
  }
  // The type of the values has a value for each property, of the kind that the schema shows.
  return shown as Static<TObject<Properties>>
}
