import { expect, test } from 'vitest'
import { ask } from '#tests/support/ask.ts'
import { HIDDEN, raw } from '#tests/support/raw.ts'
import { startedApp } from '#tests/support/started-app.ts'

/** Every way that a request can go wrong before, in and after the router, and one that does not. */
const HEADS = [
  ...['GET /%zz', 'GET /v1/%ff', 'HEAD /%', 'GET *', 'GET http://a:99999/', 'OPTIONS *', 'OPTIONS /%zz'],
  ...[`GET /v1/drawings/${'x'.repeat(120)}.svg`, 'GET /nothing', 'PUT /v1/design'],
  ...['GET /health/live', 'GET http://a/health/live', 'GET /v1/design', 'GET /docs/%zz', 'GET /docs/static/nothing'],
]

test.each(HEADS)(
  '%s: requests sent ahead are answered in order, and too many of them end their connection',
  async (head) => {
    const at = await startedApp()
    const request = `${head} HTTP/1.1\r\nhost: a\r\n\r\n`
    const few = await raw(at, request.repeat(10) + HIDDEN)
    expect(few.match(/HTTP\/1\.1 \d/g)).toHaveLength(11)
    expect(few.trimEnd().endsWith('{"status":"up"}')).toBe(true)

    const many = await raw(at, request.repeat(1_000) + HIDDEN)
    expect(many.match(/HTTP\/1\.1 \d/g)?.length ?? 0).toBeLessThan(150)
    expect((await ask(`${at}/health/live`)).status).toBe(200)
  },
)
