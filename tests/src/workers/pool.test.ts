import { availableParallelism } from 'node:os'
import { request } from 'undici'
import { expect, test } from 'vitest'
import { ask, problemIn } from '#tests/support/ask.ts'
import { startedApp } from '#tests/support/started-app.ts'

/** A fit that takes a good while: as many readings as are taken, and as many states before. */
const LONG = JSON.stringify({
  design: { units: 'mm', balls: { count: 60, diameter: 16, standardDeviation: 0.1 }, bore: 12 },
  ring: 'outer',
  readings: Array.from({ length: 30 }, (_, index) => ({ kind: 'ball-gap', value: 1 + (index % 3) / 2 })),
  earlier: Array.from({ length: 20 }, () => ({
    readings: [{ kind: 'ball-gap', value: 0.5 }],
    thenRemoved: { with: 'abrasive', radial: 0.01 },
  })),
})

/** As many as can run and wait, on any machine, and some more. */
const TOO_MANY = 17 * availableParallelism() + 8

test('more work than can wait is turned away at once, with when to come back; light requests go on being served', async () => {
  const address = await startedApp()
  const gone = new AbortController()
  const asked = Array.from({ length: TOO_MANY }, () =>
    request(`${address}/v1/fit-correction`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: LONG,
      signal: gone.signal,
    }),
  )
  const refused = await Promise.any(
    asked.map(async (answering) => {
      const answer = await answering
      if (answer.statusCode !== 503) throw new Error(`answered ${answer.statusCode}`)
      return { status: answer.statusCode, headers: answer.headers, text: await answer.body.text() }
    }),
  )
  expect(problemIn(refused, 503).detail).toMatch(/Try again in a second/)
  expect(refused.headers['retry-after']).toBe('1')
  expect(await ask(`${address}/health/live`)).toMatchObject({ status: 200 })
  gone.abort()
  await Promise.allSettled(asked)
})
