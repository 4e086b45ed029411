import { fail, ok, type Result } from '#shared/result.ts'
import { allowed } from './allowed.ts'
import { step } from './faults.ts'
import { given } from './given.ts'
import { notKnown } from './nearest-name.ts'
import type { Fault } from './problem.ts'
import type { QueryName } from './query-names.ts'
import { type JsonSchema, resolved, type SchemaById, typesOf } from './schema.ts'

/** A number as JSON writes it, without an exponent: `Number` also takes blanks, "0x10", "1e3" and "Infinity". */
const NUMBER = /^-?(0|[1-9]\d*)(\.\d+)?$/

/** Longest number that is looked at; a double holds 17 digits. */
const LONGEST_NUMBER = 40

type Body = { [name: string]: unknown }
/** The body that a query stands for, without what could not be read, and what that was. */
type ReadQuery = { readonly body: Body; readonly faults: readonly Fault[] }

/**
 * A query as the body that it stands for, not yet held to its schema. Only the names of the schema are followed, so a
 * query cannot name anything else (`__proto__`, or `a` beside `a.b`), and a name counts once.
 */
export function bodyOf(query: unknown, names: readonly QueryName[], byId: SchemaById): ReadQuery {
  const byName = new Map(names.map((name) => [name.name, name]))
  const body: Body = {}
  const faults: Fault[] = []
  for (const [name, text] of Object.entries(Object(query))) {
    const known = byName.get(name)
    if (known === undefined) faults.push({ path: pointer(name.split('.')), message: unknownName(name, names) })
    else if (typeof text !== 'string') faults.push({ path: pointer(known.path), message: `"${name}" is given twice` })
    else {
      const read = readValue(text, known.value, byId)
      if (read.ok) put(body, known.path, read.value)
      else faults.push(...read.error.map(({ path, message }) => ({ path: pointer(known.path) + path, message })))
    }
  }
  return { body, faults }
}

const pointer = (path: readonly string[]): string => path.map(step).join('')

function unknownName(name: string, names: readonly QueryName[]): string {
  const all = names.map((known) => known.name)
  const inside = all.filter((known) => known.startsWith(`${name}.`))
  return inside.length > 0 ? `"${name}" has several parts: give ${inside.join(', ')}` : notKnown(name, all)
}

/** The value that a text stands for, by what the schema has at its place. */
function readValue(text: string, schema: JsonSchema, byId: SchemaById): Result<unknown, readonly Fault[]> {
  const types = typesOf(schema)
  if (types.includes('array')) return readList(text, resolved(schema.items ?? {}, byId), byId)
  if (text === 'null' && types.includes('null')) return ok(null)
  // A length, given as a number or as a text, stays a text: it is read as any text that stands for a length.
  if (types.includes('string')) return ok(text)
  if (types.includes('boolean') && (text === 'true' || text === 'false')) return ok(text === 'true')
  const isNumeric = types.includes('number') || types.includes('integer')
  if (isNumeric && text.length <= LONGEST_NUMBER && NUMBER.test(text)) return ok(Number(text))
  return fail([{ path: '', message: `must be ${allowed(schema, byId)}; ${given(text)} was given` }])
}

function readList(text: string, items: JsonSchema, byId: SchemaById): Result<unknown[], readonly Fault[]> {
  const values: unknown[] = []
  const faults: Fault[] = []
  for (const [index, part] of text === '' ? [] : text.split(',').entries()) {
    const read = readValue(part.trim(), items, byId)
    if (read.ok) values.push(read.value)
    else faults.push(...read.error.map(({ path, message }) => ({ path: `/${index}${path}`, message })))
  }
  return faults.length === 0 ? ok(values) : fail(faults)
}

function put(body: Body, path: readonly string[], value: unknown): void {
  const [name = '', ...rest] = path
  if (rest.length === 0) {
    body[name] = value
    return
  }
  const inner: Body = isBody(body[name]) ? body[name] : {}
  body[name] = inner
  put(inner, rest, value)
}

function isBody(value: unknown): value is Body {
  return typeof value === 'object' && value !== null
}
