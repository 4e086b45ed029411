import fc from 'fast-check'
import { isChoice, kindsOf, type Schema, schemaAt } from './document.ts'

/** Lists may hold hundreds; mostly short ones, or a run would be spent on sending them. */
const USUAL_LENGTH = 6
/** To one change: an input has dozens of places, and few of them changed leave a bearing. */
const MOSTLY = 30
/** Of a choice that is not made, against `MOSTLY`: each may have a path of its own in the code. */
const CHOICES = 4
/** Where a schema sets no limit. */
const LARGEST = 1e6

/** What was drawn from already: to prepare a text of any letters takes longer than to draw a whole input. */
const prepared = new WeakMap<Schema, fc.Arbitrary<unknown>>()

/** Values that a schema allows, from its own words: bounds themselves, sizes of every order, each variant. */
export function valid(schema: Schema): fc.Arbitrary<unknown> {
  const at = schemaAt(schema)
  const known = prepared.get(at)
  if (known !== undefined) return known
  const values = allowed(at)
  prepared.set(at, values)
  return values
}

function allowed(at: Schema): fc.Arbitrary<unknown> {
  if (at.enum !== undefined) return fc.constantFrom(...at.enum)
  if ('const' in at) return fc.constant(at.const)
  const variants = at.anyOf ?? at.oneOf
  if (variants !== undefined) return fc.oneof(...variants.map(valid))
  const kinds = kindsOf(at)
  return kinds.length === 0 ? fc.jsonValue() : fc.oneof(...kinds.map((kind) => ofKind(kind, at)))
}

/**
 * Values near one that the document shows: mostly as it is, here and there another number, another choice, a field more.
 * Drawn from the schema alone, hardly a bearing could be made.
 */
export function near(value: unknown, schema: Schema): fc.Arbitrary<unknown> {
  const at = variantOf(schema, value)
  const same = { arbitrary: fc.constant(value), weight: MOSTLY }
  const other = { arbitrary: valid(at), weight: 1 }
  if (Array.isArray(value)) return fc.oneof({ arbitrary: nearList(value, at), weight: MOSTLY }, other)
  if (isObject(value)) return nearObject(value, at)
  if (typeof value !== 'number') return fc.oneof(same, other)
  return fc.oneof(same, { arbitrary: scaled(value, at), weight: 3 }, other)
}

function ofKind(kind: string, schema: Schema): fc.Arbitrary<unknown> {
  switch (kind) {
    case 'integer':
      return whole(schema)
    case 'number':
      return number(schema)
    case 'string':
      return text(schema)
    case 'boolean':
      return fc.boolean()
    case 'null':
      return fc.constant(null)
    case 'array':
      return list(schema)
    case 'object':
      return object(schema)
    default:
      throw new Error(`the fuzz knows no type ${kind}`)
  }
}

function limits({ minimum, exclusiveMinimum, maximum, exclusiveMaximum }: Schema) {
  const least = minimum ?? exclusiveMinimum ?? -LARGEST
  const most = maximum ?? exclusiveMaximum ?? Math.max(LARGEST, least + LARGEST)
  return { least, most, inside: (value: number) => value !== exclusiveMinimum && value !== exclusiveMaximum }
}

function whole(schema: Schema): fc.Arbitrary<number> {
  const { least, most, inside } = limits(schema)
  const [min, max] = [Math.ceil(least), Math.floor(most)]
  const small = fc.integer({ min, max: Math.min(max, min + 20) })
  return fc.oneof(small, fc.integer({ min, max }), fc.constantFrom(min, max)).filter(inside)
}

function number(schema: Schema): fc.Arbitrary<number> {
  const { least, most, inside } = limits(schema)
  const within = (value: number) => Math.min(most, Math.max(least, value))
  const step = schema.multipleOf
  if (step !== undefined) return whole({ minimum: least / step, maximum: most / step }).map((count) => count * step)
  // Sizes as a maker has them: some of every order, most between a tenth and a hundred, many of them round.
  const size = fc.double({ min: Math.log(1e-3), max: Math.log(Math.max(1e-3, most)), noNaN: true }).map(Math.exp)
  const usual = fc.integer({ min: 1, max: 1600 }).map((sixteenths) => sixteenths / 16)
  const any = fc.double({ min: least, max: most, noNaN: true })
  return fc.oneof(usual, size, any, fc.constantFrom(least, most)).map(within).filter(inside)
}

/** The forms in which a length is written as text; whether its size is allowed is left to chance. */
const LENGTH_TEXT = fc.oneof(
  fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 999 })).map(([a, b]) => `${a}.${b}`),
  fc.tuple(fc.integer({ min: 1, max: 200 }), fc.constantFrom(2, 3, 8, 16, 32, 64)).map(([a, b]) => `${a}/${b}`),
  fc
    .tuple(fc.integer({ min: 0, max: 99 }), fc.constantFrom('1/2', '3/16', '63/64', '⅝'), fc.constantFrom(' ', '-'))
    .map(([inches, fraction, between]) => `${inches}${between}${fraction}`),
  fc
    .tuple(fc.integer({ min: 1, max: 400 }), fc.constantFrom(' mm', 'mm', ' in', '"', '″'))
    .map(([a, unit]) => a + unit),
)

