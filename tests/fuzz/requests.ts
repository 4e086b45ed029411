import fc from 'fast-check'
import { anyLetter } from '#tests/support/any-letter.ts'
import { type Bulk, bulkBodies, bulkQueries } from './bulk.ts'
import { mediaTypesOf, OPERATIONS, type Operation, type Parameter, schemaAt } from './document.ts'
import { breaches } from './schemas.ts'
import { spoiled } from './spoil.ts'
import { isObject, near, valid } from './valid.ts'

const ALL_EXAMPLES = OPERATIONS.filter(({ method }) => method === 'POST').flatMap(({ examples }) => examples)

/** A request as it is sent, and the input in it where one can be made out: what pointers point into. */
export type FuzzRequest = {
  readonly method: 'GET' | 'HEAD' | 'POST'
  readonly target: string
  readonly headers: Readonly<Record<string, string>>
  readonly body?: string
  readonly input?: unknown
}

/** As large as the service takes them, less what stands round a query. */
const LARGEST_BODY = 131_000
const LARGEST_QUERY = 8_000

type Names = { [name: string]: unknown }
type Query = readonly (readonly [name: string, value: string])[]

/** Requests to an operation: valid, nearly valid, and hostile ones, from what the document says of it. */
export function requestsTo(operation: Operation): fc.Arbitrary<FuzzRequest> {
  const path = pathTo(operation)
  const headers = acceptable(operation)
  return operation.method === 'POST' ? posts(operation, path, headers) : gets(operation, path, headers)
}

type Headers = fc.Arbitrary<Readonly<Record<string, string>>>

function posts(operation: Operation, path: fc.Arbitrary<string>, headers: Headers): fc.Arbitrary<FuzzRequest> {
  const { body: schema = {} } = operation
  const body = fc.oneof(
    { arbitrary: valid(schema), weight: 1 },
    ...shown(operation).map((arbitrary) => ({ arbitrary, weight: 2 })),
  )
  const type = { 'content-type': 'application/json' }
  const sent = fc.oneof(
    { arbitrary: body.map(asJson), weight: 18 },
    { arbitrary: spoiled(body).map(asJson), weight: 15 },
    { arbitrary: fc.jsonValue().map(asJson), weight: 3 },
    { arbitrary: hostileText(body), weight: 3 },
    {
      arbitrary: drawn([...bulkBodies(schema, LARGEST_BODY)]).map((text) => ({ body: text, ...read(text) })),
      weight: 1,
    },
  )
  const usual = fc
    .tuple(path, headers, sent)
    .map(([target, own, what]): FuzzRequest => ({ method: 'POST', target, headers: { ...type, ...own }, ...what }))
  const mislabelled = fc
    .tuple(path, fc.constantFrom('text/plain', 'application/xml', '', 'application/json; charset=latin1'), body)
    .map(
      ([target, mistaken, value]): FuzzRequest => ({
        method: 'POST',
        target,
        headers: { 'content-type': mistaken },
        ...asJson(value),
      }),
    )
  return fc.oneof({ arbitrary: usual, weight: 24 }, { arbitrary: mislabelled, weight: 1 })
}

function gets(operation: Operation, path: fc.Arbitrary<string>, headers: Headers): fc.Arbitrary<FuzzRequest> {
  const names = operation.parameters.filter((parameter) => parameter.in === 'query').map(({ name }) => name)
  const right = fc.oneof(
    { arbitrary: validQuery(operation), weight: 1 },
    ...shown(operation).map((arbitrary) => ({ arbitrary: arbitrary.map((input) => queryOf(input, names)), weight: 2 })),
  )
  const bulk = [...bulkQueries(names, LARGEST_QUERY)]
  const named = fc.oneof(
    { arbitrary: right, weight: 6 },
    { arbitrary: hostileQuery(right), weight: 6 },
    ...(bulk.length === 0 ? [] : [{ arbitrary: drawn(bulk).map((text) => text.split('&').map(asPair)), weight: 1 }]),
  )
  const method = fc.oneof({ arbitrary: fc.constant('GET' as const), weight: 9 }, fc.constant('HEAD' as const))
  return fc.tuple(method, path, named, headers).map(([verb, at, query, own]): FuzzRequest => {
    const text = query.map(([name, value]) => `${name}=${value}`).join('&')
    return { method: verb, target: text === '' ? at : `${at}?${text}`, headers: own, input: inputOf(query) }
  })
}

