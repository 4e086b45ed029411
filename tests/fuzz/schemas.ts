import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js'
import { DOCUMENT, type Schema } from './document.ts'

// The document's own words of 2020-12; formats and keywords of ours are the service's business.
const ajv = new Ajv2020({ strict: false, validateFormats: false, allErrors: false })
ajv.addSchema({ $id: 'document', components: closed(DOCUMENT.components) })

const compiled = new WeakMap<Schema, ValidateFunction>()

/** The first breach of a schema of the document. */
export function breaches(schema: Schema, value: unknown): readonly string[] {
  const known = compiled.get(schema)
  const validate = known ?? ajv.compile(pointed(closed(schema)) as object)
  if (known === undefined) compiled.set(schema, validate)
  if (validate(value)) return []
  const [error] = validate.errors ?? []
  return [`${error?.instancePath || 'the whole'} ${error?.message} (${JSON.stringify(error?.params)})`]
}

/** A schema in which every field must be described: one that the document does not name is no part of the contract. */
function closed(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(closed)
  if (typeof schema !== 'object' || schema === null) return schema
  const { discriminator: _tag, ...rest } = schema as Record<string, unknown>
  const inner = Object.fromEntries(Object.entries(rest).map(([name, part]) => [name, closed(part)]))
  const isOpen = typeof inner['properties'] === 'object' && inner['type'] === 'object'
  return isOpen && !('additionalProperties' in inner) ? { ...inner, additionalProperties: false } : inner
}

/** The same with its `$ref`s into the document. */
function pointed(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(pointed)
  if (typeof schema !== 'object' || schema === null) return schema
  return Object.fromEntries(
    Object.entries(schema).map(([name, part]) => [
      name,
      name === '$ref' && typeof part === 'string' ? `document${part}` : pointed(part),
    ]),
  )
}
