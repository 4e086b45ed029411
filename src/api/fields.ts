import { type TSchema, Type } from 'typebox'
import type { Field, Fields, Group, InputOf, ValueOf } from '#shared/bearing/field.ts'
import { LENGTH_OR_NONE } from '#shared/bearing/field.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { flag } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'
import { echo, type Length, length, nonNegativeLength, toMm } from './length.ts'

/*
 * The edge of the rows in `shared/bearing/fields.ts`: the type and the schema of a request, and the way
 * from a request to the core's input and back.
 */

/** The fields as a caller writes them. */
export type RequestOf<F extends Fields> = InputOf<F, Length>

/** The schema of one field that may be left out. */
export const optionalField = <F extends Field>(field: F) =>
  Type.Optional(Type.Unsafe<ValueOf<F, Length>>(schemaOf(field)))

/** The properties of an object schema that some fields describe. */
export const propertiesOf = (fields: Fields): Record<string, TSchema> =>
  Object.fromEntries(
    Object.entries(fields).map(([name, field]) => {
      const schema = schemaOf(field)
      return [name, field.required === true ? schema : Type.Optional(schema)]
    }),
  )

/** The rules of an object schema that go with some fields. */
export const rulesOf = ({ oneOfEach }: Group) => ({
  additionalProperties: false,
  ...(oneOfEach.length > 0 && { 'x-exclusive': oneOfEach }),
})

/** The schemas of all groups within a group, inner ones first. */
export const groupSchemas = ({ fields }: Group, isForeign: ForeignNames, path = ''): TSchema[] =>
  Object.entries(fields).flatMap(([name, field]): TSchema[] => {
    if (field.kind !== 'group') return []
    const at = `${path}/${name}`
    const own = Type.Object(propertiesOf(field.fields), {
      $id: field.id,
      description: field.means,
      ...rulesOf(field),
      ...isForeign(at, field),
    })
    return [...groupSchemas(field, isForeign, at), own]
  })

/** Names that a place of the input has in other arrangements only, as an extension keyword of its schema. */
export type ForeignNames = (path: string, group: Group) => { readonly 'x-foreign'?: readonly string[] }

function schemaOf(field: Field): TSchema {
  const description = described(field)
  switch (field.kind) {
    case 'length':
      return field.bounds === LENGTH_OR_NONE ? nonNegativeLength(description) : length(description)
    case 'length-or-null':
      return Type.Union([refTo<typeof Length>('Length'), Type.Null()], { description })
    case 'lengths':
      return Type.Array(refTo<typeof Length>('Length'), {
        minItems: field.items.min,
        maxItems: field.items.max,
        description,
      })
    case 'number':
      return Type.Number({ minimum: field.bounds.min, maximum: field.bounds.max, description })
    case 'integer':
      return Type.Integer({ minimum: field.bounds.min, maximum: field.bounds.max, description })
    case 'choice':
      return Type.Enum([...field.choices], {
        type: field.choices.every((each) => typeof each === 'number') ? 'integer' : 'string',
        description,
      })
    case 'flag':
      return flag(description)
    case 'group':
      return refTo(field.id)
    default:
      return field satisfies never
  }
}

const described = ({ means, byDefault }: Field): string =>
  byDefault === undefined ? means : `${means} Default: ${byDefault.stated}.`

type Values = Readonly<Record<string, unknown>>

/** A request's fields in the words of the core: millimetres, and no field that is undefined. */
export function fromRequest<F extends Fields>(fields: F, request: Values, units: Units): InputOf<F> {
  const input: Record<string, unknown> = {}
  for (const name in fields) {
    const field = fields[name]
    const value = request[name]
    if (field !== undefined && value !== undefined) input[name] = toCore(field, value, units)
  }
  // The same rows made both types.
  return input as InputOf<F>
}

function toCore(field: Field, value: unknown, units: Units): unknown {
  if (field.kind === 'group') return fromRequest(field.fields, value as Values, units)
  if (field.kind === 'lengths') return (value as Length[]).map((each) => toMm(each, units))
  const isLength = field.kind === 'length' || (field.kind === 'length-or-null' && value !== null)
  return isLength ? toMm(value as Length, units) : value
}

/**
 * The way back of `fromRequest`: lengths as numbers in `units`. A field without a value is undefined, so that every answer has
 * one shape, which is written at twice the speed.
 */
export function toRequest<F extends Fields>(fields: F, input: Values, units: Units): RequestOf<F> {
  const request: Record<string, unknown> = {}
  for (const name in fields) {
    const field = fields[name]
    if (field !== undefined) request[name] = toWire(field, input[name], units)
  }
  return request as RequestOf<F>
}

function toWire(field: Field, value: unknown, units: Units): unknown {
  if (value === undefined || value === null) return value
  if (field.kind === 'group') return toRequest(field.fields, value as Values, units)
  if (field.kind === 'lengths') return (value as readonly Mm[]).map((each) => echo(each, units))
  return field.kind === 'length' || field.kind === 'length-or-null' ? echo(mm(Number(value)), units) : value
}