/** One of those that are wrong in bulk. */
function drawn(bulk: readonly Bulk[]): fc.Arbitrary<string> {
  return fc.nat({ max: bulk.length - 1 }).map((index) => bulk[index]?.text() ?? '')
}

function asPair(text: string): Query[number] {
  const [name = '', value = ''] = text.split('=', 2)
  return [name, value]
}

/** Inputs near those that the document shows: for the operation itself, or else for others that take the like. */
function shown({ body = {}, examples }: Operation): readonly fc.Arbitrary<unknown>[] {
  const fitting =
    examples.length > 0 ? examples : ALL_EXAMPLES.filter((example) => breaches(body, example).length === 0)
  const asItIs = (example: unknown) => ({ arbitrary: fc.constant(example), weight: 1 })
  return fitting.map((example) => fc.oneof(asItIs(example), { arbitrary: near(example, body), weight: 4 }))
}

/** The path with its parameters filled in, mostly as they may be. */
function pathTo({ path, parameters }: Operation): fc.Arbitrary<string> {
  const inPath = parameters.filter((parameter) => parameter.in === 'path')
  const value = ({ schema }: Parameter) =>
    fc.oneof({ arbitrary: valid(schema).map(String), weight: 15 }, fc.string({ minLength: 1, maxLength: 20 }))
  return fc
    .tuple(...inPath.map(value))
    .map((values) =>
      values.reduce(
        (at, text, index) => at.replace(`{${inPath[index]?.name}}`, encodeURIComponent(text.toWellFormed())),
        path,
      ),
    )
}

/** Which answer is wanted: any that there is, one that there is not, or nothing said. */
function acceptable(operation: Operation): Headers {
  const accept = [...mediaTypesOf(operation), '*/*', 'text/*;q=0.5, application/json;q=0.1', 'application/json']
  return fc.oneof(
    { arbitrary: fc.constant({}), weight: 4 },
    { arbitrary: fc.constantFrom(...accept).map((type) => ({ accept: type })), weight: 4 },
    { arbitrary: fc.constantFrom('image/x-nothing', ';;,', '').map((type) => ({ accept: type })), weight: 1 },
    { arbitrary: fc.constant({ 'if-none-match': '*' }), weight: 1 },
  )
}

function asJson(value: unknown): Pick<FuzzRequest, 'body' | 'input'> {
  const body = JSON.stringify(value)
  // What arrives is what JSON makes of it: no undefined, no NaN, no −0.
  return body === undefined ? {} : { body, input: JSON.parse(body) }
}

/** Texts that are no JSON, or hardly; only in those that can be read can anything be pointed to. */
function hostileText(body: fc.Arbitrary<unknown>): fc.Arbitrary<Pick<FuzzRequest, 'body' | 'input'>> {
  const texts = body.map((value) => JSON.stringify(value))
  const deep = (open: string, close: string) => `${open.repeat(5_000)}1${close.repeat(5_000)}`
  return fc
    .oneof(
      fc.tuple(texts, fc.nat()).map(([text, cut]) => text.slice(0, cut % text.length)),
      fc.tuple(texts, fc.nat(), fc.string({ unit: anyLetter })).map(([text, at, more]) => {
        const place = at % text.length
        return text.slice(0, place) + more.toWellFormed() + text.slice(place)
      }),
      texts.map((text) => text.replace('{', '{"__proto__":{"units":"mm"},')),
      texts.map((text) => text.replace('{', '{"units":"in","units":"mm",')),
      texts.map((text) => text.replace(/\d+(\.\d+)?/, '1e999')),
      texts.map((text) => `\uFEFF${text}`),
      fc.constantFrom(
        '',
        'null',
        deep('[', ']'),
        deep('{"design":', '}'),
        `[${'0,'.repeat(30_000)}0]`,
        `"${'x'.repeat(60_000)}"`,
      ),
    )
    .map((text) => ({ body: text, ...read(text) }))
}

