import { allowed, formatOf } from './allowed.ts'
import type { FaultList } from './fault-list.ts'
import { nearestName, notKnown } from './nearest-name.ts'
import { quote } from './quote.ts'
import { type JsonSchema, resolved, type SchemaNames, typesOf } from './schema.ts'
import * as sentences from './sentences.ts'

/** A pointer's step: `~` and `/` in a name are written `~0` and `~1` (RFC 6901). */
export const step = (name: string): string => `/${name.slice(0, 80).replaceAll('~', '~0').replaceAll('/', '~1')}`

type Search = {
  readonly input: unknown
  readonly found: FaultList
  readonly names: SchemaNames
  /** The things that the innermost variant describes, in the plural. */
  readonly things?: string | undefined
  /** Pointers to values that were given and could not be read: they are not missing. */
  readonly unread: ReadonlySet<string>
}

/**
 * The faults of an input, in words. The validator only says whether it is valid and stops at its first error: to let
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
  names: SchemaNames,
  unread: ReadonlySet<string> = new Set(),
): void {
  look({ input, found, names, unread }, schema, input, '')
}

/** @param path the pointer to the value */
function look(search: Search, schema: JsonSchema, value: unknown, path: string): void {
  const at = resolved(schema, search.names.byId)
  const branches = at.anyOf ?? at.oneOf
  if (at.discriminator !== undefined) lookAtVariant(search, at, at.discriminator.propertyName, value, path)
  else if (branches !== undefined) lookAtBranches(search, at, branches, value, path)
  else lookAtOne(search, at, value, path)
}

function lookAtOne(search: Search, at: JsonSchema, value: unknown, path: string): void {
  const { found } = search
  const broken = brokenKeyword(at, value, search)
  if (broken !== undefined) found.add(() => ({ path, message: sentence(broken, at, value, search) }), path)
  if (broken !== undefined && broken !== 'minItems' && broken !== 'uniqueItems') return
  if (Array.isArray(value)) {
    const { items } = at
    if (items !== undefined) for (const [index, item] of value.entries()) look(search, items, item, `${path}/${index}`)
  } else if (isObject(value)) lookAtNames(search, at, value, path)
}

/** Faults of a union without a tag: if a branch was entered (a part of the value is wrong), its faults say the most. */
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
  else search.found.add(() => ({ path, message: mustBe(schema, value, search.names) }), path)
}

/** Faults of a union with a tag: those of the variant that the tag names. */
function lookAtVariant(search: Search, schema: JsonSchema, tag: string, value: unknown, path: string): void {
  const { found, names } = search
  const variants = (schema.oneOf ?? []).map((variant) => resolved(variant, names.byId))
  if (!isObject(value)) {
    found.add(() => ({ path, message: mustBe(schema, value, names) }), path)
  } else if (!Object.hasOwn(value, tag) && schema['x-usual'] === undefined) {
    missing(search, tag, path)
  } else {
    const name = Object.hasOwn(value, tag) ? value[tag] : schema['x-usual']
    const variant = variants.find((each) => tagsOf(each, tag).includes(name))
    if (variant === undefined) {
      const choices = variants.flatMap((each) => tagsOf(each, tag))
      found.add(() => ({ path: path + step(tag), message: choice(name, choices) }))
    } else look({ ...search, things: variant['x-things'] }, variant, { ...value, [tag]: name }, path)
  }
}

/** The values of a variant's tag. */
function tagsOf({ properties }: JsonSchema, tag: string): readonly unknown[] {
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
        found.add(() => ({ path: path + step(name), message: notAllowed(name, schema, search.things) }))
  for (const names of excluded(schema['x-exclusive'] ?? [], value))
    found.add(() => ({ path, message: sentences.onlyOneOf(names) }))
}

function notAllowed(name: string, { properties = {}, ...schema }: JsonSchema, things: string | undefined): string {
  return schema['x-foreign']?.includes(name) === true
    ? sentences.doesNotApply(things)
    : notKnown(name, Object.keys(properties))
}

function missing({ found, unread }: Search, name: string, path: string): void {
  const at = path + step(name)
  if (!unread.has(at)) found.add(() => ({ path: at, message: sentences.isMissing(name) }))
}

