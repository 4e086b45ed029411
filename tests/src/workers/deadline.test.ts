import type { FastifyInstance, FastifyPluginAsync } from 'fastify'
import { expect, onTestFinished, test } from 'vitest'
import { ask, post, problemIn } from '#tests/support/ask.ts'
import { eventually } from '#tests/support/eventually.ts'
import { shareOfProcessor } from '#tests/support/processor-share.ts'
import { startedApp, testedApp } from '#tests/support/started-app.ts'
import { LARGE_SEARCH, SMALL_SELECTION } from '#tests/support/thread-work.ts'

const DESIGN = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 } as const
const PART = { input: { design: DESIGN, contributors: {} } as never }

/** Answers of worker threads that never come: one that only waits, and one whose parts follow one another without end. */
const endless: FastifyPluginAsync = async (app) => {
  app.get('/waits', (request) => app.inParts(request, { task: 'pdf', units: 0 }, () => new Promise(() => {})))
  app.get('/works', (request) =>
    app.inParts(request, { task: 'furtherSearch', units: 0 }, async (runPart) => {
      for (;;) await runPart('prepareTrials', PART.input)
    }),
  )
}

const small = (app: FastifyInstance, headers = {}) =>
  app.inject({ method: 'POST', url: '/v1/ball-selection', payload: SMALL_SELECTION, headers })

const LARGE = { ...LARGE_SEARCH, counts: { min: 10, max: 200 }, limit: 50, offset: 100 }

test('kept waiting by others until its deadline: 503, and when to come back', async () => {
  const app = await testedApp({ config: { taskDeadlineMs: 2_000 }, route: endless })
  const answer = await app.inject('/test/waits')
  expect(answer.statusCode).toBe(503)
  expect(answer.headers['retry-after']).toBe('1')
  expect(app.taskLoad()).toMatchObject({ late: 1, refused: { busy: 1, 'too-much-work': 0 } })
})

test('at work itself until its deadline: 422, for to come back would not help, and what to narrow', async () => {
  onTestFinished(shareOfProcessor(1))
  const app = await testedApp({ config: { taskDeadlineMs: 2_500 }, route: endless })
  // To start a thread can take longer than that.
  await eventually(async () => expect((await small(app)).statusCode).toBe(200))
  const { refused } = app.taskLoad()
  const answer = await app.inject('/test/works')
  expect(answer.statusCode).toBe(422)
  expect(answer.json().errors).toEqual([{ path: '', message: expect.stringMatching(/shorten the lists/) }])
  expect(app.taskLoad().refused).toEqual({ ...refused, 'too-much-work': refused['too-much-work'] + 1 })
  await eventually(async () => expect((await small(app)).statusCode).toBe(200))
})

test('a search that cannot be done within the deadline: 422 at once, before anything of it is begun', async () => {
  const app = await testedApp({ config: { taskDeadlineMs: 1_000 } })
  const payload = { ...LARGE, counts: { min: 190, max: 200 }, offset: 200 }
  const answer = await app.inject({ method: 'POST', url: '/v1/design-search', payload })
  expect(answer.statusCode).toBe(422)
  expect(answer.json().errors[0].message).toMatch(/fewer months/)
  expect(app.taskLoad()).toMatchObject({ done: 0, refused: { 'too-much-work': 1 } })
})

test('a search that turns out to be too long for the deadline is refused in its first parts, not at the deadline', async () => {
  const payload = { ...LARGE, counts: { min: 10, max: 30 }, offset: 0 }
  const search = (app: FastifyInstance) => app.inject({ method: 'POST', url: '/v1/design-search', payload })
  const whole = await testedApp()
  expect((await search(whole)).statusCode).toBe(200)
  const { done, workedMs } = whole.taskLoad()
  const app = await testedApp({ config: { taskDeadlineMs: workedMs / 3 } })
  // To start a thread can take longer than that, and so can the first parts on a machine that has far too much to do.
  await eventually(async () => expect((await small(app)).statusCode).toBe(200))
  await eventually(async () => {
    const before = app.taskLoad()
    const answer = await search(app)
    expect(answer.statusCode).toBe(422)
    expect(answer.json().errors[0].message).toMatch(/shorten the lists/)
    const after = app.taskLoad()
    expect(after.late).toBe(before.late)
    expect(after.refused['too-much-work']).toBe(before.refused['too-much-work'] + 1)
    expect(after.done - before.done).toBeLessThan(done / 3)
  })
})

