import { isSchema, type JsonSchema, resolved, type SchemaById } from '#src/http/schema.ts'

/** What a program that reads a tool's input needs; the path itself holds the input to all of its schema. */
const KEPT = ['type', 'description', 'enum', 'const'] as const

/**
 * Some of a path's input as a schema of its own, with the path's descriptions and without references. Of variants it
 * has what any of them has, and requires what all of them require. Other fields of the path stay allowed.
 *
 * @param names the fields, as a query names them: `design.balls.count`; a list is named by what is in it
 * @throws RangeError for a name that the schema does not have
 */
export function picked(schema: JsonSchema, names: readonly string[], byId: SchemaById): JsonSchema {
  const at = resolved(schema, byId)
  const kept = Object.fromEntries(KEPT.flatMap((name) => (at[name] === undefined ? [] : [[name, at[name]]])))
  const own: JsonSchema = schema.description === undefined ? kept : { ...kept, description: schema.description }
  const [first] = names
  if (first === undefined) return own
  if (at.items !== undefined) return { ...own, items: picked(at.items, names, byId) }
  const variants = (at.oneOf ?? at.anyOf ?? [at]).map((variant) => resolved(variant, byId))
  const tag = at.discriminator?.propertyName
  const fields = Map.groupBy(names, (name) => name.split('.', 1)[0] ?? '')
  const properties: Record<string, JsonSchema> = {}
  for (const [name, below] of fields) {
    const found = variants.flatMap(({ properties: own = {} }) => own[name] ?? [])
    const rest = below.filter((each) => each !== name).map((each) => each.slice(name.length + 1))
    const inside = found.filter((each) => rest.every((inner) => has(each, inner, byId)))
    const [field] = inside
    if (field === undefined) throw new RangeError(`names must be fields of the path, got ${below.join(', ')}`)
    properties[name] = name === tag ? choiceOf(found, byId) : picked(field, rest, byId)
  }
  const isUsual = (name: string) => name === tag && at['x-usual'] !== undefined
  const required = Object.keys(properties).filter(
    (name) => !isUsual(name) && variants.every((variant) => variant.required?.includes(name) === true),
  )
  // What all variants have in common is described by the fields; how they differ, by their tag.
  const described = variants.length === 1 && own.description !== undefined ? { description: own.description } : {}
  return { type: 'object', ...described, properties, required }
}

/** Whether a field has another one inside it. */
function has(schema: JsonSchema, name: string, byId: SchemaById): boolean {
  const [first = '', ...rest] = name.split('.')
  const at = resolved(schema, byId)
  if (at.items !== undefined) return has(at.items, name, byId)
  return (at.oneOf ?? at.anyOf ?? [at]).some((variant) => {
    const inner = resolved(variant, byId).properties?.[first]
    return inner !== undefined && (rest.length === 0 || has(inner, rest.join('.'), byId))
  })
}

/** The tag of all variants: each of its values with what it means. */
function choiceOf(found: readonly JsonSchema[], byId: SchemaById): JsonSchema {
  const tags = found.map((each) => resolved(each, byId)).filter(isSchema)
  const values = [...new Set(tags.flatMap((each) => ('const' in each ? [each.const] : (each.enum ?? []))))]
  return { type: 'string', enum: values, description: tags.map(({ description = '' }) => description).join(' ') }
}
