import { join } from 'node:path'
import { expect, onTestFinished, test, vi } from 'vitest'
import { startThreads } from '#src/workers/threads.ts'

test('a thread whose task never ends is stopped, and another does the next task', async () => {
  const filename = join(import.meta.dirname, '../../support/endless-thread.ts')
  const threads = await startThreads({ filename, most: 1, complain: () => {} })
  onTestFinished(() => threads.destroy())
  const going = new AbortController().signal
  const next = () => threads.run('browserScript', { root: '', entry: '' }, going)
  expect((await next()).result).toBe('browserScript')
  const stop = new AbortController()
  const endless = threads.run('pdf', [], stop.signal)
  const waiting = next()
  stop.abort()
  await expect(endless).rejects.toThrow()
  expect((await waiting).result).toBe('browserScript')
  await vi.waitFor(() => expect(threads.count()).toBe(1))
})
