import { expect, test } from 'vitest'
import { cpuSeconds, residentMb } from '#tests/bench/started.ts'
import { ask } from '#tests/support/ask.ts'
import { HIDDEN, raw } from '#tests/support/raw.ts'
import { sharedApp, testedApp } from '#tests/support/started-app.ts'
import { start } from '#tests/support/started-process.ts'

/** Every way that a request can go wrong before, in and after the router, and one that does not. */
const HEADS = [
  ...['GET /%zz', 'GET /v1/%ff', 'HEAD /%', 'GET *', 'GET http://a:99999/', 'OPTIONS *', 'OPTIONS /%zz'],
  ...[`GET /v1/drawings/${'x'.repeat(120)}.svg`, 'GET /nothing', 'PUT /v1/design'],
  ...['GET /health/live', 'GET http://a/health/live', 'GET /v1/design', 'GET /docs/%zz', 'GET /docs/static/nothing'],
]

test.each(HEADS)(
  '%s: requests sent ahead are answered in order, and too many of them end their connection',
  async (head) => {
    const at = await sharedApp()
    const request = `${head} HTTP/1.1\r\nhost: a\r\n\r\n`
    const few = await raw(at, request.repeat(10) + HIDDEN)
    expect(few.match(/HTTP\/1\.1 \d/g)).toHaveLength(11)
    expect(few.trimEnd().endsWith('{"status":"up"}')).toBe(true)

    const many = await raw(at, request.repeat(1_000) + HIDDEN)
    expect(many.match(/HTTP\/1\.1 \d/g)?.length ?? 0).toBeLessThan(150)
    expect((await ask(`${at}/health/live`)).status).toBe(200)
  },
)

const FLOOD_BYTES = 600_000
const floodOf = (target: string): string => {
  const request = `GET ${target} HTTP/1.1\r\nhost: a\r\n\r\n`
  return request.repeat(FLOOD_BYTES / request.length)
}

test.each(['/%zz', '/health/live'])('a flood of GET %s: what comes behind the cut is not looked at', async (target) => {
  const app = await testedApp()
  let seen = 0
  app.server.on('request', () => {
    seen += 1
  })
  const at = await app.listen({ host: '127.0.0.1', port: 0 })
  const flood = floodOf(target)
  expect(flood.match(/GET/g)?.length).toBeGreaterThan(10_000)
  await raw(at, flood)
  // One is being answered, a hundred wait, and at the next the connection is cut.
  expect(seen).toBeLessThanOrEqual(102)
})

test('a hundred floods of unreadable addresses cost no more than three times as many ordinary ones, and no memory', async () => {
  const started = await start({ LOG_LEVEL: 'silent' })
  await expect
    .poll(async () => (await ask(`http://127.0.0.1:${started.port}/health/live`).catch(() => undefined))?.status, {
      timeout: 30_000,
    })
    .toBe(200)
  const at = `http://127.0.0.1:${started.port}`
  const server = { ...started, address: at, firstAnswerMs: 0 }
  const costOf = async (target: string) => {
    const before = cpuSeconds(server)
    const texts = await Promise.all(Array.from({ length: 100 }, () => raw(at, floodOf(target))))
    return { seconds: cpuSeconds(server) - before, answers: texts.join('').match(/HTTP\/1\.1 \d/g)?.length ?? 0 }
  }
  await costOf('/v1/sources')
  const [ordinary, warmMb] = [await costOf('/v1/sources'), residentMb(server)]
  const unreadable = await costOf('/%zz')
  expect(unreadable.answers).toBeLessThanOrEqual(100 * 101)
  expect(unreadable.seconds / ordinary.seconds).toBeLessThan(3)
  expect(residentMb(server) / warmMb).toBeLessThan(2)
  expect((await ask(`${at}/health/live`)).status).toBe(200)
})
