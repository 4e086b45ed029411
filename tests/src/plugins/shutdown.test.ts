import type { AddressInfo } from 'node:net'
import { expect, test } from 'vitest'
import { ask, problemIn } from '#tests/support/ask.ts'
import { probeRoute } from '#tests/support/probe-route.ts'
import { testedApp } from '#tests/support/started-app.ts'

test('while it stops, ready says no, answers under way arrive, and their connections close', async () => {
  const app = await testedApp({ route: probeRoute, config: { shutdownDelayMs: 200 } })
  await app.listen({ host: '127.0.0.1', port: 0 })
  const at = `http://127.0.0.1:${(app.server.address() as AddressInfo).port}`
  expect((await ask(`${at}/health/ready`)).status).toBe(200)

  const slow = ask(`${at}/test/slow`)
  const started = performance.now()
  await new Promise((resolve) => setTimeout(resolve, 50)) // the slow one is on its way
  const stopped = app.close()
  const ready = await ask(`${at}/health/ready`)
  problemIn(ready, 503)
  expect(ready.headers).toMatchObject({ 'retry-after': '5', connection: 'close' })
  expect((await ask(`${at}/health/live`)).status).toBe(200)

  const answer = await slow
  expect(answer).toMatchObject({ status: 200, text: '{"slow":true}' })
  expect(answer.headers['connection']).toBe('close')
  await stopped
  // The slow answer takes 400 ms; a connection that is kept alive would hold it up for 72 s.
  expect(performance.now() - started).toBeLessThan(2_000)
  await expect(ask(`${at}/health/live`)).rejects.toThrow()
})
