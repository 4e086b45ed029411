import { type AddressInfo, connect } from 'node:net'
import { promisify } from 'node:util'
import type { FastifyPluginAsync } from 'fastify'
import { describe, expect, onTestFinished, test } from 'vitest'
import { ask, problemIn } from '#tests/support/ask.ts'
import { eventually } from '#tests/support/eventually.ts'
import { probeRoute } from '#tests/support/probe-route.ts'
import { dripping, HIDDEN, inPackets, raw } from '#tests/support/raw.ts'
import { sharedApp, startedApp, testedApp } from '#tests/support/started-app.ts'

const HEAD = 'POST /v1/design HTTP/1.1\r\nhost: a\r\ncontent-type: application/json\r\n'

describe('a request that two readers could take for two different ones is refused, and nothing behind it is read', () => {
  test.each([
    ['a length and chunks', `${HEAD}content-length: 5\r\ntransfer-encoding: chunked\r\n\r\n0\r\n\r\n`],
    ['chunks and a length', `${HEAD}transfer-encoding: chunked\r\ncontent-length: 5\r\n\r\n0\r\n\r\n`],
    ['two lengths', `${HEAD}content-length: 2\r\ncontent-length: 9\r\n\r\n{}`],
    ['one length twice', `${HEAD}content-length: 2\r\ncontent-length: 2\r\n\r\n{}`],
    ['a list of lengths', `${HEAD}content-length: 2, 2\r\n\r\n{}`],
    ['a length with a sign', `${HEAD}content-length: +2\r\n\r\n{}`],
    ['a length below 0', `${HEAD}content-length: -2\r\n\r\n{}`],
    ['a length in hexadecimal', `${HEAD}content-length: 0x2\r\n\r\n{}`],
    ['a length beyond all numbers', `${HEAD}content-length: 99999999999999999999\r\n\r\n{}`],
    ['a blank before the colon', `${HEAD}transfer-encoding : chunked\r\n\r\n0\r\n\r\n`],
    ['an encoding that is none', `${HEAD}transfer-encoding: xchunked\r\n\r\n0\r\n\r\n`],
    ['chunks, then something else', `${HEAD}transfer-encoding: chunked, identity\r\n\r\n0\r\n\r\n`],
    ['chunks twice', `${HEAD}transfer-encoding: chunked\r\ntransfer-encoding: chunked\r\n\r\n0\r\n\r\n`],
    ['an odd blank before the encoding', `${HEAD}transfer-encoding:\x0bchunked\r\n\r\n0\r\n\r\n`],
    ['chunks in HTTP/1.0', `${HEAD.replace('1.1', '1.0')}transfer-encoding: chunked\r\n\r\n0\r\n\r\n`],
    ['a header folded over two lines', `${HEAD}x: y\r\n transfer-encoding: chunked\r\n\r\n`],
    ['lines that end in LF', 'POST /v1/design HTTP/1.1\nhost: a\ncontent-length: 0\n\n'],
    ['a CR within a line', `${HEAD}x: y\rcontent-length: 3\r\n\r\n`],
    ['a NUL', `${HEAD}x: y\0z\r\n\r\n`],
    ['a chunk beyond all numbers', `${HEAD}transfer-encoding: chunked\r\n\r\nfffffffffffffffff\r\n{}\r\n0\r\n\r\n`],
    ['a chunk below 0', `${HEAD}transfer-encoding: chunked\r\n\r\n-2\r\n{}\r\n0\r\n\r\n`],
    ['a chunk with 0x', `${HEAD}transfer-encoding: chunked\r\n\r\n0x2\r\n{}\r\n0\r\n\r\n`],
    ['chunks that end in LF', `${HEAD}transfer-encoding: chunked\r\n\r\n2\n{}\n0\n\n`],
    ['an LF in what follows a size', `${HEAD}transfer-encoding: chunked\r\n\r\n2;a\nb\r\n{}\r\n0\r\n\r\n`],
    ['a chunk longer than it says', `${HEAD}transfer-encoding: chunked\r\n\r\n2\r\n{}xx\r\n0\r\n\r\n`],
    ['another protocol', 'PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n'],
    ['a version that does not exist', 'GET /health/live HTTP/9.9\r\nhost: a\r\n\r\n'],
  ])('%s', async (_name, bytes) => {
    const answer = await raw(await sharedApp(), bytes, HIDDEN)
    expect(answer).toMatch(/^HTTP\/1.1 400 Bad Request\r\n.*^content-type: application\/problem\+json\r\n/ims)
    expect(answer.match(/HTTP\/1.1 \d/g)).toHaveLength(1)
    expect(answer).not.toContain('hidden')
  })
})

