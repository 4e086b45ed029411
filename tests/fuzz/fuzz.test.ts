import fc from 'fast-check'
import { Agent } from 'undici'
import { expect, onTestFinished, test } from 'vitest'
import { sharedApp } from '#tests/support/started-app.ts'
import { attemptsAt } from './attempt.ts'
import { OPERATIONS } from './document.ts'
import { floodsAt } from './floods.ts'

/** A slice of `npm run fuzz`, the same on every run and every machine: so many requests to each path. */
const REQUESTS = 100
const FLOODS = 3
const NO_DEADLINE_MS = 600_000

test.each(OPERATIONS)(
  '$operationId: whatever is sent, the answer is one that the document describes',
  async (operation) => {
    const agent = new Agent()
    onTestFinished(() => agent.destroy())
    const statuses = new Map<number, number>()
    const witness = (_request: unknown, status: number) => statuses.set(status, (statuses.get(status) ?? 0) + 1)
    await fc.assert(attemptsAt(operation, agent, await sharedApp(), witness), { numRuns: REQUESTS })
    expect(statuses.get(200), 'requests that were answered with what was asked for').toBeGreaterThan(0)
  },
)

test.each(OPERATIONS)('$operationId: a flood on one connection ends it, and nothing breaks', async (operation) => {
  const at = await sharedApp()
  await fc.assert(floodsAt(operation, at, NO_DEADLINE_MS), { numRuns: FLOODS })
  expect((await fetch(`${at}/health/live`)).status).toBe(200)
})
