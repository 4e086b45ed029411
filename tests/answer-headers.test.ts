import { describe, expect, test } from 'vitest'
import type { Config } from '#src/config.ts'
import { mediaTypesOf, OPERATIONS, type Operation } from '#tests/fuzz/document.ts'
import { type Answered, ask } from './support/ask.ts'
import { sharedApp } from './support/started-app.ts'

/*
 * A law over every address that can be asked by GET: a browser or a cache writes the headers of a 304 over those of the
 * answer it has, so they have to be the same; and HEAD tells what GET would.
 */

/** Headers of one answer alone: its time, its number, its length, its connection, what is left of a limit. */
const OF_ONE_ANSWER = [
  'date',
  'x-request-id',
  'content-length',
  'connection',
  'keep-alive',
  'server-timing',
  'ratelimit',
  'x-ratelimit-remaining',
  'x-ratelimit-reset',
]
/** Headers of content, which a 304 does not have. */
const OF_CONTENT = ['content-type', 'content-encoding', 'transfer-encoding']

const without = (names: readonly string[], { headers }: Answered) =>
  Object.fromEntries(Object.entries(headers).filter(([name]) => !names.includes(name)))

/** The input as a query: names joined by dots, lists by commas. */
function queryOf(input: unknown, names: readonly string[] = []): readonly string[] {
  if (typeof input !== 'object' || input === null || Array.isArray(input))
    return [`${names.join('.')}=${encodeURIComponent(String(input))}`]
  return Object.entries(input).flatMap(([name, inner]) => queryOf(inner, [...names, name]))
}

const BEARING = 'units=mm&balls.count=12&balls.diameter=16&bore=12'

/** Every path that an operation stands for: with each value of each of its parts. */
function pathsOf({ path, parameters }: Operation): readonly string[] {
  return parameters
    .filter((parameter) => parameter.in === 'path')
    .reduce<readonly string[]>(
      (paths, { name, schema }) =>
        paths.flatMap((each) => (schema.enum ?? []).map((value) => each.replace(`{${name}}`, String(value)))),
      [path],
    )
}

type Asked = { readonly operation: string; readonly address: string; readonly accept: string }

/** Inputs of an operation: its first examples, and the least that it takes, in each of the formats that it has. */
function queriesOf({ parameters, examples }: Operation): readonly string[] {
  const has = (wanted: string) => parameters.some(({ name, in: place }) => place === 'query' && name === wanted)
  const least = has('balls.count') ? BEARING : has('units') ? 'units=mm' : ''
  const formats = has('format') ? ['html', 'pdf', 'json'].map((format) => `${least}&format=${format}`) : [least]
  return [...examples.slice(0, 2).map((example) => queryOf(example).join('&')), ...formats]
}

/** Where the address itself says what the answer is, so that what is accepted decides nothing. */
const SAYS_ITS_FORMAT = /\/\w+\.\w+\?|[?&]format=/

/** Each input of an operation, as each of the media types that it answers with; as any and as the first where none decides. */
const askedOf = (operation: Operation): readonly Asked[] =>
  pathsOf(operation).flatMap((path) =>
    queriesOf(operation).flatMap((query) =>
      ['*/*', ...mediaTypesOf(operation).slice(0, SAYS_ITS_FORMAT.test(`${path}?${query}`) ? 1 : undefined)].map(
        (accept) => ({
          operation: operation.operationId,
          address: `${path}?${query}`,
          accept,
        }),
      ),
    ),
  )

const ASKED: readonly Asked[] = [
  ...['/', '/service-worker.js', '/docs', '/docs/', '/embed/racewright-1.js'].map((address) => ({
    operation: address,
    address,
    accept: '*/*',
  })),
  ...OPERATIONS.filter(({ method }) => method === 'GET').flatMap(askedOf),
]

/** What differs from one moment to the next. Everything else depends on the build and the input alone. */
const NOT_KEPT = /^\/(health\/|metrics)/

const ORIGIN = 'https://courses.example'

describe.each<readonly [string, Partial<Config>, Readonly<Record<string, string>>]>([
  ['with the default settings', {}, {}],
  [
    'with a list of origins, compressed',
    { corsOrigin: [ORIGIN], frameAncestors: [ORIGIN], rateLimitPerMinute: 1_000_000 },
    { 'accept-encoding': 'gzip, deflate, br, zstd' },
  ],
])('%s', (_name, config, always) => {
  test('the headers of a 304 are those of its 200, and HEAD has those of GET', async () => {
    const at = await sharedApp({ config })
    const answered = { ok: new Set<string>(), kept: 0, pages: 0 }
    for (const { operation, address, accept } of ASKED) {
      const headers = { ...always, origin: ORIGIN, accept }
      const get = await ask(at + address, { headers })
      const head = await ask(at + address, { headers, method: 'HEAD' })
      expect(head.status, address).toBe(get.status)
      expect(without(OF_ONE_ANSWER, head), `HEAD ${address} as ${accept}`).toEqual(without(OF_ONE_ANSWER, get))
      if (get.status !== 200) continue
      answered.ok.add(operation)
      if (String(get.headers['content-type']).startsWith('text/html')) answered.pages += 1
      if (!NOT_KEPT.test(address)) expect(get.headers['etag'], address).toBeDefined()
      if (get.headers['etag'] === undefined) continue
      const again = await ask(at + address, { headers: { ...headers, 'if-none-match': String(get.headers['etag']) } })
      expect(again.status, address).toBe(304)
      const names = [...OF_ONE_ANSWER, ...OF_CONTENT]
      expect(without(names, again), `304 ${address} as ${accept}`).toEqual(without(names, get))
      answered.kept += 1
    }
    expect([...answered.ok].toSorted()).toEqual([...new Set(ASKED.map(({ operation }) => operation))].toSorted())
    expect(answered.kept).toBeGreaterThan(30)
    expect(answered.pages).toBeGreaterThan(5)
  })
})
