import { join } from 'node:path'
import type { Worker } from 'node:worker_threads'
import type { FastifyPluginAsync } from 'fastify'
import { expect, onTestFinished, test, vi } from 'vitest'
import { problemIn } from '#tests/support/ask.ts'
import { eventually } from '#tests/support/eventually.ts'
import { shareOfProcessor } from '#tests/support/processor-share.ts'
import { testedApp } from '#tests/support/started-app.ts'

/** The pool with threads of which one task, `pdf`, never ends; all else of the service as it is. */
vi.mock(import('#src/workers/threads.ts'), async (original) => {
  const threads = await original()
  const filename = join(import.meta.dirname, '../../support/endless-thread.ts')
  return { ...threads, startThreads: (options) => threads.startThreads({ ...options, filename }) }
})

/** By then a thread has started and is at its task. */
const START_MS = 2_000

const tasks: FastifyPluginAsync = async (app) => {
  app.get('/endless', (request) => app.runTask('pdf', [], request))
  app.get('/next', (request) => app.runTask('browserScript', { root: '', entry: '' }, request))
}

test.each([
  ['422, for it had a processor of its own', 1, 422],
  ['503, for it had a tenth of a processor', 0.1, 503],
])(
  'a part that does not end is given up at its deadline, and its thread is ended after the grace: %s',
  async (_, share, status) => {
    onTestFinished(shareOfProcessor(share))
    const app = await testedApp({ config: { workerThreads: 1, taskDeadlineMs: 5_000 }, route: tasks })
    // On a busy machine not at once: to start a thread can take longer than the deadline.
    await eventually(async () => expect((await app.inject('/test/next')).statusCode).toBe(200))
    const before = app.taskLoad().late
    const endless = app.inject('/test/endless')
    await eventually(() => expect(app.taskLoad().running).toBe(1))
    // The place for small answers is free all the while.
    expect((await app.inject('/test/next')).statusCode).toBe(200)
    expect((await endless).statusCode).toBe(status)
    expect(app.taskLoad()).toMatchObject({ running: 1, late: before + 1, stopped: 0 })
    await eventually(() => expect(app.taskLoad()).toMatchObject({ running: 0, stopped: 1, lost: 0 }))
    await eventually(async () => {
      const all = await Promise.all(Array.from({ length: 5 }, () => app.inject('/test/next')))
      expect(all.map(({ statusCode }) => statusCode)).toEqual([200, 200, 200, 200, 200])
    })
  },
)

test('a task that loses its thread twice is a fault of ours: 500, with a line in the log, and the next is as ever', async () => {
  const threads = new Set<Worker>()
  const add = (worker: Worker): void => {
    threads.add(worker)
    worker.once('exit', () => threads.delete(worker))
  }
  process.on('worker', add)
  onTestFinished(() => {
    process.off('worker', add)
  })
  const logLines: string[] = []
  const app = await testedApp({ config: { workerThreads: 1 }, route: tasks, logLines })
  expect((await app.inject('/test/next')).statusCode).toBe(200)
  const endless = app.inject('/test/endless')
  await eventually(() => expect(app.taskLoad().running).toBe(1))
  const answered = endless.then(() => true)
  while (app.taskLoad().lost < 2) {
    await Promise.all([...threads].map((worker) => worker.terminate()))
    if (await Promise.race([answered, new Promise<false>((resolve) => setTimeout(() => resolve(false), START_MS))]))
      break
  }
  const { statusCode: status, headers, payload: text } = await endless
  expect(problemIn({ status, headers: headers as Record<string, string>, text }, 500).detail).toMatch(
    /The service failed: the request is not at fault/,
  )
  expect(app.taskLoad()).toMatchObject({ lost: 2, running: 0 })
  const lines = logLines.map((line): { level: number; msg: string } => JSON.parse(line))
  expect(lines.filter(({ level, msg }) => level === 50 && msg === 'request failed')).toHaveLength(1)
  expect((await app.inject('/test/next')).statusCode).toBe(200)
})
