import { quote } from './quote.ts'
import { type JsonSchema, resolved, type SchemaNames, typesOf } from './schema.ts'
import { eitherOf, inRange, KINDS, type Kind, oneOf, withExamples } from './sentences.ts'
import type { TextFormat, TextFormats } from './text-format.ts'

/** The values that a schema allows, to follow "must be": a kind of value, its choices, its range. */
export function allowed(schema: JsonSchema, names: SchemaNames): string {
  if (schema.enum !== undefined) return oneOf(schema.enum.map(quote))
  if ('const' in schema) return quote(schema.const)
  const branches = schema.anyOf ?? schema.oneOf
  if (branches !== undefined)
    return eitherOf([...new Set(branches.map((branch) => allowed(resolved(branch, names.byId), names)))])
  const types = typesOf(schema)
  const format = formatOf(schema, names.formats)
  if (format !== undefined) {
    const noun = withExamples(`${format.noun}${inRange(schema)}`, format.examples)
    return eitherOf(types.includes('null') ? [noun, KINDS.null] : [noun])
  }
  return types.length === 0 ? KINDS.unknown : eitherOf(types.map((type) => kind(type, schema)))
}

/** The format of a value that may be a number or text; to the caller both are one kind of value. */
export const formatOf = ({ format }: JsonSchema, formats: TextFormats): TextFormat | undefined =>
  format === undefined || !Object.hasOwn(formats, format) ? undefined : formats[format]

function kind(type: string, schema: JsonSchema): string {
  const noun = isKind(type) ? KINDS[type] : type
  return type === 'integer' || type === 'number' ? `${noun}${inRange(schema)}` : noun
}

const isKind = (type: string): type is Kind => Object.hasOwn(KINDS, type)
