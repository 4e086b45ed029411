import type { QueryParameter } from '#src/http/query-parameters.ts'
import { type Example, examplesOf } from './examples.ts'

/** A part of the document, which is read here as the plain JSON that it is. */
type Json = { [name: string]: unknown }

/**
 * What the document needs beyond the schemas of the routes: the names of a query, the examples (beside a `$ref` they
 * would vanish), and which variant a tag stands for (Ajv knows that by itself, and takes no `mapping`).
 */
export function complete(document: object, queries: ReadonlyMap<string, readonly QueryParameter[]>): object {
  const whole = { ...document }
  for (const operation of operations(part(whole, 'paths'))) {
    const id = String(operation['operationId'])
    const query = queries.get(id)
    if (query !== undefined) operation['parameters'] = [...list(operation['parameters']), ...query]
    for (const example of examplesOf(id)) addExample(operation, example)
  }
  const schemas = part(part(whole, 'components'), 'schemas')
  for (const schema of Object.values(schemas)) addMappings(schema, schemas)
  return whole
}

function operations(paths: Json): readonly Json[] {
  return Object.values(paths).flatMap((path) => (isJson(path) ? Object.values(path).filter(isJson) : []))
}

function addExample(operation: Json, { name, summary, status, request, response }: Example): void {
  const media = [
    { content: part(operation['requestBody'], 'content'), value: request },
    { content: part(part(operation['responses'], String(status)), 'content'), value: response },
  ]
  for (const { content, value } of media) {
    const [first] = Object.values(content)
    if (isJson(first)) first['examples'] = { ...part(first, 'examples'), [name]: { summary, value } }
  }
}

/** Walks a schema for variants told apart by a tag, and says which value of the tag leads to which of them. */
function addMappings(schema: unknown, schemas: Json): void {
  if (Array.isArray(schema)) for (const item of schema) addMappings(item, schemas)
  if (!isJson(schema)) return
  const discriminator = schema['discriminator']
  if (isJson(discriminator)) discriminator['mapping'] = mapping(String(discriminator['propertyName']), schema, schemas)
  for (const inner of Object.values(schema)) addMappings(inner, schemas)
}

function mapping(tag: string, schema: Json, schemas: Json): Json {
  const entries = list(schema['oneOf']).flatMap((variant) => {
    const $ref = isJson(variant) ? String(variant['$ref']) : ''
    const tagged = part(part(schemas[$ref.split('/').at(-1) ?? ''], 'properties'), tag)
    const values = 'const' in tagged ? [tagged['const']] : list(tagged['enum'])
    return values.map((value) => [String(value), $ref] as const)
  })
  return Object.fromEntries(entries)
}

function part(whole: unknown, name: string): Json {
  const found = isJson(whole) ? whole[name] : undefined
  return isJson(found) ? found : {}
}

function isJson(value: unknown): value is Json {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function list(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : []
}
