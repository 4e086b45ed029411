import { lengthFormats } from '#src/api/length.ts'
import { given } from './given.ts'
import { type JsonSchema, resolved, type SchemaById, typesOf } from './schema.ts'

/** What may stand at a place, to follow "must be": its kind, its choices, its range. */
export function allowed(schema: JsonSchema, byId: SchemaById): string {
  if (schema.enum !== undefined) return listed(schema.enum)
  if ('const' in schema) return given(schema.const)
  const branches = schema.anyOf ?? schema.oneOf
  if (branches !== undefined) {
    return [...new Set(branches.map((branch) => allowed(resolved(branch, byId), byId)))].join(', or ')
  }
  const types = typesOf(schema)
  if (isLength(schema)) return `${length(schema)}${types.includes('null') ? ', or null' : ''}`
  return types.length === 0 ? 'something else' : types.map((type) => kind(type, schema)).join(', or ')
}

/** A length may be a number or a text; both are one thing to the maker. */
export function isLength(schema: JsonSchema): schema is JsonSchema & { readonly format: string } {
  return schema.format !== undefined && schema.format in lengthFormats
}

/** `one of "glass", "steel" or "wood"`. */
export function listed(choices: readonly unknown[]): string {
  const shown = choices.map(given)
  const last = shown.pop()
  return shown.length === 0 ? (last ?? 'something else') : `one of ${shown.join(', ')} or ${last}`
}

function length(schema: JsonSchema): string {
  return `a length${range(schema)}, such as 16 or "5/8"`
}

function kind(type: string, schema: JsonSchema): string {
  switch (type) {
    case 'integer':
      return `a whole number${range(schema)}`
    case 'number':
      return `a number${range(schema)}`
    case 'string':
      return 'a text'
    case 'boolean':
      return 'true or false'
    case 'array':
      return 'a list, written [ … ]'
    case 'object':
      return 'an object, written { … }'
    default:
      return type
  }
}

function range({ minimum, exclusiveMinimum, maximum, exclusiveMaximum }: JsonSchema): string {
  if (minimum !== undefined && maximum !== undefined) return ` from ${minimum} to ${maximum}`
  const least =
    exclusiveMinimum !== undefined ? `above ${exclusiveMinimum}` : minimum !== undefined && `at least ${minimum}`
  const most =
    exclusiveMaximum !== undefined ? `below ${exclusiveMaximum}` : maximum !== undefined && `at most ${maximum}`
  const limits = [least, most].filter((limit) => limit !== false)
  const of = limits.length === 1 && limits[0]?.startsWith('at ') ? ' of' : ''
  return limits.length === 0 ? '' : `${of} ${limits.join(' and ')}`
}
