import { execFileSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { request } from 'undici'
import { beforeAll, expect, test } from 'vitest'
import { ask } from './support/ask.ts'
import { injectionOf } from './support/operations.ts'
import { ended, listening, type Started, start } from './support/started-process.ts'

/* The bundled program, as the container starts it: what is shipped is held to what is tested, byte by byte. */

const BEARING = 'units=mm&balls.count=12&balls.diameter=16&bore=12'

/** What no example asks for: pages, drawings, what a thread draws, what is read from a file. */
const ADDRESSES = [
  ...['/', '/service-worker.js', '/openapi.json', '/docs', '/embed/racewright-1.js', `/embed/bearing?${BEARING}`],
  ...['assembly.svg', 'assembly.pdf', 'assembly.html', 'templates.pdf', 'gauges.dxf'].map(
    (file) => `/v1/drawings/${file}?${BEARING}`,
  ),
  ...['html', 'pdf'].map((format) => `/v1/job-sheet?${BEARING}&format=${format}`),
  '/no/such/path',
]

/** Of the headers, those that belong to the answer and not to the moment. */
const HEADERS = ['content-type', 'etag', 'cache-control', 'content-security-policy', 'x-engine', 'vary']

beforeAll(() => {
  execFileSync('npm', ['run', 'build'], { stdio: 'ignore' })
}, 120_000)

async function serving(file: string): Promise<{ readonly started: Started; readonly at: string }> {
  const started = await start({}, ['node', file])
  await listening(started)
  return { started, at: `http://127.0.0.1:${started.port}` }
}

async function answerOf(address: string, asked: Parameters<typeof request>[1] = {}) {
  const { statusCode, headers, body } = await request(address, asked)
  const bytes = Buffer.from(await body.arrayBuffer())
  return { status: statusCode, headers: HEADERS.map((name) => `${name}: ${headers[name]}`), bytes }
}

test('answers every example and every kind of file as its sources do, and stops when asked to', async () => {
  const [sources, bundle] = [await serving('src/server.ts'), await serving('dist/server/server.cjs')]
  const document = JSON.parse((await ask(`${bundle.at}/openapi.json`)).text)
  const examples = readdirSync('openapi/examples').map((file) => {
    const { request: input } = JSON.parse(readFileSync(`openapi/examples/${file}`, 'utf8'))
    const { method, url, payload, query } = injectionOf(document, file, input)
    if (payload === undefined) return { url: `${url}?${new URLSearchParams(query)}`, asked: { method } }
    return { url, asked: { method, body: JSON.stringify(payload), headers: { 'content-type': 'application/json' } } }
  })
  expect(examples.length).toBeGreaterThan(40)
  for (const { url, asked } of [...examples, ...ADDRESSES.map((address) => ({ url: address, asked: {} }))]) {
    const [one, other] = [await answerOf(sources.at + url, asked), await answerOf(bundle.at + url, asked)]
    expect(other.status, url).toBe(one.status)
    expect(other.headers, url).toEqual(one.headers)
    expect(other.bytes.equals(one.bytes), url).toBe(true)
  }

  bundle.started.process.kill('SIGTERM')
  expect(await ended(bundle.started)).toBe(0)
  expect(bundle.started.said.err).toBe('')
}, 120_000)

test('brings the licences of all packages that it is made of', () => {
  const notice = readFileSync('dist/NOTICE', 'utf8')
  const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8'))
  for (const [name, version] of Object.entries(dependencies)) expect(notice).toContain(`\n\n${name} ${version} (`)
  for (const text of [
    'Bitstream Vera',
    'Apache License',
    'Permission is hereby granted',
    'Redistributions in binary form',
  ])
    expect(notice).toContain(text)
  expect(notice).not.toMatch(/^(vitest|typescript) /m)
})
