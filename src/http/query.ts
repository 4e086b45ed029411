import { fail, ok, type Result } from '#shared/result.ts'
import { allowed } from './allowed.ts'
import { step } from './faults.ts'
import { notKnown } from './nearest-name.ts'
import type { Fault } from './problem.ts'
import type { QueryName } from './query-names.ts'
import { quote } from './quote.ts'
import { type JsonSchema, resolved, type SchemaNames, typesOf } from './schema.ts'
import { givenTwice, hasParts, mustBe } from './sentences.ts'

/** A number as JSON writes it, without an exponent: `Number` also takes blanks, "0x10", "1e3" and "Infinity". */
const NUMBER = /^-?(0|[1-9]\d*)(\.\d+)?$/

/** Longest number that is looked at; a double holds 17 digits. */
const LONGEST_NUMBER = 40

type Body = { [name: string]: unknown }
/** A fault that is put into words only where it is told: a query has room for thousands. */
type Untold = () => Fault
/** The body that a query stands for, without what could not be read. */
type ReadQuery = {
  readonly body: Body
  readonly faults: readonly Untold[]
  /** Pointers to what could not be read, and to all that it would be in. */
  readonly unread: ReadonlySet<string>
}

/**
 * A query as the body that it stands for, not yet held to its schema. Only the names of the schema are followed, so a
 * query cannot name anything else (`__proto__`, or `a` beside `a.b`), and a name counts once.
 */
export function bodyOf(query: unknown, names: readonly QueryName[], schemaNames: SchemaNames): ReadQuery {
  const byName = new Map(names.map((name) => [name.name, name]))
  const body: Body = {}
  const faults: Untold[] = []
  const unread = new Set<string>()
  const deepest = Math.max(0, ...names.map(({ path }) => path.length))
  const leaveUnread = (path: readonly string[]): void => {
    let at = ''
    for (const part of path.slice(0, deepest)) {
      at += step(part)
      unread.add(at)
    }
  }
  for (const [name, text] of Object.entries(Object(query))) {
    const known = byName.get(name)
    const read =
      known === undefined
        ? fail([() => ({ path: '', message: unknownName(name, names) })])
        : typeof text === 'string'
          ? readValue(text, known.value, schemaNames)
          : fail([() => ({ path: '', message: givenTwice(quote(name)) })])
    const path = known?.path ?? name.split('.')
    if (read.ok) put(body, path, read.value)
    else {
      leaveUnread(path)
      for (const tell of read.error) faults.push(() => below(pointer(path), tell()))
    }
  }
  return { body, faults, unread }
}

const below = (at: string, { path, message }: Fault): Fault => ({ path: at + path, message })

const pointer = (path: readonly string[]): string => path.map(step).join('')

function unknownName(name: string, names: readonly QueryName[]): string {
  const all = names.map((known) => known.name)
  const inside = all.filter((known) => known.startsWith(`${name}.`))
  return inside.length > 0 ? hasParts(quote(name), inside) : notKnown(name, all)
}

/** The value that a text stands for, by what the schema has at its place. */
function readValue(text: string, schema: JsonSchema, names: SchemaNames): Result<unknown, readonly Untold[]> {
  const types = typesOf(schema)
  if (types.includes('array')) return readList(text, resolved(schema.items ?? {}, names.byId), names)
  if (text === 'null' && types.includes('null')) return ok(null)
  // A length, given as a number or as a text, stays a text: it is read as any text that stands for a length.
  if (types.includes('string')) return ok(text)
  if (types.includes('boolean') && (text === 'true' || text === 'false')) return ok(text === 'true')
  const isNumeric = types.includes('number') || types.includes('integer')
  if (isNumeric && text.length <= LONGEST_NUMBER && NUMBER.test(text)) return ok(Number(text))
  return fail([() => ({ path: '', message: mustBe(allowed(schema, names), quote(text)) })])
}

function readList(text: string, items: JsonSchema, names: SchemaNames): Result<unknown[], readonly Untold[]> {
  const values: unknown[] = []
  const faults: Untold[] = []
  for (const [index, part] of text === '' ? [] : text.split(',').entries()) {
    const read = readValue(part.trim(), items, names)
    if (read.ok) values.push(read.value)
    else for (const tell of read.error) faults.push(() => below(`/${index}`, tell()))
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