describe('one request has one answer', () => {
  const LIMITS = { headersTimeoutMs: 200, requestTimeoutMs: 400 }
  const statusesIn = (answer: string) => Array.from(answer.matchAll(/HTTP\/1.1 (\d+)/g), ([, status]) => status)
  const POST = 'POST /wheels HTTP/1.1\r\nhost: a\r\n'

  test('when it is refused before its body is there, and that never comes', async () => {
    const answer = await raw(await startedApp({ config: LIMITS }), `${POST}content-length: 9\r\n\r\n1`)
    expect(statusesIn(answer)).toEqual(['404'])
  })

  test('when it is refused before its body is there, and that cannot be read', async () => {
    const answer = await inPackets(await sharedApp(), [`${POST}transfer-encoding: chunked\r\n\r\n`, 'zz\r\n'])
    expect(statusesIn(answer)).toEqual(['404'])
  })

  test('when it is larger than it may be, and does not come to an end', async () => {
    const at = await startedApp({ config: { ...LIMITS, bodyLimitBytes: 1_024 } })
    const answer = await raw(at, `${HEAD}transfer-encoding: chunked\r\n\r\n`, `800\r\n${' '.repeat(2_048)}\r\n`)
    expect(statusesIn(answer)).toEqual(['413'])
  })

  test.each([
    ['head', 'nonsense\r\n\r\n'],
    ['body', `${HEAD}transfer-encoding: chunked\r\n\r\nzz\r\n`],
  ])('its own, where the %s of the next cannot be read; then the connection closes', async (_name, next) => {
    const at = await sharedApp({ route: probeRoute })
    const answer = await raw(at, `GET /test/slow HTTP/1.1\r\nhost: a\r\n\r\n${next}`, 'more\r\n')
    expect(statusesIn(answer)).toEqual(['200'])
    expect(answer).toMatch(/^connection: close\r$/im)
  })
})

test('an answer may take longer to work out than a connection may be idle', async () => {
  const at = await startedApp({ route: probeRoute, config: { keepAliveTimeoutMs: 100 } })
  const answer = await raw(at, 'GET /test/slow HTTP/1.1\r\nhost: a\r\n\r\n') // takes 400 ms
  expect(answer).toMatch(/^HTTP\/1.1 200 /)
})

describe('a Host', () => {
  test.each(['host: a\r\nhost: b\r\n', 'host: a\r\nHost: a\r\n', 'host: a, b\r\n'])('only one: %j', async (hosts) => {
    const answer = await raw(await sharedApp(), `GET /health/live HTTP/1.1\r\n${hosts}connection: close\r\n\r\n`)
    expect(answer).toMatch(/^HTTP\/1.1 400 .*more than one Host/s)
  })
})

test('what is expected beyond 100-continue is ignored', async () => {
  const request = 'GET /health/live HTTP/1.1\r\nhost: a\r\nexpect: wonders\r\nconnection: close\r\n\r\n'
  expect(await raw(await sharedApp(), request)).toMatch(/^HTTP\/1.1 200 /)
})

test('a tunnel is not opened', async () => {
  expect(await raw(await sharedApp(), 'CONNECT example.org:443 HTTP/1.1\r\nhost: example.org:443\r\n\r\n')).toBe('')
})

describe('a path that wants to be another one leads nowhere', () => {
  test.each([
    ...['/v1/../health/live', '//health/live', '/health/live/', '/health//live', '/health%2Flive', '/./health/live'],
    ...['/HEALTH/LIVE', '/health/live%00', '/health/live;a=b', '/__proto__', '/constructor', '*'],
    ...['/docs/static/../../../package.json', '/docs/static/%2e%2e/%2e%2e/package.json', '/docs/static//etc/passwd'],
    ...['/docs/static/..%2f..%2fpackage.json', '/docs/static/..%5c..%5cpackage.json', '/docs/static/%00'],
    ...['/docs/static/%252e%252e/package.json', '\\health\\live', 'health/live', '/%ff', '/%', '/%u0041', '/\xe4'],
  ])('%s', async (path) => {
    const answer = await raw(await sharedApp(), `GET ${path} HTTP/1.1\r\nhost: a\r\nconnection: close\r\n\r\n`)
    expect(answer).toMatch(/^HTTP\/1.1 (400|403|404) .*application\/problem\+json/is)
    expect(answer).not.toMatch(/devDependencies|root:/)
  })
})

