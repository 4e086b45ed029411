import { expect, test } from 'vitest'
import { ask, post, problemIn } from '#tests/support/ask.ts'
import { eventually } from '#tests/support/eventually.ts'
import { PROBE, probeRoute } from '#tests/support/probe-route.ts'
import { startedApp } from '#tests/support/started-app.ts'

/** The samples of the text format: a name with its labels, and a number. */
async function samplesOf(at: string): Promise<ReadonlyMap<string, number>> {
  const { status, headers, text } = await ask(`${at}/metrics`)
  expect(status).toBe(200)
  expect(headers).toMatchObject({
    'content-type': 'text/plain; version=0.0.4; charset=utf-8',
    'cache-control': 'no-store',
  })
  const lines = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'))
  return new Map(
    lines.map((line) => {
      const [, name = '', value = ''] = /^(\w+(?:\{.*\})?) (\S+)$/.exec(line) ?? []
      expect(name, line).not.toBe('')
      return [name, Number(value)] as const
    }),
  )
}

const count = (method: string, route: string, status: number): string =>
  `http_request_duration_seconds_count{method="${method}",route="${route}",status="${status}"}`

test('every answer is counted by the template of its path, never by what was asked', async () => {
  const at = await startedApp({ route: probeRoute })
  for (const bore of [1, 2, 3]) await post(`${at}/test/probe`, { ...PROBE, bore })
  await post(`${at}/test/probe`, {})
  for (const view of ['assembly', 'gauges']) await ask(`${at}/test/${view}.svg`)
  for (const path of ['/wheels', '/secret/path', '/%zz']) await ask(`${at}${path}`)

  await eventually(async () => {
    const samples = await samplesOf(at)
    expect(samples.get(count('POST', '/test/probe', 200))).toBe(3)
    expect(samples.get(count('POST', '/test/probe', 400))).toBe(1)
    expect(samples.get(count('GET', '/test/:view.:format', 200))).toBe(2)
    expect(samples.get(count('GET', 'none', 404))).toBe(2)
    expect([...samples.keys()].join('\n')).not.toMatch(/wheels|secret|assembly/)
  })
})

test('a histogram rises to its count, and its sum is the time that was taken', async () => {
  const at = await startedApp({ route: probeRoute })
  await ask(`${at}/test/slow`) // takes 400 ms
  await eventually(async () => {
    const samples = await samplesOf(at)
    const of = (what: string) => {
      const [, value] = [...samples].find(([name]) => name.includes('/test/slow') && name.includes(what)) ?? []
      return value
    }
    const ends = ['0.0005', '0.25', '0.5', '1', '2.5', '5', '10', '+Inf'].map((le) => of(`_bucket{le="${le}"`) ?? -1)
    expect(ends.slice(0, 2)).toEqual([0, 0])
    expect(ends).toEqual(ends.toSorted((a, b) => a - b))
    expect(ends.at(-1)).toBe(1)
    expect(of('_count{')).toBe(1)
    expect(of('_sum{')).toBeGreaterThan(0.39)
  })
})

const waitingIn = (lane: string) => `racewright_tasks_waiting{lane="${lane}"}`

test('worker threads, the queue before them and the event loop are told, Node’s version is not', async () => {
  const samples = await samplesOf(await startedApp())
  for (const name of ['racewright_worker_threads', 'racewright_tasks_running', waitingIn('quick'), waitingIn('long')])
    expect(samples.get(name), name).toBeGreaterThanOrEqual(0)
  expect([...samples.keys()]).toEqual(
    expect.arrayContaining([
      'racewright_tasks_done_total',
      'racewright_tasks_refused_total{reason="too-much-work"}',
      'racewright_tasks_refused_total{reason="busy"}',
      'racewright_tasks_refused_total{reason="displaced"}',
      'racewright_deadlines_missed_total',
      'racewright_work_estimated_seconds_total',
      'racewright_work_seconds_total',
      'racewright_workers_stopped_total',
      'racewright_workers_lost_total',
      'nodejs_eventloop_lag_p99_seconds',
    ]),
  )
  expect([...samples.keys()].join()).not.toMatch(/version/)
})

test('two services in one process count for themselves', async () => {
  const [one, other] = [await startedApp(), await startedApp()]
  await ask(`${one}/health/live`)
  await eventually(async () => expect((await samplesOf(one)).get(count('GET', '/health/live', 200))).toBe(1))
  expect((await samplesOf(other)).has(count('GET', '/health/live', 200))).toBe(false)
})

test('where it is not wanted, it is not there', async () => {
  problemIn(await ask(`${await startedApp({ config: { metrics: false } })}/metrics`), 404)
})
