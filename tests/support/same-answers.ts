import { readdirSync, readFileSync } from 'node:fs'
import { request } from 'undici'
import { expect } from 'vitest'
import { ask } from './ask.ts'
import { injectionOf } from './operations.ts'

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

async function answerOf(address: string, asked: Parameters<typeof request>[1] = {}) {
  const { statusCode, headers, body } = await request(address, asked)
  const bytes = Buffer.from(await body.arrayBuffer())
  return { status: statusCode, headers: HEADERS.map((name) => `${name}: ${headers[name]}`), bytes }
}

/** Asks every example and every kind of file of two services, by their addresses, and holds their answers to be the same bytes. */
export async function expectSameAnswers(shipped: string, sources: string): Promise<void> {
  const document = JSON.parse((await ask(`${shipped}/openapi.json`)).text)
  const examples = readdirSync('openapi/examples').map((file) => {
    const { request: input } = JSON.parse(readFileSync(`openapi/examples/${file}`, 'utf8'))
    const { method, url, payload, query } = injectionOf(document, file, input)
    if (payload === undefined) return { url: `${url}?${new URLSearchParams(query)}`, asked: { method } }
    return { url, asked: { method, body: JSON.stringify(payload), headers: { 'content-type': 'application/json' } } }
  })
  expect(examples.length).toBeGreaterThan(40)
  for (const { url, asked } of [...examples, ...ADDRESSES.map((address) => ({ url: address, asked: {} }))]) {
    const [one, other] = [await answerOf(sources + url, asked), await answerOf(shipped + url, asked)]
    expect(other.status, url).toBe(one.status)
    expect(other.headers, url).toEqual(one.headers)
    expect(other.bytes.equals(one.bytes), url).toBe(true)
  }
}
