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
  const whole = resolved(body, byId)
  const variants = (whole.oneOf ?? [whole]).map((variant) => walk(resolved(variant, byId), [], true, byId))
  const merged = new Map<string, QueryName>()
  for (const name of variants.flat()) merged.set(name.name, mergedName(merged.get(name.name), name))
  const isEverywhere = ({ name }: QueryName) =>
    variants.every((names) => names.some((each) => each.name === name && each.required))
  const tag = whole.discriminator?.propertyName
  return [...merged.values()].map((name) => ({ ...name, required: name.name !== tag && isEverywhere(name) }))
}

/** One name of several variants: of a choice, everything that any of them has, each with what it means. */
function mergedName(known: QueryName | undefined, name: QueryName): QueryName {
  if (known?.value.enum === undefined || name.value.enum === undefined) return known ?? name
  const choices = [...new Set([...known.value.enum, ...name.value.enum])]
  if (choices.length === known.value.enum.length) return known
  const value = { ...known.value, enum: choices, description: `${describedChoice(known)} ${describedChoice(name)}` }
  return { ...known, schema: value, value }
}

/** The description of a name; where it has one choice alone, that of the choice, which may begin with it already. */
function describedChoice({ value: { enum: [first, ...more] = [], description = '' } }: QueryName): string {
  const lead = `\`${String(first)}\`: `
  return more.length > 0 || description.startsWith(lead) ? description : `${lead}${description}`
}

function walk(schema: JsonSchema, path: readonly string[], required: boolean, byId: SchemaById): QueryName[] {
  return Object.entries(schema.properties ?? {}).flatMap(([key, property]) => {
    const value = ofAnyType(resolved(property, byId), byId)
    const here = [...path, key]
    const needed = required && (schema.required ?? []).includes(key)
    if (value.properties !== undefined) return walk(value, here, needed, byId)
    // A reference within a union would lead nowhere from a parameter of the document.
    const own = property.anyOf === undefined ? property : value
    if (isPlain(value) || isListOfPlain(value, byId))
      return [{ name: here.join('.'), path: here, schema: own, value, required: needed }]
    if (needed) throw new Error(`a query cannot carry ${here.join('.')}, which the body needs`)
    return []
  })
}

/** A length or null, say: of one schema with the types of each. */
function ofAnyType({ anyOf, ...schema }: JsonSchema, byId: SchemaById): JsonSchema {
  return anyOf === undefined ? schema : { ...schema, type: anyOf.flatMap((each) => typesOf(resolved(each, byId))) }
}

function isPlain(schema: JsonSchema): boolean {
  const types = typesOf(schema)
  return types.length > 0 && types.every((type) => PLAIN.includes(type))
}

function isListOfPlain({ type, items }: JsonSchema, byId: SchemaById): boolean {
  return type === 'array' && isSchema(items) && isPlain(resolved(items, byId))
}