describe('a caller that takes its time', () => {
  const LIMITS = { headersTimeoutMs: 200, requestTimeoutMs: 400 }

  test('with its headers, byte by byte', async () => {
    const at = await startedApp({ config: LIMITS })
    expect(await dripping(at, 'GET /health/live HTTP/1.1\r\nhost: a\r\nx: ', 'y')).toMatch(/^HTTP\/1.1 408 /)
  })

  test('with its body, byte by byte', async () => {
    const at = await startedApp({ config: LIMITS })
    expect(await dripping(at, `${HEAD}content-length: 9999\r\n\r\n`, ' ')).toMatch(/^HTTP\/1.1 408 /)
  })

  test('with its chunks, byte by byte', async () => {
    const at = await startedApp({ config: LIMITS })
    expect(await dripping(at, `${HEAD}transfer-encoding: chunked\r\n\r\n`, '1\r\n \r\n')).toMatch(/^HTTP\/1.1 408 /)
  })

  test('and sends nothing at all', async () => {
    expect(await raw(await startedApp({ config: { ...LIMITS, keepAliveTimeoutMs: 300 } }))).toMatch(
      /^(HTTP\/1.1 408 |$)/,
    )
  })

  test('and never reads its answers is cut off', async () => {
    const app = await testedApp({ config: { keepAliveTimeoutMs: 300 } })
    await app.listen({ host: '127.0.0.1', port: 0 })
    const socket = connect((app.server.address() as AddressInfo).port, '127.0.0.1').pause()
    onTestFinished(() => {
      socket.destroy()
    })
    socket.on('error', () => {})
    const held = promisify(app.server.getConnections.bind(app.server))
    // More than all buffers on the way hold.
    for (let sent = 0; sent < 100; sent += 1) socket.write('GET /openapi.json HTTP/1.1\r\nhost: a\r\n\r\n')
    await eventually(async () => expect(await held()).toBe(1))
    await eventually(async () => expect(await held()).toBe(0))
  })
})

test('a body that would grow when unpacked is not unpacked', async () => {
  const at = await sharedApp()
  for (const encoding of ['gzip', 'deflate', 'br', 'zstd', 'gzip, gzip', 'x'])
    problemIn(
      await ask(`${at}/v1/design`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'content-encoding': encoding },
        body: Buffer.alloc(1_000),
      }),
      415,
    )
})

test('nor one that was compressed for its way', async () => {
  const request = `${HEAD}transfer-encoding: gzip, chunked\r\nconnection: close\r\n\r\n2\r\n{}\r\n0\r\n\r\n`
  expect(await raw(await sharedApp(), request)).toMatch(/^HTTP\/1.1 415 .*problem\+json/s)
})

test('a thousand headers are no more than that', async () => {
  const many = Array.from({ length: 900 }, (_, index) => `x-${index}: y\r\n`).join('')
  expect(
    await raw(await sharedApp(), `GET /health/live HTTP/1.1\r\nhost: a\r\nconnection: close\r\n${many}\r\n`),
  ).toMatch(/^HTTP\/1.1 200 /)
})

describe('requests in one packet', () => {
  const GET = 'GET /test/counted HTTP/1.1\r\nhost: a\r\n\r\n'
  /** A service that tells how many it has begun to answer, and how many of them at the same time. */
  async function counting() {
    const seen = { begun: 0, atOnce: 0, now: 0 }
    const route: FastifyPluginAsync = async (app) => {
      app.get('/counted', { schema: { hide: true } }, async () => {
        seen.begun += 1
        seen.now += 1
        seen.atOnce = Math.max(seen.atOnce, seen.now)
        await new Promise((resolve) => setImmediate(resolve))
        seen.now -= 1
        return {}
      })
    }
    return { seen, at: await startedApp({ route }) }
  }

  test('are answered one after the other', async () => {
    const { seen, at } = await counting()
    expect((await raw(at, GET.repeat(100) + HIDDEN)).match(/HTTP\/1.1 200 /g)).toHaveLength(101)
    expect(seen).toEqual({ begun: 100, atOnce: 1, now: 0 })
  })

  // Found by hand: twenty connections that sent a packet each and read nothing made the service grow by two gigabytes.
  test('that are more than anyone sends ahead end their connection, and are not worked out', async () => {
    const { seen, at } = await counting()
    const answer = await raw(at, GET.repeat(1_000) + HIDDEN)
    expect(answer).not.toContain('hidden')
    expect(seen.begun).toBeLessThan(1_000)
    expect((await ask(`${at}/health/live`)).status).toBe(200)
  })
})
