import { isSchema, type JsonSchema, resolved, type SchemaById, typesOf } from './schema.ts'

/** One value of a body that a query can carry: `balls.count` for `/balls/count`. */
export type QueryName = {
  readonly name: string
  readonly path: readonly string[]
  /** As it stands in the body's schema, perhaps a `$ref`; and what that leads to. */
  readonly schema: JsonSchema
  readonly value: JsonSchema
  readonly required: boolean
}

const PLAIN = ['string', 'number', 'integer', 'boolean', 'null']

/**
 * Every value of a body, by the names on the way to it joined by dots. The body's own schema is walked, so a query
 * knows exactly what a body knows. What a query cannot write (a list of objects) is left out, and must be optional.
 */
export function queryNames(body: JsonSchema, byId: SchemaById): readonly QueryName[] {
  return walk(resolved(body, byId), [], true, byId)
}

function walk(schema: JsonSchema, path: readonly string[], required: boolean, byId: SchemaById): QueryName[] {
  return Object.entries(schema.properties ?? {}).flatMap(([key, property]) => {
    const value = resolved(property, byId)
    const here = [...path, key]
    const needed = required && (schema.required ?? []).includes(key)
    if (value.properties !== undefined) return walk(value, here, needed, byId)
    if (isPlain(value) || isListOfPlain(value, byId))
      return [{ name: here.join('.'), path: here, schema: property, value, required: needed }]
    if (needed) throw new Error(`a query cannot carry ${here.join('.')}, which the body needs`)
    return []
  })
}

function isPlain(schema: JsonSchema): boolean {
  const types = typesOf(schema)
  return types.length > 0 && types.every((type) => PLAIN.includes(type))
}

function isListOfPlain({ type, items }: JsonSchema, byId: SchemaById): boolean {
  return type === 'array' && isSchema(items) && isPlain(resolved(items, byId))
}
