import { connect } from 'node:net'
import { setTimeout as sleep } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { ask } from '#tests/support/ask.ts'
import { eventually } from '#tests/support/eventually.ts'
import { testedApp } from '#tests/support/started-app.ts'

test('whoever asks for the page first may leave: the others who wait for it get it', async () => {
  const app = await testedApp()
  const at = await app.listen({ host: '127.0.0.1', port: 0 })
  const first = connect(Number(new URL(at).port), '127.0.0.1')
  first.write('GET / HTTP/1.1\r\nhost: a\r\n\r\n')
  await eventually(() => expect(app.taskLoad().running).toBeGreaterThan(0), 1)
  const others = Promise.all(['/', '/', '/service-worker.js'].map((path) => ask(at + path)))
  await sleep(5)
  first.destroy()
  expect((await others).map(({ status }) => status)).toEqual([200, 200, 200])
  expect(app.taskLoad()).toMatchObject({ done: 3, stopped: 0, lost: 0 })
})
