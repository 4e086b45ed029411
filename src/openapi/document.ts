import type { QueryParameter } from '#src/http/query-parameters.ts'
import { type Example, examplesOf } from './examples.ts'

/** A part of the document, which is read here as the plain JSON that it is. */
type Json = { [name: string]: unknown }

const header = (description: string): Json => ({ description, schema: { type: 'string' } })

/** On an answer that may be kept, and on the 304 that says that it still holds. */
const KEPT = {
  ETag: header('Marks the answer. Sent back as `If-None-Match`, it saves the answer while that is still the same.'),
  'Cache-Control': header('How long the answer may be kept, and by whom.'),
  'X-Engine': header('The build that computed the answer, for `engine` of addresses that are to be kept for ever.'),
}
const BUSY = { 'Retry-After': header('In how many seconds to come back.') }

/**
 * What the document needs beyond the schemas of the routes: the names of a query, the headers of the answers (beside a
 * `$ref` they would vanish, like the examples and the descriptions), and which variant a tag stands for (Ajv knows that by
 * itself, and takes no `mapping`).
 *
 * @param own the schemas that were added, by their `$id`
 */
export function complete(
  document: object,
  queries: ReadonlyMap<string, readonly QueryParameter[]>,
  own: Readonly<Record<string, unknown>>,
): object {
  const whole = { ...document }
  for (const operation of operations(part(whole, 'paths'))) {
    const id = String(operation['operationId'])
    const query = queries.get(id)
    if (query !== undefined) operation['parameters'] = [...list(operation['parameters']), ...query]
    // Of answers the first is enough: the others differ in what was asked, and are as long.
    for (const [index, example] of examplesOf(id).entries()) addExample(operation, example, index === 0)
    addHeaders(part(operation, 'responses'))
  }
  const schemas = part(part(whole, 'components'), 'schemas')
  for (const [name, schema] of Object.entries(schemas)) describeReferences(schema, own[name])
  for (const schema of Object.values(schemas)) addMappings(schema, schemas)
  for (const schema of Object.values(schemas)) freeUsualTag(schema, schemas)
  dropUnused(whole, schemas)
  return whole
}

/** What nothing points to is of a query alone, whose names stand as parameters. */
function dropUnused(whole: Json, schemas: Json): void {
  const text = JSON.stringify(whole)
  const unused = Object.keys(schemas).filter((name) => !text.includes(`"#/components/schemas/${name}"`))
  for (const name of unused) delete schemas[name]
  if (unused.length > 0) dropUnused(whole, schemas)
}

function operations(paths: Json): readonly Json[] {
  return Object.values(paths).flatMap((path) => (isJson(path) ? Object.values(path).filter(isJson) : []))
}

function addHeaders(responses: Json): void {
  const add = (status: string, headers: Json) => {
    const response = responses[status]
    if (isJson(response)) response['headers'] = { ...part(response, 'headers'), ...headers }
  }
  if ('304' in responses) for (const status of ['200', '304']) add(status, KEPT)
  for (const status of ['429', '503']) add(status, BUSY)
}

function addExample(operation: Json, { name, summary, status, request, response }: Example, isFirst: boolean): void {
  const media = [
    { content: part(operation['requestBody'], 'content'), value: request },
    ...(isFirst || status !== 200
      ? [{ content: part(part(operation['responses'], String(status)), 'content'), value: response }]
      : []),
  ]
  for (const { content, value } of media) {
    const [first] = Object.values(content)
    if (isJson(first)) first['examples'] = { ...part(first, 'examples'), [name]: { summary, value } }
  }
}

/** Gives every reference within a schema the description that stands beside it in the schema's own form. */
function describeReferences(shown: unknown, own: unknown): void {
  if (Array.isArray(shown) && Array.isArray(own)) {
    for (const [index, item] of shown.entries()) describeReferences(item, own[index])
  }
  if (!isJson(shown) || !isJson(own)) return
  if ('$ref' in shown && typeof own['description'] === 'string') shown['description'] = own['description']
  for (const [name, inner] of Object.entries(shown)) describeReferences(inner, own[name])
}

/** Walks a schema for variants told apart by a tag, and says which value of the tag leads to which of them. */
function addMappings(schema: unknown, schemas: Json): void {
  if (Array.isArray(schema)) for (const item of schema) addMappings(item, schemas)
  if (!isJson(schema)) return
  const discriminator = schema['discriminator']
  if (isJson(discriminator)) discriminator['mapping'] = mapping(String(discriminator['propertyName']), schema, schemas)
  for (const inner of Object.values(schema)) addMappings(inner, schemas)
}

/**
 * The usual variant of a request may leave out its tag: the service fills the tag in before it looks, so its own schema
 * requires it. The union then has no discriminator, because OpenAPI 3.1 gives one no meaning where the tag may be missing, and
 * generators of clients take it as required. The tags tell the variants apart as well, but no linter sees that of a `oneOf` with
 * an optional tag, so it is an `anyOf`. Keywords of our own are left out.
 */
function freeUsualTag(schema: unknown, schemas: Json): void {
  if (!isJson(schema)) return
  const { 'x-usual': usual, discriminator } = schema
  delete schema['x-usual']
  delete schema['x-foreign']
  if (usual === undefined || !isJson(discriminator)) return
  schema['anyOf'] = schema['oneOf']
  delete schema['oneOf']
  delete schema['discriminator']
  const variant = part(schemas, nameIn(String(part(discriminator, 'mapping')[String(usual)])))
  variant['required'] = list(variant['required']).filter((name) => name !== discriminator['propertyName'])
}

const nameIn = ($ref: string): string => $ref.split('/').at(-1) ?? ''

function mapping(tag: string, schema: Json, schemas: Json): Json {
  const entries = list(schema['oneOf']).flatMap((variant) => {
    const $ref = isJson(variant) ? String(variant['$ref']) : ''
    const tagged = part(part(schemas[nameIn($ref)], 'properties'), tag)
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
