import { expect, test } from 'vitest'
import { ask, post } from '#tests/support/ask.ts'
import { eventually } from '#tests/support/eventually.ts'
import { BUG_BORE, PROBE, probeRoute } from '#tests/support/probe-route.ts'
import { startedApp } from '#tests/support/started-app.ts'

const LEVEL = { debug: 20, info: 30, error: 50 }

type Line = Readonly<Record<string, unknown>>

/** The lines about answers, each written when its answer has left: a caller may be a little ahead of them. */
async function linesOf(logLines: readonly string[], count: number): Promise<readonly Line[]> {
  const lines = () => logLines.map((line): Line => JSON.parse(line)).filter(({ reqId }) => reqId !== undefined)
  await eventually(() => expect(lines().length).toBeGreaterThanOrEqual(count))
  return lines()
}

test('an answer that was refused has one line, without anything of what was asked', async () => {
  const logLines: string[] = []
  const at = await startedApp({ route: probeRoute, logLines })
  await ask(`${at}/test/probe?units=mm`)
  await post(`${at}/test/probe?secret=1`, { ...PROBE, bore: -77 }, { 'x-request-id': 'shop.7_a-1' })
  await post(`${at}/test/probe`, PROBE)

  const [query, body, ...more] = await linesOf(logLines, 2)
  expect(query).toMatchObject({ level: LEVEL.info, method: 'GET', route: '/test/probe', status: 400, msg: 'answered' })
  expect(body).toMatchObject({
    level: LEVEL.info,
    method: 'POST',
    status: 400,
    reqId: 'shop.7_a-1',
    ms: expect.any(Number),
  })
  expect(more).toEqual([])
  expect(logLines.join('')).not.toMatch(/secret|-77|units|"body"|"headers"|127\.0\.0\.1:\d+"[,}].*remote/)
})

test('at level debug every answer has a line', async () => {
  const logLines: string[] = []
  const at = await startedApp({ route: probeRoute, logLines, config: { logLevel: 'debug' } })
  await post(`${at}/test/probe`, PROBE)
  expect((await linesOf(logLines, 1))[0]).toMatchObject({ level: LEVEL.debug, status: 200, route: '/test/probe' })
})

test('a bug of ours has its stack in the log', async () => {
  const logLines: string[] = []
  const at = await startedApp({ route: probeRoute, logLines })
  await post(`${at}/test/probe`, { ...PROBE, bore: BUG_BORE })
  const [bug, answer] = await linesOf(logLines, 2)
  expect(bug).toMatchObject({
    level: LEVEL.error,
    err: { type: 'RangeError', stack: expect.stringContaining('probe') },
  })
  expect(answer).toMatchObject({ level: LEVEL.error, status: 500 })
})

test('a path that is none is not written down', async () => {
  const logLines: string[] = []
  const at = await startedApp({ logLines })
  await ask(`${at}/my/secret/path`)
  expect((await linesOf(logLines, 1))[0]).toMatchObject({ route: null, status: 404 })
  expect(logLines.join('')).not.toContain('secret')
})

test.each([
  ['a plain word comes back', 'job-7.a_B', 'job-7.a_B'],
  ['a long one does not', 'x'.repeat(65), /^\w{1,8}-\d+$/],
  ['nor one that would break a line', 'a b"}', /^\w{1,8}-\d+$/],
  ['nor an empty one', '', /^\w{1,8}-\d+$/],
])('x-request-id: %s', async (_name, sent, received) => {
  const at = await startedApp()
  expect((await ask(`${at}/health/live`, { headers: { 'x-request-id': sent } })).headers['x-request-id']).toMatch(
    received,
  )
})

test('every request has an id of its own', async () => {
  const at = await startedApp()
  const ids = await Promise.all(
    Array.from({ length: 20 }, async () => (await ask(`${at}/health/live`)).headers['x-request-id']),
  )
  expect(new Set(ids).size).toBe(20)
})
