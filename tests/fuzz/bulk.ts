import { kindsOf, type Schema, schemaAt } from './document.ts'

/** A body or a query that is wrong in a thousand places at once, as large as it may be: how it is wrong, and its text. */
export type Bulk = { readonly what: string; readonly text: () => string }

/** A place in a body: the way there, and the text of a body with another text at that place. */
type Place = {
  readonly path: string
  readonly schema: Schema
  readonly around: (inner: string) => string
  /** How often the inner text comes in the whole, which says how long it may be. */
  readonly times: number
}

/** What stands in a list where something else should. */
const ENTRIES = ['{}', '[]', '0', '-1', '1e999', '""', '"x"', '"1/0"', '"16 mm"', 'null', 'true', '{"a":0}', '[[]]']
/** Pieces of texts: of one letter, of fractions, of signs that are spelled in more than one way, of halves of characters. */
const PIECES = ['x', '1', '1/', '1 1/', ' ', '½', 'e\u0301', '\\ud800', '\\u202e', '\\"', '~1/~0', '0.0']
/** How a name goes that is not known: like any other, like a number, like one that is known, with signs to be escaped. */
const NAMES: readonly ((known: string, index: number) => string)[] = [
  (_known, index) => `n${index.toString(36)}`,
  (_known, index) => String(index),
  (known, index) => `${known}${index.toString(36)}`,
  (_known, index) => `~/${index.toString(36)}`,
  () => '',
]

/**
 * Bodies of about so many bytes that are wrong in bulk: at every list, map, union, number and text of a schema, alone and
 * in as many entries as the lists on the way to it may have. What is not on the way is missing.
 *
 * @param seen what has been wrong already, as often: the same is not wrong twice
 */
export function* bulkBodies(schema: Schema, bytes: number, seen = new Set<string>()): Generator<Bulk> {
  for (const place of places({ path: '', schema, around: (inner) => inner, times: 1 })) {
    const room = Math.floor((bytes - place.around('{}').length) / place.times)
    if (room < 2) continue
    const at = schemaAt(place.schema)
    const key = `${place.times} ${JSON.stringify(at)}`
    if (seen.has(key)) continue
    seen.add(key)
    for (const [what, inner] of fillings(at, room))
      yield { what: `${place.path || 'the whole'} × ${place.times}: ${what}`, text: () => place.around(inner()) }
  }
  const half = bytes / 2 - 10
  yield { what: 'lists in lists', text: () => '['.repeat(half) + ']'.repeat(half) }
  yield { what: 'objects in objects', text: () => `${'{"a":'.repeat(bytes / 6 - 1)}0${'}'.repeat(bytes / 6 - 1)}` }
  yield { what: 'lists in lists without an end', text: () => '['.repeat(bytes) }
  const ownName = (index: number) => `{"n${index.toString(36)}":0}`
  yield { what: 'a list of objects with a name of their own each', text: () => listOf(ownName, bytes) }
  yield { what: 'a list without an end', text: () => `${list('{}', bytes - 1)},` }
  yield { what: 'a forbidden name at the end', text: () => `{"x":${list('{}', bytes - 30)},"__proto__":0}` }
}

function* places(place: Place): Generator<Place> {
  yield place
  const { path, around, times } = place
  const at = schemaAt(place.schema)
  for (const variant of at.oneOf ?? at.anyOf ?? []) {
    const [named] = Object.entries(schemaAt(variant).properties ?? {}).filter(([, tag]) => 'const' in schemaAt(tag))
    const tagged = named === undefined ? '' : `${JSON.stringify(named[0])}:${JSON.stringify(schemaAt(named[1]).const)},`
    const inVariant = (inner: string) => around(inner.replace(/^\{/, `{${tagged}`).replace(/,\}$/, '}'))
    if (schemaAt(variant).properties !== undefined)
      yield* places({ path: `${path}(${tagged})`, schema: variant, around: inVariant, times })
  }
  for (const [name, property] of Object.entries(at.properties ?? {})) {
    const inProperty = (inner: string) => around(`{${JSON.stringify(name)}:${inner}}`)
    yield* places({ path: `${path}/${name}`, schema: property, around: inProperty, times })
  }
  if (at.items === undefined) return
  const { items, maxItems = 1 } = at
  yield* places({ path: `${path}/0`, schema: items, around: (inner) => around(`[${inner}]`), times })
  const inEach = (inner: string) => around(`[${Array(maxItems).fill(inner).join(',')}]`)
  yield* places({ path: `${path}/*`, schema: items, around: inEach, times: times * maxItems })
}