function text({ format, pattern, minLength = 0, maxLength = 100 }: Schema): fc.Arbitrary<string> {
  if (format?.endsWith('length') === true) return LENGTH_TEXT
  if (pattern !== undefined) return fc.stringMatching(new RegExp(pattern))
  return fc.string({ unit: 'grapheme', minLength, maxLength })
}

function list({ items = {}, minItems = 0, maxItems = 1_000, uniqueItems = false }: Schema): fc.Arbitrary<unknown> {
  const of = (maxLength: number) => {
    const bounds = { minLength: minItems, maxLength: Math.max(minItems, maxLength) }
    return uniqueItems ? fc.uniqueArray(valid(items), bounds) : fc.array(valid(items), bounds)
  }
  return fc.oneof(
    { arbitrary: of(Math.min(maxItems, minItems + USUAL_LENGTH)), weight: 9 },
    { arbitrary: of(maxItems), weight: 1 },
  )
}

function object(schema: Schema): fc.Arbitrary<Record<string, unknown>> {
  const { properties = {}, required = [], additionalProperties } = schema
  const model = Object.fromEntries(Object.entries(properties).map(([name, inner]) => [name, valid(inner)]))
  const fields = fc.record(model, { requiredKeys: [...required].filter((name) => name in model) })
  const more =
    typeof additionalProperties === 'object'
      ? fc.dictionary(fc.string({ minLength: 1, maxLength: 20 }), valid(additionalProperties), { maxKeys: 4 })
      : fc.constant({})
  return fc.tuple(fields, more).map(([known, unknown]) => withoutConflicts({ ...unknown, ...known }, schema))
}

function nearObject(value: Readonly<Record<string, unknown>>, schema: Schema): fc.Arbitrary<unknown> {
  const model = Object.fromEntries(
    Object.entries(schema.properties ?? {}).map(([name, inner]) => {
      const given = value[name]
      if (name in value) return [name, near(given, inner)]
      const absent = { arbitrary: fc.constant(undefined), weight: MOSTLY }
      return [name, fc.oneof(absent, { arbitrary: valid(inner), weight: isChoice(inner) ? CHOICES : 1 })]
    }),
  )
  return fc.record(model).map((fields) => {
    const present = Object.entries(fields).filter(([, inner]) => inner !== undefined)
    return withoutConflicts({ ...value, ...Object.fromEntries(present) }, schema)
  })
}

function nearList(value: readonly unknown[], { items = {}, minItems = 0 }: Schema): fc.Arbitrary<unknown> {
  // Of twenty places one is nearly always changed: half of the lists are as they are, or no lot of balls would be left.
  const each = fc.oneof(fc.constant([...value]), fc.tuple(...value.map((item) => near(item, items))))
  return fc.tuple(each, fc.nat({ max: 3 * value.length })).map(([all, cut]) => all.slice(0, Math.max(minItems, cut)))
}

function scaled(value: number, { type, minimum = -LARGEST, maximum = LARGEST }: Schema): fc.Arbitrary<number> {
  return fc.double({ min: 0.5, max: 2, noNaN: true }).map((factor) => {
    const moved = type === 'integer' ? Math.round(value * factor) : value * factor
    return Math.min(maximum, Math.max(minimum, moved))
  })
}

/** Of fields that exclude one another, the last that is there. */
export function withoutConflicts(fields: Record<string, unknown>, schema: Schema): Record<string, unknown> {
  const dropped = new Set(
    (schema['x-exclusive'] ?? []).flatMap((group) => group.filter((name) => name in fields).slice(0, -1)),
  )
  return Object.fromEntries(Object.entries(fields).filter(([name]) => !dropped.has(name)))
}

/** The schema itself, or of its variants the one that a value is of. */
export function variantOf(schema: Schema, value: unknown): Schema {
  const at = schemaAt(schema)
  const variant = (at.oneOf ?? at.anyOf)?.find((each) => isTagged(value, schemaAt(each)))
  return variant === undefined ? at : variantOf(variant, value)
}

/** Whether a value is the variant that a schema describes: the fields that can have one value only have it, or may lack it. */
function isTagged(value: unknown, { properties = {}, required = [] }: Schema): boolean {
  if (!isObject(value)) return false
  const tags = Object.entries(properties).flatMap(([name, inner]) => {
    const [tag, ...others] = 'const' in inner ? [inner.const] : (inner.enum ?? [])
    return tag === undefined || others.length > 0 ? [] : [{ name, tag }]
  })
  return (
    tags.length > 0 && tags.every(({ name, tag }) => value[name] === tag || !(name in value || required.includes(name)))
  )
}

export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
