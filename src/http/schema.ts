import type { FastifyInstance } from 'fastify'
import { type Static, type TSchema, Type } from 'typebox'
import type { TextFormats } from './text-format.ts'

/** A `$ref` that knows the type of what it points to; a bare Type.Ref is `unknown`. */
export const refTo = <T extends TSchema>(id: string) => Type.Unsafe<Static<T>>(Type.Ref(id))

/**
 * The part of a schema that our own readers use (sentences about faults, names in a query). A schema of ours is plain JSON
 * Schema; the type of TypeBox knows only which value it stands for, not what stands in it.
 */
export type JsonSchema = {
  readonly $ref?: string
  readonly type?: string | readonly string[]
  readonly format?: string
  readonly description?: string
  readonly properties?: Readonly<Record<string, JsonSchema>>
  readonly required?: readonly string[]
  readonly items?: JsonSchema
  readonly anyOf?: readonly JsonSchema[]
  readonly oneOf?: readonly JsonSchema[]
  readonly discriminator?: { readonly propertyName: string }
  readonly enum?: readonly unknown[]
  readonly const?: unknown
  readonly minimum?: number
  readonly exclusiveMinimum?: number
  readonly maximum?: number
  readonly exclusiveMaximum?: number
  readonly multipleOf?: number
  readonly minLength?: number
  readonly maxLength?: number
  readonly pattern?: string
  readonly minItems?: number
  readonly maxItems?: number
  readonly uniqueItems?: boolean
  readonly additionalProperties?: boolean | JsonSchema
  readonly 'x-exclusive'?: readonly (readonly string[])[]
  /** Names that other variants of this object have, and it has not. */
  readonly 'x-foreign'?: readonly string[]
  /** The value of the tag where an object leaves it out. */
  readonly 'x-usual'?: string
  /** The things that an object of this schema describes, in the plural: `turntables`. Sentences about foreign names use it. */
  readonly 'x-things'?: string
}

/** Finds a schema that was added by its `$id`. */
export type SchemaById = (id: string) => unknown

/** Everything that a schema refers to by its name. */
export interface SchemaNames {
  readonly byId: SchemaById
  readonly formats: TextFormats
}

export const schemaNamesOf = (app: FastifyInstance): SchemaNames => ({
  byId: (id) => app.getSchema(id),
  formats: app.textFormats,
})

/** The schema behind a `$ref`, and behind the `$ref` there; any other schema is itself. */
export function resolved(schema: JsonSchema, byId: SchemaById): JsonSchema {
  let at = schema
  while (at.$ref !== undefined) {
    const target = byId(at.$ref.replace(/#$/, ''))
    if (!isSchema(target)) throw new Error(`no schema was added for $ref ${at.$ref}`)
    at = target
  }
  return at
}

/** The names of the types that a schema allows; none when it does not say. */
export function typesOf(schema: JsonSchema): readonly string[] {
  if (schema.type === undefined) return []
  return typeof schema.type === 'string' ? [schema.type] : schema.type
}

export function isSchema(value: unknown): value is JsonSchema {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
