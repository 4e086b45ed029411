import { once } from 'node:events'
import type { AddressInfo } from 'node:net'
import { setTimeout as sleep } from 'node:timers/promises'
import type { FastifyInstance, FastifyPluginAsync } from 'fastify'
import { expect, test } from 'vitest'
import { ask, problemIn } from '#tests/support/ask.ts'
import { probeRoute } from '#tests/support/probe-route.ts'
import { raw } from '#tests/support/raw.ts'
import { testedApp } from '#tests/support/started-app.ts'

test('while it stops, ready says no, answers under way arrive, and their connections close', async () => {
  const app = await testedApp({ route: probeRoute, config: { shutdownDelayMs: 1_000 } })
  await app.listen({ host: '127.0.0.1', port: 0 })
  const at = `http://127.0.0.1:${(app.server.address() as AddressInfo).port}`
  expect((await ask(`${at}/health/ready`)).status).toBe(200)

  const slow = ask(`${at}/test/slow`)
  await sleep(50) // the slow one is on its way
  const stopped = app.close()
  const ready = await ask(`${at}/health/ready`)
  problemIn(ready, 503)
  expect(ready.headers).toMatchObject({ 'retry-after': '5', connection: 'close' })
  expect((await ask(`${at}/health/live`)).status).toBe(200)

  const answer = await slow
  expect(answer).toMatchObject({ status: 200, text: '{"slow":true}' })
  expect(answer.headers['connection']).toBe('close')
  await stopped
  await expect(ask(`${at}/health/live`)).rejects.toThrow()
})

const GET = (path: string): string => `GET ${path} HTTP/1.1\r\nhost: a\r\n\r\n`

/** A connection on which all of `text` has been sent, and what comes back until its end. */
function sent(app: FastifyInstance, text: string): Promise<string> {
  return raw(`http://127.0.0.1:${(app.server.address() as AddressInfo).port}`, text)
}

test('requests sent ahead of a stop are all answered, and only the last answer closes their connection', async () => {
  const app = await testedApp({ route: probeRoute })
  await app.listen({ host: '127.0.0.1', port: 0 })
  const answers = sent(app, GET('/test/slow') + GET('/health/live').repeat(5))
  await sleep(100)
  const stopped = app.close()
  const text = await answers
  expect(text.match(/HTTP\/1\.1 200 /g)).toHaveLength(6)
  expect(text.match(/connection: close/gi)).toHaveLength(1)
  await stopped
})

test('what cannot be finished in time is answered 503 with Retry-After, wherever it is', async () => {
  const route: FastifyPluginAsync = async (app) => {
    // Fails when its caller is gone, as a task in a worker thread does.
    app.get('/never', { schema: { hide: true } }, ({ raw: { socket } }) =>
      once(socket, 'close').then(() => Promise.reject(new Error('left'))),
    )
  }
  const logLines: string[] = []
  const config = { shutdownGraceMs: 400, shutdownDelayMs: 100 }
  const app = await testedApp({ route, config, logLines })
  await app.listen({ host: '127.0.0.1', port: 0 })
  const post = 'POST /v1/design HTTP/1.1\r\nhost: a\r\ncontent-type: application/json\r\ncontent-length: 99\r\n\r\n'
  const unfinished = [
    GET('/test/never'),
    GET('/test/never').repeat(3),
    `${post}{"units"`,
    'GET /v1/sources HTTP/1.1\r\nho',
  ]
  const answers = unfinished.map((text) => sent(app, text))
  const idle = sent(app, '')
  await sleep(100)
  await app.close()
  for (const text of await Promise.all(answers)) {
    expect(text).toMatch(/^HTTP\/1\.1 503 .*application\/problem\+json/s)
    expect(text).toMatch(/^retry-after: 5\r$/im)
    expect(text).toMatch(/^connection: close\r$/im)
    expect(text).toContain('"detail":"The service is stopping')
  }
  expect(await idle).toBe('')
  await sleep(50)
  expect(logLines.join('')).not.toMatch(/"level":50/)
  expect(logLines.join('')).toMatch(/"refused":5,"msg":"stopping/)
})
