import { readFileSync } from 'node:fs'
import { type Schema, Validator } from '@cfworker/json-schema'
import { describe, expect, test } from 'vitest'
import { EXAMPLES, type Example } from './examples-program.ts'

/*
 * Every example, held to the schemas of the document by a validator that is not the service's own, in the dialect that
 * OpenAPI 3.1 names (2020-12).
 */

type Media = { readonly content?: Readonly<Record<string, { readonly schema: Schema }>> }
type Parameter = { readonly name: string; readonly required?: boolean; readonly schema: Schema }
type Operation = {
  readonly operationId: string
  readonly parameters?: readonly Parameter[]
  readonly requestBody?: Media
  readonly responses: Readonly<Record<string, Media>>
}
type Document = {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>
  readonly components: object
}

const document: Document = JSON.parse(readFileSync('openapi/openapi.json', 'utf8'))
const OPERATIONS = new Map(
  Object.values(document.paths)
    .flatMap((path) => Object.values(path))
    .map((operation) => [operation.operationId, operation]),
)

/** What is wrong with a value, by a schema whose references are those of the document. */
function faultsOf(value: unknown, schema: Schema): readonly string[] {
  const { errors } = new Validator({ components: document.components, ...schema }, '2020-12', false).validate(value)
  return errors.map(({ instanceLocation, error }) => `${instanceLocation}: ${error}`)
}

function schemaIn(media: Media | undefined): Schema {
  const schema = Object.values(media?.content ?? {})[0]?.schema
  if (schema === undefined) throw new Error('the document must have a schema for it')
  return schema
}

function operationOf({ operationId }: Pick<Example, 'operationId'>): Operation {
  const operation = OPERATIONS.get(operationId)
  if (operation === undefined) throw new Error(`the document must have the operation ${operationId}`)
  return operation
}

/** The schema of a request: of its body, or of its query as if that were an object. */
function requestSchema({ requestBody, parameters = [] }: Operation): Schema {
  if (requestBody !== undefined) return schemaIn(requestBody)
  return {
    type: 'object',
    additionalProperties: false,
    properties: Object.fromEntries(parameters.map(({ name, schema }) => [name, schema])),
    required: parameters.filter(({ required }) => required === true).map(({ name }) => name),
  }
}

const answerSchema = (operation: Operation, status: number): Schema => schemaIn(operation.responses[String(status)])

describe.each(EXAMPLES)('the example $name', (example) => {
  const operation = operationOf(example)

  test('is a request by the document', () => {
    expect(faultsOf(example.request, requestSchema(operation))).toEqual([])
  })

  test('has an answer by the document', () => {
    expect(faultsOf(example.response, answerSchema(operation, example.status))).toEqual([])
  })

  test('is none with a field missing, and no answer with another arrangement', () => {
    const { arrangement } = example.response
    const [first] = Object.keys(example.response)
    const less = Object.fromEntries(Object.entries(example.response).filter(([name]) => name !== first))
    expect(faultsOf(less, answerSchema(operation, example.status))).not.toEqual([])
    if (arrangement === undefined) return
    const other = { ...example.response, arrangement: 'a bearing that nobody has seen' }
    expect(faultsOf(other, answerSchema(operation, example.status))).not.toEqual([])
  })
})

test('a turntable’s answer is no answer of two rings, whatever it calls itself', () => {
  const schema = answerSchema(operationOf({ operationId: 'design' }), 200)
  const turntable = EXAMPLES.find(({ name }) => name === 'design-thrust')?.response
  expect(faultsOf(turntable, schema)).toEqual([])
  expect(faultsOf({ ...turntable, arrangement: 'radial' }, schema)).not.toEqual([])
})
