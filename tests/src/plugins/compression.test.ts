import { brotliDecompressSync, gunzipSync, zstdDecompressSync } from 'node:zlib'
import { request } from 'undici'
import { describe, expect, test } from 'vitest'
import { sharedApp } from '#tests/support/started-app.ts'

const BEARING = 'units=mm&balls.count=12&balls.diameter=16&bore=12'
const DECODE = { br: brotliDecompressSync, zstd: zstdDecompressSync, gzip: gunzipSync } as const

async function bytesAt(address: string, headers: Readonly<Record<string, string>>, method: 'GET' | 'HEAD' = 'GET') {
  const answer = await request(address, { method, headers: { ...headers } })
  const bytes = Buffer.from(await answer.body.arrayBuffer())
  return { status: answer.statusCode, headers: answer.headers, bytes }
}

/** Texts of every kind: computed, constant, of every media type. */
const TEXTS = [
  `/v1/design?${BEARING}`,
  `/v1/drawings/assembly.svg?${BEARING}`,
  `/v1/drawings/gauges.dxf?${BEARING}`,
  `/v1/drawings/assembly.html?${BEARING}`,
  '/v1/sources',
  '/openapi.json',
  '/',
  '/service-worker.js',
  '/docs',
]

test('a long text comes in the coding that the caller accepts, and is the same text', async () => {
  const at = await sharedApp()
  for (const path of TEXTS) {
    const plain = await bytesAt(at + path, {})
    expect(plain.headers, path).not.toHaveProperty('content-encoding')
    const tags = new Set([plain.headers['etag']])
    for (const [coding, decode] of Object.entries(DECODE)) {
      const coded = await bytesAt(at + path, { 'accept-encoding': coding })
      expect(coded.headers, path).toMatchObject({
        'content-encoding': coding,
        'content-type': plain.headers['content-type'],
        'content-length': String(coded.bytes.length),
        vary: plain.headers['vary'],
      })
      expect(coded.headers['vary']).toMatch(/\bAccept-Encoding$/)
      expect(coded.bytes.length, path).toBeLessThan(plain.bytes.length)
      expect(decode(coded.bytes).equals(plain.bytes), `${path} as ${coding}`).toBe(true)
      expect((await bytesAt(at + path, { 'accept-encoding': coding })).bytes.equals(coded.bytes)).toBe(true)
      const tag = String(coded.headers['etag'])
      expect((await bytesAt(at + path, { 'accept-encoding': coding, 'if-none-match': tag })).status).toBe(304)
      tags.add(tag)
    }
    expect(tags.size, path).toBe(4)
  }
})

describe('Accept-Encoding', () => {
  test.each([
    ['gzip, deflate, br, zstd', 'zstd'],
    ['gzip, deflate, br', 'br'],
    ['gzip;q=0.1', 'gzip'],
    ['GZIP', 'gzip'],
    ['*', 'zstd'],
    ['zstd;q=0, *', 'br'],
    ['gzip;q=0, br;q=0', undefined],
    ['*;q=0', undefined],
    ['identity', undefined],
    ['identity, gzip;q=0.5', undefined],
    ['deflate, compress', undefined],
    [';;,=,q', undefined],
    ['', undefined],
  ])('"%s" gets %s', async (accepted, coding) => {
    const at = await sharedApp()
    const answer = await bytesAt(`${at}/v1/design?${BEARING}`, { 'accept-encoding': accepted })
    expect(answer.status).toBe(200)
    expect(answer.headers['content-encoding']).toBe(coding)
  })
})

test.each([
  ['a short answer', '/health/live'],
  ['a short problem', '/wheels'],
  ['a PDF', `/v1/drawings/assembly.pdf?${BEARING}`],
])('%s is not compressed', async (_what, path) => {
  const at = await sharedApp()
  const answer = await bytesAt(at + path, { 'accept-encoding': 'gzip, br, zstd' })
  expect(answer.headers).not.toHaveProperty('content-encoding')
  expect(String(answer.headers['vary'])).not.toMatch(/Accept-Encoding/)
})

test('a POST and a long problem are compressed too', async () => {
  const at = await sharedApp()
  for (const [body, status] of [
    [{ units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }, 200],
    [Object.fromEntries(Array.from({ length: 40 }, (_, index) => [`unknown${index}`, index])), 400],
  ] as const) {
    const answer = await request(`${at}/v1/design`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'accept-encoding': 'br' },
      body: JSON.stringify(body),
    })
    expect(answer.statusCode).toBe(status)
    expect(answer.headers).toMatchObject({ 'content-encoding': 'br', vary: 'Accept-Encoding' })
    const read = JSON.parse(brotliDecompressSync(Buffer.from(await answer.body.arrayBuffer())).toString())
    expect(read).toMatchObject(status === 200 ? { units: 'mm' } : { status })
  }
})
