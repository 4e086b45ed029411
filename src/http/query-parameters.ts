import type { QueryName } from './query-names.ts'
import type { JsonSchema } from './schema.ts'

/** A parameter of an operation, as OpenAPI writes it. */
export type QueryParameter = {
  readonly name: string
  readonly in: 'query'
  readonly required: boolean
  readonly description?: string
  readonly style?: 'form'
  readonly explode?: false
  readonly schema: JsonSchema
}

/** The names of a query for the OpenAPI document: the body's own schemas, flat, in the body's order. */
export function queryParameters(names: readonly QueryName[]): readonly QueryParameter[] {
  return names.map(({ name, schema, value, required }) => {
    const description = schema.description ?? value.description
    return {
      name,
      in: 'query',
      required,
      ...(description !== undefined && { description }),
      // One name, its values joined by commas: a repeated name is an error.
      ...(value.type === 'array' && { style: 'form', explode: false }),
      schema: inDocument(schema),
    }
  })
}

/** A shared schema is pointed to where the document keeps it; any other is written out, less what stands beside it. */
function inDocument(schema: JsonSchema): JsonSchema {
  if (schema.$ref !== undefined) return { $ref: `#/components/schemas/${schema.$ref}` }
  const { description: _shown, items, ...rest } = schema
  return { ...rest, ...(items !== undefined && { items: inDocument(items) }) }
}
