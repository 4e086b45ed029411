import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type JsonSchema, resolved, typesOf } from '#src/http/schema.ts'

/** A schema of the document, as far as inputs are made from it. */
export type Schema = JsonSchema

export type Parameter = {
  readonly name: string
  readonly in: 'query' | 'path' | 'header'
  readonly description?: string
  readonly required?: boolean
  readonly schema: Schema
}
type Content = Readonly<Record<string, { readonly schema?: Schema; readonly examples?: Examples }>>
type Examples = Readonly<Record<string, { readonly value: unknown }>>
type Answers = Readonly<Record<string, { readonly content?: Content }>>

export type Operation = {
  readonly path: string
  readonly method: 'GET' | 'POST'
  readonly operationId: string
  readonly parameters: readonly Parameter[]
  /** What an input has to be, where there is one: as a body, or as the query that stands for it. */
  readonly body?: Schema
  /** Inputs that the document shows: bodies, for a query too that stands for one. */
  readonly examples: readonly unknown[]
  readonly responses: Answers
}

export type Document = {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Described>>>>
  readonly components: { readonly schemas: Readonly<Record<string, Schema>> }
}
type Described = Pick<Operation, 'operationId' | 'responses'> & {
  readonly summary?: string
  readonly description?: string
  readonly parameters?: readonly Parameter[]
  readonly requestBody?: { readonly content: Content }
}

export const DOCUMENT: Document = JSON.parse(
  readFileSync(join(import.meta.dirname, '../../openapi/openapi.json'), 'utf8'),
)

/** Every operation of the document: whatever is described is fuzzed. */
export const OPERATIONS: readonly Operation[] = Object.entries(DOCUMENT.paths).flatMap(([path, methods]) =>
  Object.entries(methods).map(([method, described]) => operationOf(path, method, described, methods['post'])),
)

/** @param posted the operation of the same path that has the same input as a body */
function operationOf(path: string, method: string, described: Described, posted?: Described): Operation {
  const { operationId, responses, parameters = [] } = described
  if (method !== 'get' && method !== 'post') throw new Error(`the fuzz knows no ${method}, which ${operationId} has`)
  const json = posted?.requestBody?.content['application/json']
  return {
    path,
    method: method === 'get' ? 'GET' : 'POST',
    operationId,
    parameters,
    ...(json?.schema !== undefined && { body: json.schema }),
    examples: Object.values(json?.examples ?? {}).map(({ value }) => value),
    responses,
  }
}

/** The schema behind a `$ref` of the document; any other is itself. */
export function schemaAt(schema: Schema): Schema {
  return resolved(schema, (ref) => DOCUMENT.components.schemas[ref.slice('#/components/schemas/'.length)])
}

export const isChoice = (schema: Schema): boolean => schemaAt(schema).enum !== undefined

/** The names of the types that a schema allows, also where it only says it by what else stands in it. */
export function kindsOf(schema: Schema): readonly string[] {
  const types = typesOf(schema)
  return types.length === 0 && schema.properties !== undefined ? ['object'] : types
}

/** The arrangements whose answers an operation has a JSON shape for. */
export function arrangementsOf({ responses }: Pick<Operation, 'responses'>): readonly unknown[] {
  const answer = schemaAt(responses['200']?.content?.['application/json']?.schema ?? {})
  return (answer.oneOf ?? [answer]).flatMap((shape) => schemaAt(shape).properties?.['arrangement']?.enum ?? [])
}

/** The media types that an operation says it answers a 200 with. */
export function mediaTypesOf({ responses }: Operation): readonly string[] {
  return Object.keys(responses['200']?.content ?? {})
}
