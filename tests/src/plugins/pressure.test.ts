import { expect, onTestFinished, test } from 'vitest'
import { ask, post, problemIn } from '#tests/support/ask.ts'
import { eventually } from '#tests/support/eventually.ts'
import { startedApp } from '#tests/support/started-app.ts'

const DESIGN = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }

/** Holds up the event loop again and again, as long callbacks would. */
function holdUp(ms: number): () => void {
  let isOver = false
  const block = (): void => {
    const end = performance.now() + ms
    while (performance.now() < end);
    if (!isOver) setImmediate(block)
  }
  block()
  const stop = (): void => {
    isOver = true
  }
  onTestFinished(stop)
  return stop
}

test('a service that runs late sheds what would be computed, says so to whoever asks, and recovers', async () => {
  const at = await startedApp({ config: { maxLoopDelayMs: 20 } })
  expect((await post(`${at}/v1/design`, DESIGN)).status).toBe(200)

  const relieve = holdUp(60)
  const shed = await eventually(async () => {
    const answer = await post(`${at}/v1/design`, DESIGN)
    expect(answer.status).toBe(503)
    return answer
  })
  expect(problemIn(shed, 503).detail).toMatch(/Try again in a second/)
  expect(shed.headers['retry-after']).toBe('1')
  // By its route, however its address is spelt.
  for (const path of ['/v1/sources', '/%761/sources', '/v1/%73ources'])
    await eventually(async () => problemIn(await ask(at + path), 503))
  await eventually(async () => problemIn(await ask(`${at}/health/ready`), 503))
  expect((await ask(`${at}/health/live`)).status).toBe(200)
  expect((await ask(`${at}/metrics`)).status).toBe(200)

  relieve()
  await eventually(async () => expect((await post(`${at}/v1/design`, DESIGN)).status).toBe(200))
  expect((await ask(`${at}/health/ready`)).status).toBe(200)
})
