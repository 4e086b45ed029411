import { readdirSync, readFileSync } from 'node:fs'
import { getPriority } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { startThreads } from '#src/workers/threads.ts'
import { eventually } from '#tests/support/eventually.ts'

test('a thread whose task never ends is stopped, and another does the next task', async () => {
  const filename = join(import.meta.dirname, '../../support/endless-thread.ts')
  const threads = await startThreads({ filename, most: { any: 1, quick: 1 }, complain: () => {} })
  onTestFinished(() => threads.destroy())
  const going = new AbortController().signal
  const next = () => threads.run('browserScript', { root: '', entry: '' }, 'any', going)
  expect((await next()).result).toBe('browserScript')
  const stop = new AbortController()
  const endless = threads.run('pdf', [], 'any', stop.signal)
  const waiting = next()
  stop.abort()
  await expect(endless).rejects.toThrow()
  expect((await waiting).result).toBe('browserScript')
  await eventually(() => expect(threads.count()).toBe(2))
})

test.runIf(process.platform === 'linux')('threads of large answers give way to all others', async () => {
  const filename = join(import.meta.dirname, '../../../src/workers/thread.ts')
  const threads = await startThreads({ filename, most: { any: 1, quick: 1 }, complain: () => {} })
  onTestFinished(() => threads.destroy())
  expect(givingWay()).toBe(0)
  await threads.run('pdf', [], 'any', new AbortController().signal)
  expect(givingWay()).toBe(1)
})

/** Threads of this process whose priority is lower than usual: field 19 of proc_pid_stat(5), after a name in brackets. */
const givingWay = (): number =>
  readdirSync('/proc/self/task')
    .map((id) => readFileSync(`/proc/self/task/${id}/stat`, 'utf8').split(') ')[1]?.split(' ')[16])
    .filter((nice) => Number(nice) > getPriority()).length
