import { expect, test } from 'vitest'
import { ask, post } from '#tests/support/ask.ts'
import { probeRoute } from '#tests/support/probe-route.ts'
import { raw } from '#tests/support/raw.ts'
import { sharedApp, startedApp } from '#tests/support/started-app.ts'

const ALWAYS = {
  'content-security-policy': "default-src 'none'; frame-ancestors 'none'",
  'cross-origin-resource-policy': 'cross-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
}

test.each(['/health/live', '/wheels', '/%zz', '/test/probe'])(
  '%s has the headers that every answer has',
  async (path) => {
    const at = await sharedApp({ route: probeRoute })
    const { headers } = await ask(`${at}${path}`)
    expect(headers).toMatchObject({ ...ALWAYS, 'x-request-id': expect.stringMatching(/^\w{1,8}-\d+$/) })
    expect(headers['server-timing']).toMatch(/^total;dur=\d+\.\d$/)
    expect(headers).not.toHaveProperty('x-powered-by')
    expect(headers).not.toHaveProperty('strict-transport-security')
  },
)

test.each(['/health/live', '/wheels', '/test/probe'])('a script in any page may read %s', async (path) => {
  const at = await sharedApp({ route: probeRoute })
  const { headers } = await ask(`${at}${path}`, { headers: { origin: 'null' } })
  expect(headers['access-control-allow-origin']).toBe('*')
  expect(headers['access-control-expose-headers']).toBe('ETag, Retry-After, X-Engine, X-Request-Id')
  expect(headers).not.toHaveProperty('access-control-allow-credentials')
})

const PREFLIGHT = {
  origin: 'https://example.org',
  'access-control-request-method': 'POST',
  'access-control-request-headers': 'content-type',
}

test('a browser may ask first', async () => {
  const at = await sharedApp({ route: probeRoute })
  const { status, headers } = await ask(`${at}/test/probe`, { method: 'OPTIONS', headers: PREFLIGHT })
  expect(status).toBe(204)
  expect(headers).toMatchObject({
    'access-control-allow-origin': '*',
    'access-control-allow-methods': 'GET, HEAD, POST',
    'access-control-allow-headers': 'content-type',
    'access-control-max-age': '86400',
  })
  expect((await ask(`${at}/wheels`, { method: 'OPTIONS', headers: PREFLIGHT })).status).toBe(204)
})

test('only the pages that are named', async () => {
  const at = await startedApp({ config: { corsOrigin: ['https://example.org'] } })
  const named = await ask(`${at}/health/live`, { headers: { origin: 'https://example.org' } })
  expect(named.headers).toMatchObject({ 'access-control-allow-origin': 'https://example.org', vary: 'Origin' })
  const other = await ask(`${at}/health/live`, { headers: { origin: 'https://example.net' } })
  expect(other.headers).not.toHaveProperty('access-control-allow-origin')
  expect(other.headers['vary']).toBe('Origin')
})

test('no page at all', async () => {
  const at = await startedApp({ config: { corsOrigin: false } })
  const { headers } = await ask(`${at}/health/live`, { headers: { origin: 'https://example.org' } })
  expect(headers).not.toHaveProperty('access-control-allow-origin')
})

test('an answer of its own media type still tells the browser not to guess', async () => {
  const at = await sharedApp({ route: probeRoute })
  expect((await post(`${at}/test/table`, '{}', { accept: 'text/csv' })).headers['x-content-type-options']).toBe(
    'nosniff',
  )
})

const FROM_PAGE = 'origin: https://example.org\r\nconnection: close\r\n\r\n'

/** Refused before any route: by what HTTP asks of a request, by Node, or because nothing in it can be read. */
const REFUSED: readonly (readonly [string, string])[] = [
  ['an address that cannot be read', `GET /%zz HTTP/1.1\r\nhost: a\r\n${FROM_PAGE}`],
  ['no host', `GET /v1/sources HTTP/1.1\r\n${FROM_PAGE}`],
  ['two hosts', `GET /v1/sources HTTP/1.1\r\nhost: a\r\nhost: b\r\n${FROM_PAGE}`],
  [
    'a packed body',
    `POST /v1/design HTTP/1.1\r\nhost: a\r\ncontent-encoding: gzip\r\ncontent-length: 0\r\n${FROM_PAGE}`,
  ],
  ['long headers', `GET /v1/sources HTTP/1.1\r\nhost: a\r\nx-long: ${'x'.repeat(20_000)}\r\n${FROM_PAGE}`],
  ['headers that are not read', `GET /v1/sources HTTP/1.1\r\nhost: a\r\nx-long: ${'x'.repeat(80_000)}\r\n${FROM_PAGE}`],
  ['an unknown method', `FELL / HTTP/1.1\r\nhost: a\r\n${FROM_PAGE}`],
  ['no request at all', 'what must I cut?\r\n\r\n'],
]

test.each(REFUSED)('a script may read why it was refused for %s', async (_what, sent) => {
  const any = await raw(await sharedApp(), sent)
  expect(any).toMatch(/^HTTP\/1\.1 4\d\d /)
  const lines = any.split('\r\n\r\n', 1)[0]?.toLowerCase().split('\r\n') ?? []
  for (const [name, value] of Object.entries(ALWAYS)) expect(lines).toContain(`${name}: ${value}`)
  expect(lines).toContain('cache-control: no-store')
  expect(lines).toContain('access-control-allow-origin: *')
  expect(lines).toContain('access-control-expose-headers: etag, retry-after, x-engine, x-request-id')

  const named = await raw(await startedApp({ config: { corsOrigin: ['https://example.org'] } }), sent)
  expect(named).toMatch(/^vary: Origin\r$/im)
  expect(named).not.toMatch(/^access-control-allow-origin: \*/im)
  const none = await raw(await startedApp({ config: { corsOrigin: false } }), sent)
  expect(none).not.toMatch(/^access-control-/im)
})
