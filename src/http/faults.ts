import { lengthFault, lengthFormats } from '#src/api/length.ts'
import { allowed, isLength, listed } from './allowed.ts'
import type { FaultList } from './fault-list.ts'
import { given } from './given.ts'
import { nearestName, notKnown } from './nearest-name.ts'
import { type JsonSchema, resolved, type SchemaById, typesOf } from './schema.ts'

/** A pointer's step: `~` and `/` in a name are written `~0` and `~1` (RFC 6901). */
export const step = (name: string): string => `/${name.slice(0, 80).replaceAll('~', '~0').replaceAll('/', '~1')}`

type Search = {
  readonly found: FaultList
  readonly byId: SchemaById
  /** Pointers to values that were given and could not be read: they are not missing. */
  readonly unread: ReadonlySet<string>
}

/**
 * What is wrong with an input, in words. The validator only says whether it is valid and stops at its first error: to let
 * it collect all of them takes a time that grows with their square. So an input that is not valid is walked here once
 * more, each value at most once for every branch that a union has, and no list that is longer than it may be is entered.
 * One value gives one fault, for a length can miss its range, its form and its size all at once.
 *
 * @param found where the faults are added
 * @param unread pointers to values that were given and could not be read, and to what they are in
 */
export function findFaults(
  found: FaultList,
  input: unknown,
  schema: JsonSchema,
  byId: SchemaById,
  unread: ReadonlySet<string> = new Set(),
): void {
  look({ found, byId, unread }, schema, input, '')
}

/** @param path the pointer to the value */
function look(search: Search, schema: JsonSchema, value: unknown, path: string): void {
  const at = resolved(schema, search.byId)
  const branches = at.anyOf ?? at.oneOf
  if (at.discriminator !== undefined) lookAtVariant(search, at, at.discriminator.propertyName, value, path)
  else if (branches !== undefined) lookAtBranches(search, at, branches, value, path)
  else lookAtOne(search, at, value, path)
}

function lookAtOne(search: Search, at: JsonSchema, value: unknown, path: string): void {
  const { found, byId } = search
  const broken = brokenKeyword(at, value)
  if (broken !== undefined) found.add(() => ({ path, message: sentence(broken, at, value, byId) }), path)
  if (broken !== undefined && broken !== 'minItems' && broken !== 'uniqueItems') return
  if (Array.isArray(value)) {
    const { items } = at
    if (items !== undefined) for (const [index, item] of value.entries()) look(search, items, item, `${path}/${index}`)
  } else if (isObject(value)) lookAtNames(search, at, value, path)
}

/** Of a union without a tag: where a branch was entered (a part of the value is wrong), its faults say the most. */
function lookAtBranches(
  search: Search,
  schema: JsonSchema,
  branches: readonly JsonSchema[],
  value: unknown,
  path: string,
): void {
  let entered: FaultList | undefined
  for (const branch of branches) {
    const found = search.found.branch(path)
    look({ ...search, found }, branch, value, path)
    if (found.isEmpty) return
    if (found.isInside) entered ??= found
  }
  if (entered !== undefined) search.found.addAll(entered)
  else search.found.add(() => ({ path, message: must(`be ${allowed(schema, search.byId)}`, value) }), path)
}

/** Of a union with a tag: the variant that the tag names. */
function lookAtVariant(search: Search, schema: JsonSchema, tag: string, value: unknown, path: string): void {
  const { found, byId } = search
  const variants = schema.oneOf ?? []
  const names = (variant: JsonSchema) => namesOf(resolved(variant, byId), tag)
  if (!isObject(value)) {
    found.add(() => ({ path, message: must(`be ${allowed(schema, byId)}`, value) }), path)
  } else if (!Object.hasOwn(value, tag) && schema['x-usual'] === undefined) {
    missing(search, tag, path)
  } else {
    const name = value[tag] ?? schema['x-usual']
    const variant = variants.find((each) => names(each).includes(name))
    if (variant !== undefined) look(search, variant, { ...value, [tag]: name }, path)
    else found.add(() => ({ path: path + step(tag), message: choice(name, variants.flatMap(names)) }))
  }
}

/** What the tag of a variant may be. */
function namesOf({ properties }: JsonSchema, tag: string): readonly unknown[] {
  const tagged = properties?.[tag]
  if (tagged === undefined) return []
  return 'const' in tagged ? [tagged.const] : (tagged.enum ?? [])
}

function lookAtNames(search: Search, schema: JsonSchema, value: Names, path: string): void {
  const { found } = search
  const { properties = {}, required = [] } = schema
  for (const name of required) if (!Object.hasOwn(value, name)) missing(search, name, path)
  for (const [name, property] of Object.entries(properties))
    if (Object.hasOwn(value, name)) look(search, property, value[name], path + step(name))
  if (schema.additionalProperties === false)
    for (const name of Object.keys(value))
      if (!Object.hasOwn(properties, name))
        found.add(() => ({ path: path + step(name), message: notAllowed(name, schema) }))
  for (const names of excluded(schema['x-exclusive'] ?? [], value))
    found.add(() => ({ path, message: exclusive(names) }))
}

