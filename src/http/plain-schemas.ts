/**
 * What TypeBox makes of our schemas, without TypeBox: in the bundle this module stands in its place (`.rolldown.config.ts`).
 * A start builds a thousand of them, and of each the service uses the plain JSON Schema alone; TypeBox gives them marks for
 * its own readers too, and took a tenth of the start. A test holds the whole document to that of TypeBox.
 */
type Schema = { readonly [name: string]: unknown }

/** Which schemas may be absent from an object. Not in the schema itself: a copy with another description may not. */
const optional = new WeakSet<Schema>()

const of =
  (type: string) =>
  (options?: Schema): Schema => ({ type, ...options })

export const Type = {
  Array: (items: Schema, options?: Schema): Schema => ({ type: 'array', items, ...options }),
  Boolean: of('boolean'),
  Enum: (values: readonly unknown[], options?: Schema): Schema => ({ enum: values, ...options }),
  Integer: of('integer'),
  Literal: (value: unknown, options?: Schema): Schema => ({ type: typeof value, const: value, ...options }),
  Null: of('null'),
  Number: of('number'),
  Object: (properties: Readonly<Record<string, Schema>>, options?: Schema): Schema => {
    const required = Object.entries(properties).flatMap(([name, schema]) => (optional.has(schema) ? [] : [name]))
    return { type: 'object', ...(required.length > 0 && { required }), properties, ...options }
  },
  Optional: (schema: Schema): Schema => {
    const copy = { ...schema }
    optional.add(copy)
    return copy
  },
  /** Of texts as names, the only kind of name that JSON has. */
  Record: (_name: Schema, value: Schema, options?: Schema): Schema => ({
    type: 'object',
    patternProperties: { '^.*$': value },
    ...options,
  }),
  Ref: (id: string): Schema => ({ $ref: id }),
  String: of('string'),
  Union: (anyOf: readonly Schema[], options?: Schema): Schema => ({ anyOf, ...options }),
  Unsafe: (schema: Schema): Schema => ({ ...schema }),
}
