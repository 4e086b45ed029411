import type { Worker } from 'node:worker_threads'
import { expect, onTestFinished, test } from 'vitest'
import { type Answered, ask, post } from '#tests/support/ask.ts'
import { eventually } from '#tests/support/eventually.ts'
import { testedApp } from '#tests/support/started-app.ts'

/** Something that a worker thread works out. */
const FIT = {
  design: {
    units: 'mm',
    balls: { count: 12, diameter: 16, material: 'glass', standardDeviation: 0.1 },
    bore: 12,
    ballGap: 0.8,
  },
  ring: 'outer',
  readings: [{ kind: 'last-ball-opening', value: 12, graduation: 0.5 }],
}

const reckon = (at: string): Promise<Answered> => post(`${at}/v1/fit-correction`, FIT)

/** Tells of every worker thread that is started from now on. */
function onThread(tell: (worker: Worker) => void): void {
  process.on('worker', tell)
  onTestFinished(() => {
    process.off('worker', tell)
  })
}

test('a thread that ends in the midst of a task is replaced, and the task run once more: its caller hears nothing of it', async () => {
  const started = new Set<Worker>()
  onThread((worker) => {
    started.add(worker)
    worker.once('exit', () => started.delete(worker))
  })
  const app = await testedApp()
  const at = await app.listen({ host: '127.0.0.1', port: 0 })
  const whole = await reckon(at)
  expect(whole.status).toBe(200)

  // The task may be over before its thread is: then it is tried again.
  while (app.taskLoad().lost === 0) {
    const answers = [reckon(at), reckon(at), reckon(at)]
    await eventually(() => expect(app.taskLoad().running).toBeGreaterThan(0))
    await Promise.all([...started].map((worker) => worker.terminate()))
    for (const answer of await Promise.all(answers)) expect(answer).toMatchObject({ status: 200, text: whole.text })
  }
  expect((await ask(`${at}/metrics`)).text).toMatch(/^racewright_workers_lost_total [1-9]/m)
})

test('a thread that ends with nothing to do is no one’s loss', async () => {
  const started: Worker[] = []
  onThread((worker) => started.push(worker))
  const app = await testedApp()
  const at = await app.listen({ host: '127.0.0.1', port: 0 })
  expect((await reckon(at)).status).toBe(200)
  for (const worker of started) await worker.terminate()
  expect((await reckon(at)).status).toBe(200)
  expect(app.taskLoad()).toMatchObject({ lost: 0, done: 2, running: 0, waiting: { quick: 0, long: 0 } })
})

test('threads that end before they have begun leave nobody waiting', async () => {
  let toEnd = 3
  const app = await testedApp()
  const at = await app.listen({ host: '127.0.0.1', port: 0 })
  onThread((worker) => {
    if (toEnd > 0) void worker.terminate()
    toEnd -= 1
  })
  const answers = await Promise.all(Array.from({ length: 6 }, () => reckon(at)))
  expect(answers.map(({ status }) => status)).toContain(200)
  expect(toEnd).toBeLessThanOrEqual(0)
})