test('the bytes of a search are the same for one thread and for two', async () => {
  const payload = { ...LARGE, balls: LARGE.balls.slice(0, 3), counts: { min: 10, max: 20 }, offset: 0, limit: 5 }
  const texts: string[] = []
  for (const workerThreads of [1, 2]) {
    const app = await testedApp({ config: { workerThreads } })
    const search = () => app.inject({ method: 'POST', url: '/v1/design-search', payload })
    for (const { statusCode, body } of await Promise.all([search(), search()])) {
      expect(statusCode, body).toBe(200)
      texts.push(body)
    }
    // Each of the two was worked out in several parts.
    expect(app.taskLoad().done).toBeGreaterThanOrEqual(2 * 3)
  }
  expect(new Set(texts).size).toBe(1)
})

test('small answers do not wait for large searches, of which too many are told at once to come back', async () => {
  const app = await testedApp({ config: { workerThreads: 1, taskDeadlineMs: 60_000 } })
  const at = await app.listen({ host: '127.0.0.1', port: 0 })
  const gone = new AbortController()
  const statuses: number[] = []
  const large = Array.from({ length: 30 }, async (_, index) => {
    const body = JSON.stringify({ ...LARGE, offset: index })
    const headers = { 'content-type': 'application/json' }
    const { status } = await fetch(`${at}/v1/design-search`, { method: 'POST', headers, body, signal: gone.signal })
    statuses.push(status)
  })
  await eventually(() => expect(app.taskLoad().done).toBeGreaterThan(0))
  await eventually(() => expect(app.taskLoad().refused.busy).toBeGreaterThan(0))
  expect((await post(`${at}/v1/ball-selection`, SMALL_SELECTION)).status).toBe(200)
  // None of those that were let in is ready: the small one went before them all.
  expect(statuses.every((status) => status === 503)).toBe(true)
  expect(app.taskLoad().refused.busy).toBeLessThan(30)
  gone.abort()
  await Promise.allSettled(large)
})

test('a caller whose requests fill the room does not shut out another', async () => {
  const app = await testedApp({
    config: { workerThreads: 1, trustProxy: true, taskDeadlineMs: 10_000 },
    route: endless,
  })
  const from = (address: string) => app.inject({ url: '/test/waits', headers: { 'x-forwarded-for': address } })
  const many = Array.from({ length: 20 }, () => from('192.0.2.1'))
  await eventually(() => expect(app.taskLoad().refused.busy).toBe(3))
  expect((await small(app, { 'x-forwarded-for': '192.0.2.2' })).statusCode).toBe(200)
  expect(app.taskLoad().refused.displaced).toBe(1)
  await app.close()
  await Promise.allSettled(many)
})

test('ready is 503, with the reason, once workers have been full for longer than the deadline, and 200 afterwards', async () => {
  const at = await startedApp({ config: { workerThreads: 1, taskDeadlineMs: 1_000 }, route: endless })
  const ready = () => ask(`${at}/health/ready`)
  expect((await ready()).status).toBe(200)
  let isOver = false
  const caller = async (): Promise<void> => {
    while (!isOver) await ask(`${at}/test/waits`)
  }
  const callers = [caller(), caller(), caller()]
  await eventually(async () => expect(problemIn(await ready(), 503).detail).toMatch(/more requests than it can answer/))
  expect((await post(`${at}/v1/design`, DESIGN)).status).toBe(200)
  isOver = true
  await Promise.all(callers)
  await eventually(async () => expect((await ready()).status).toBe(200))
})