function notAllowed(name: string, { properties = {}, ...schema }: JsonSchema): string {
  return schema['x-foreign']?.includes(name) === true
    ? `"${name}" does not apply to this arrangement: remove it`
    : notKnown(name, Object.keys(properties))
}

function missing({ found, unread }: Search, name: string, path: string): void {
  const at = path + step(name)
  if (!unread.has(at)) found.add(() => ({ path: at, message: `"${name}" is missing` }))
}

/** Of each group of names that an object may have one of: those that it has, where they are more. */
export function excluded(groups: readonly (readonly string[])[], value: object): readonly (readonly string[])[] {
  return groups.map((group) => group.filter((name) => Object.hasOwn(value, name))).filter((names) => names.length > 1)
}

type Names = Readonly<Record<string, unknown>>

function isObject(value: unknown): value is Names {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** The first keyword about a value as a whole that it does not hold to, in an order in which no size is found late. */
function brokenKeyword(schema: JsonSchema, value: unknown): string | undefined {
  const types = typesOf(schema)
  if (types.length > 0 && !types.some((type) => isOfType(type, value))) return 'type'
  if (schema.enum !== undefined && !schema.enum.includes(value)) return 'enum'
  if ('const' in schema && schema.const !== value) return 'const'
  if (typeof value === 'number') return ofNumber(schema, value)
  if (typeof value === 'string') return ofText(schema, value)
  return Array.isArray(value) ? ofList(schema, value) : undefined
}

function isOfType(type: string, value: unknown): boolean {
  switch (type) {
    case 'null':
      return value === null
    case 'array':
      return Array.isArray(value)
    case 'object':
      return isObject(value)
    case 'integer':
      return Number.isInteger(value)
    case 'number':
      return Number.isFinite(value)
    default:
      return typeof value === type
  }
}

function ofNumber(schema: JsonSchema, value: number): string | undefined {
  if (value < (schema.minimum ?? -Infinity)) return 'minimum'
  if (value <= (schema.exclusiveMinimum ?? -Infinity)) return 'exclusiveMinimum'
  if (value > (schema.maximum ?? Infinity)) return 'maximum'
  if (value >= (schema.exclusiveMaximum ?? Infinity)) return 'exclusiveMaximum'
  return schema.multipleOf !== undefined && !Number.isInteger(value / schema.multipleOf) ? 'multipleOf' : undefined
}

function ofText(schema: JsonSchema, value: string): string | undefined {
  const { minLength = 0, maxLength = Infinity, pattern, format } = schema
  // A character has at most two units, so no more of a text needs to be counted.
  if (value.length > 2 * maxLength || (value.length > maxLength && Array.from(value).length > maxLength))
    return 'maxLength'
  if (Array.from(value.slice(0, 2 * minLength)).length < minLength) return 'minLength'
  if (pattern !== undefined && !new RegExp(pattern, 'u').test(value)) return 'pattern'
  return format !== undefined && lengthFormats[format]?.validate(value) === false ? 'format' : undefined
}

function ofList(schema: JsonSchema, value: readonly unknown[]): string | undefined {
  if (value.length > (schema.maxItems ?? Infinity)) return 'maxItems'
  if (value.length < (schema.minItems ?? 0)) return 'minItems'
  const isTwice = () => new Set(value.map((item) => JSON.stringify(item))).size < value.length
  return schema.uniqueItems === true && isTwice() ? 'uniqueItems' : undefined
}

function sentence(broken: string, schema: JsonSchema, value: unknown, byId: SchemaById): string {
  const ofLength = typeof value === 'string' && isLength(schema) ? lengthFault(value, schema.format) : undefined
  if (ofLength !== undefined) return `${given(value)} ${ofLength}`
  switch (broken) {
    case 'enum':
      return choice(value, schema.enum ?? [])
    case 'const':
      return choice(value, [schema.const])
    case 'minLength':
      return `must have at least ${schema.minLength} characters; ${String(value).length} were given`
    case 'maxLength':
      return `must have at most ${schema.maxLength} characters; ${String(value).length} were given`
    case 'minItems':
      return `must hold at least ${schema.minItems} entries; ${Array.isArray(value) ? value.length : 0} were given`
    case 'maxItems':
      return `must hold at most ${schema.maxItems} entries; ${Array.isArray(value) ? value.length : 0} were given`
    case 'multipleOf':
      return must(`be a multiple of ${schema.multipleOf}`, value)
    case 'uniqueItems':
      return 'must not hold the same entry twice'
    default:
      return must(`be ${allowed(schema, byId)}`, value)
  }
}

const must = (what: string, value: unknown): string => `must ${what}; ${given(value)} was given`

function choice(value: unknown, choices: readonly unknown[]): string {
  const nearest = typeof value === 'string' ? nearestName(value, choices.filter(isText)) : undefined
  const hint = nearest === undefined ? '' : `: did you mean "${nearest}"?`
  return `${must(`be ${listed(choices)}`, value)}${hint}`
}

function isText(value: unknown): value is string {
  return typeof value === 'string'
}

function exclusive(names: readonly string[]): string {
  const quoted = names.map((name) => `"${name}"`)
  const [first, second, ...more] = quoted
  return more.length === 0 ? `give either ${first} or ${second}, not both` : `give only one of ${quoted.join(', ')}`
}