/** Texts of at most so many bytes to stand at a place, with what each of them is. */
function* fillings(at: Schema, room: number): Generator<readonly [what: string, json: () => string]> {
  const kinds = kindsOf(at)
  const isUnion = (at.oneOf ?? at.anyOf) !== undefined
  if (kinds.includes('array') || isUnion)
    for (const entry of [...ENTRIES, ...tags(at.items ?? {})]) yield [`a list of ${entry}`, () => list(entry, room)]
  if (kinds.includes('object') || isUnion) {
    const known = Object.keys(at.properties ?? {})
    for (const [index, name] of NAMES.entries()) yield [`names, ${index}`, () => object(known, name, room)]
    for (const name of known.slice(0, 2)) yield [`"${name}" again and again`, () => object([name], () => name, room)]
    yield ['a list', () => list('{}', room)]
  }
  if (kinds.includes('number') || kinds.includes('integer')) {
    yield ['digits', () => '1'.repeat(room)]
    yield ['digits behind a point', () => `0.${'0'.repeat(Math.max(0, room - 3))}1`]
    yield ['digits of an exponent', () => `1e${'9'.repeat(Math.max(1, room - 2))}`]
  }
  if (kinds.includes('string'))
    for (const piece of PIECES) {
      const times = Math.floor((room - 2) / Buffer.byteLength(piece))
      if (times > 0) yield [`a text of ${piece}`, () => `"${piece.repeat(times)}"`]
    }
}

/** An entry for each variant that a list may hold, with its tag and nothing else. */
function tags(items: Schema): readonly string[] {
  const { oneOf = [] } = schemaAt(items)
  return oneOf.flatMap((variant) =>
    Object.entries(schemaAt(variant).properties ?? {}).flatMap(([name, tag]) =>
      'const' in schemaAt(tag) ? [JSON.stringify({ [name]: schemaAt(tag).const })] : [],
    ),
  )
}

function listOf(entry: (index: number) => string, room: number): string {
  const entries: string[] = []
  for (let length = 1; length < room - 20; length += (entries.at(-1) ?? '').length + 1)
    entries.push(entry(entries.length))
  return `[${entries.join(',')}]`
}

function list(entry: string, room: number): string {
  const times = Math.floor((room - 1) / (entry.length + 1))
  return `[${Array(Math.max(0, times)).fill(entry).join(',')}]`
}

function object(known: readonly string[], name: (known: string, index: number) => string, room: number): string {
  const parts: string[] = []
  let length = 2
  for (let index = 0; length < room; index += 1) {
    const part = `${JSON.stringify(name(known[index % known.length] ?? 'k', index))}:0`
    length += part.length + 1
    if (length <= room) parts.push(part)
  }
  return `{${parts.join(',')}}`
}

/** Queries of at most so many characters that are wrong in bulk, without the question mark; none where there are no names. */
export function* bulkQueries(names: readonly string[], room: number): Generator<Bulk> {
  if (names.length === 0) return
  const joined = (part: (index: number) => string): string => {
    let text = part(0)
    for (let index = 1; text.length + part(index).length < room; index += 1) text += `&${part(index)}`
    return text
  }
  const known = (index: number): string => names[index % names.length] ?? 'n'
  yield { what: 'names', text: () => joined((index) => `n${index.toString(36)}=`) }
  yield { what: 'one letter', text: () => joined((index) => `${String.fromCharCode(97 + (index % 26))}=`) }
  yield { what: 'names like known ones', text: () => joined((index) => `${known(index)}${index.toString(36)}=1`) }
  yield { what: 'names below known ones', text: () => joined((index) => `${known(index)}.${index.toString(36)}=1`) }
  yield { what: 'every name, wrong', text: () => joined((index) => `${known(index)}=x`) }
  yield { what: 'dots', text: () => '.'.repeat(room - 1) }
  yield { what: 'dots with letters', text: () => 'a.'.repeat(room / 2 - 1) }
  yield { what: 'escapes', text: () => '%ff'.repeat(room / 3 - 1) }
  for (const name of names) {
    const rest = room - name.length - 2
    yield { what: `${name}, again and again`, text: () => joined(() => `${name}=1`) }
    yield { what: `${name}, commas`, text: () => `${name}=${','.repeat(rest)}` }
    yield { what: `${name}, entries`, text: () => `${name}=${'x,'.repeat(rest / 2)}` }
    yield { what: `${name}, digits`, text: () => `${name}=${'1'.repeat(rest)}` }
  }
}