/** Groups of names of which an object has more than the one that it may have. */
export function excluded(groups: readonly (readonly string[])[], value: object): readonly (readonly string[])[] {
  return groups.map((group) => group.filter((name) => Object.hasOwn(value, name))).filter((names) => names.length > 1)
}

type Names = Readonly<Record<string, unknown>>

function isObject(value: unknown): value is Names {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** The first keyword about a value as a whole that it does not hold to, in an order in which no size is found late. */
function brokenKeyword(schema: JsonSchema, value: unknown, search: Search): string | undefined {
  const types = typesOf(schema)
  if (types.length > 0 && !types.some((type) => isOfType(type, value))) return 'type'
  if (schema.enum !== undefined && !schema.enum.includes(value)) return 'enum'
  if ('const' in schema && schema.const !== value) return 'const'
  if (typeof value === 'number') return ofNumber(schema, value)
  if (typeof value === 'string') return ofText(schema, value, search)
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

function ofText(schema: JsonSchema, value: string, { names, input }: Search): string | undefined {
  const { minLength = 0, maxLength = Infinity, pattern } = schema
  // A character has at most two units, so no more of a text needs to be counted.
  if (value.length > 2 * maxLength || (value.length > maxLength && Array.from(value).length > maxLength))
    return 'maxLength'
  if (Array.from(value.slice(0, 2 * minLength)).length < minLength) return 'minLength'
  if (pattern !== undefined && !new RegExp(pattern, 'u').test(value)) return 'pattern'
  return formatOf(schema, names.formats)?.faultOf(value, input) === undefined ? undefined : 'format'
}

function ofList(schema: JsonSchema, value: readonly unknown[]): string | undefined {
  if (value.length > (schema.maxItems ?? Infinity)) return 'maxItems'
  if (value.length < (schema.minItems ?? 0)) return 'minItems'
  const isTwice = () => new Set(value.map((item) => JSON.stringify(item))).size < value.length
  return schema.uniqueItems === true && isTwice() ? 'uniqueItems' : undefined
}

function sentence(broken: string, schema: JsonSchema, value: unknown, { names, input }: Search): string {
  const ofFormat = typeof value === 'string' ? formatOf(schema, names.formats)?.faultOf(value, input) : undefined
  if (ofFormat !== undefined) return `${quote(value)} ${ofFormat}`
  switch (broken) {
    case 'enum':
      return choice(value, schema.enum ?? [])
    case 'const':
      return choice(value, [schema.const])
    case 'minLength':
      return sentences.tooFewCharacters(schema.minLength ?? 0, String(value).length)
    case 'maxLength':
      return sentences.tooManyCharacters(schema.maxLength ?? 0, String(value).length)
    case 'minItems':
      return sentences.tooFewEntries(schema.minItems ?? 0, Array.isArray(value) ? value.length : 0)
    case 'maxItems':
      return sentences.tooManyEntries(schema.maxItems ?? 0, Array.isArray(value) ? value.length : 0)
    case 'pattern':
      return (
        controlIn(String(value)) ?? (/^\s/.test(String(value)) ? sentences.BEGINS_BLANK : mustBe(schema, value, names))
      )
    case 'multipleOf':
      return sentences.mustBe(sentences.multipleOf(schema.multipleOf ?? 1), quote(value))
    case 'uniqueItems':
      return sentences.ENTRY_TWICE
    default:
      return mustBe(schema, value, names)
  }
}

/** Those that no text in one line has: of control, ends of lines, and turns of the direction of writing. */
const CONTROL = /[\p{Cc}\u2028-\u202e\u2066-\u2069]/u

function controlIn(text: string): string | undefined {
  const characters = Array.from(text)
  const at = characters.findIndex((character) => CONTROL.test(character))
  const code = characters[at]?.codePointAt(0)
  return code === undefined ? undefined : sentences.controlCharacter(at + 1, code)
}

const mustBe = (schema: JsonSchema, value: unknown, names: SchemaNames): string =>
  sentences.mustBe(allowed(schema, names), quote(value))

function choice(value: unknown, choices: readonly unknown[]): string {
  const nearest = typeof value === 'string' ? nearestName(value, choices.filter(isText)) : undefined
  return sentences.mustBeOneOf(choices.map(quote), quote(value), nearest)
}

function isText(value: unknown): value is string {
  return typeof value === 'string'
}