/** A mark of the byte order may stand before a text (RFC 8259 §8.1 lets it be ignored). */
function read(text: string): Pick<FuzzRequest, 'input'> {
  try {
    return { input: JSON.parse(text.replace(/^\uFEFF/, '')) }
  } catch {
    return {}
  }
}

function validQuery({ parameters }: Operation): fc.Arbitrary<Query> {
  const inQuery = parameters.filter((parameter) => parameter.in === 'query')
  const one = ({ name, required, schema }: Parameter): fc.Arbitrary<Query> => {
    const written = valid(schemaAt(schema)).map((value): Query => [[name, encodeURIComponent(asQueryText(value))]])
    return required === true ? written : fc.oneof({ arbitrary: fc.constant<Query>([]), weight: 3 }, written)
  }
  return fc.tuple(...inQuery.map(one)).map((pairs) => pairs.flat())
}

/** The query that stands for an input, as far as a query can say it. */
function queryOf(input: unknown, names: readonly string[]): Query {
  return names.flatMap((name): Query => {
    let at = input
    for (const step of name.split('.')) at = isObject(at) ? at[step] : undefined
    return at === undefined ? [] : [[name, encodeURIComponent(asQueryText(at))]]
  })
}

const asQueryText = (value: unknown): string =>
  Array.isArray(value) ? value.map(asQueryText).join(',') : String(value).toWellFormed()

function hostileQuery(query: fc.Arbitrary<Query>): fc.Arbitrary<Query> {
  const name = fc.oneof(
    fc.constantFrom('__proto__', 'constructor.prototype', 'balls', 'balls.', '.', 'balls.count.x', 'a%5Bb%5D', '%', ''),
    fc.string({ maxLength: 12 }).map(encodeURIComponent),
  )
  const value = fc.oneof(
    fc.constantFrom('', '1', 'NaN', '%', '%00', '%ff', '+', ',', ',,,', '1,2', 'null', 'true', '1'.repeat(50), '-0'),
    fc.string({ unit: anyLetter, maxLength: 30 }).map((text) => encodeURIComponent(text.toWellFormed())),
  )
  const blow = fc.record({ at: fc.nat(), kind: fc.constantFrom('value', 'drop', 'twice', 'more'), name, value })
  return fc.tuple(query, fc.array(blow, { minLength: 1, maxLength: 3 })).map(([pairs, blows]) => {
    let struck = pairs
    for (const { at, kind, name, value } of blows) {
      const index = at % Math.max(1, struck.length)
      const pair = struck[index]
      if (pair === undefined || kind === 'more') struck = [...struck, [name, value]]
      else if (kind === 'drop') struck = struck.toSpliced(index, 1)
      else if (kind === 'twice') struck = [...struck, pair]
      else struck = struck.with(index, [pair[0], value])
    }
    return struck
  })
}

/** What a query stands for: names are ways, joined by dots; values may be lists, by commas. */
function inputOf(query: Query): unknown {
  const input: Names = Object.create(null)
  for (const [name, value] of query) {
    const steps = decoded(name).split('.')
    let at = input
    for (const step of steps.slice(0, -1)) {
      const known = at[step]
      const inner: Names = isObject(known) ? known : Object.create(null)
      at[step] = inner
      at = inner
    }
    const last = steps.at(-1) ?? ''
    if (!isObject(at[last])) at[last] = decoded(value).split(',')
  }
  return input
}

/** As the service's own reader does it: `+` is a blank, and a piece that cannot be decoded stays as it is. */
function decoded(text: string): string {
  const blanks = text.replaceAll('+', ' ')
  try {
    return decodeURIComponent(blanks)
  } catch {
    return blanks
  }
}
