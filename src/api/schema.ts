import { type Static, type TProperties, type TSchema, Type } from 'typebox'
import { refTo } from '#src/http/schema.ts'

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

/** A schema by its name, with a description for this place. */
export const described = <T extends TSchema>($id: string, description: string) =>
  Type.Unsafe<Static<T>>({ ...refTo<T>($id), description })

/** A list of what a schema, by its name, describes. */
export const listOf = <T extends TSchema>($id: string, description: string) =>
  Type.Array(refTo<T>($id), { description })
