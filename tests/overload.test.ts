import { expect, test } from 'vitest'
import { OPERATIONS } from '#tests/fuzz/document.ts'
import { eventually } from '#tests/support/eventually.ts'
import { ask, post, problemIn } from './support/ask.ts'
import { ended, start } from './support/started-process.ts'

/** What goes to worker threads: the first example of each in the document. */
const HEAVY = ['toleranceCheck', 'fitCorrection', 'seasonalFit', 'designSearch', 'ballSelection'].map((id) => {
  const operation = OPERATIONS.find(({ operationId }) => operationId === id)
  if (operation?.examples[0] === undefined) throw new Error(`the document shows no example of ${id}`)
  return { path: operation.path, input: operation.examples[0] }
})
const DESIGN = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }

/** Twice as many at once as one worker thread works for and lets wait, and some who want little. */
const HEAVY_CALLERS = 34
const LIGHT_CALLERS = 8
/** The load ends when so many have been turned away, worked out, and answered at once. */
const ENOUGH = { refused: 300, workedOut: 20, light: 200 }

test('a mixed load beyond the limit: light requests are answered, heavy ones worked out or turned away, and afterwards all is as before', async () => {
  const started = await start({ WORKER_THREADS: '1', LOG_LEVEL: 'warn' })
  const at = `http://127.0.0.1:${started.port}`
  await eventually(async () => expect((await ask(`${at}/health/ready`)).status).toBe(200))
  const inTurn = async () => {
    const texts: string[] = []
    for (const { path, input } of HEAVY) {
      const { status, text } = await post(at + path, input)
      expect(status, path).not.toBe(503)
      texts.push(text)
    }
    return texts
  }
  const before = await inTurn()

  const counted = { refused: 0, workedOut: 0, light: 0 }
  const isOver = () =>
    counted.refused >= ENOUGH.refused && counted.workedOut >= ENOUGH.workedOut && counted.light >= ENOUGH.light
  const heavyCaller = async (_: unknown, index: number): Promise<void> => {
    for (let turn = index % HEAVY.length; !isOver(); turn = (turn + 1) % HEAVY.length) {
      const answer = await post(at + HEAVY[turn]?.path, HEAVY[turn]?.input)
      if (answer.status === 503) {
        problemIn(answer, 503)
        expect(answer.headers['retry-after']).toBe('1')
        counted.refused += 1
      } else {
        expect(answer.text).toBe(before[turn])
        counted.workedOut += 1
      }
    }
  }
  const lightCaller = async (): Promise<void> => {
    while (!isOver()) {
      expect((await post(`${at}/v1/design`, DESIGN)).status).toBe(200)
      counted.light += 1
    }
  }
  await Promise.all([
    ...Array.from({ length: HEAVY_CALLERS }, heavyCaller),
    ...Array.from({ length: LIGHT_CALLERS }, lightCaller),
  ])

  expect(await inTurn()).toEqual(before)
  expect((await ask(`${at}/health/ready`)).status).toBe(200)
  const { text: metrics } = await ask(`${at}/metrics`)
  expect(metrics).toMatch(/^racewright_tasks_waiting\{lane="quick"\} 0$/m)
  expect(metrics).toMatch(/^racewright_tasks_waiting\{lane="long"\} 0$/m)
  const refusals = [...metrics.matchAll(/^racewright_tasks_refused_total\{.*\} (\d+)$/gm)].map(([, count]) =>
    Number(count),
  )
  expect(refusals.reduce((sum, count) => sum + count, 0)).toBe(counted.refused)
  started.process.kill('SIGTERM')
  expect(await ended(started)).toBe(0)
  // To turn someone away is no fault of the service that anyone should be woken for: a warning each, and nothing worse.
  const lines = started.said.out.trim().split('\n')
  expect(lines).toHaveLength(counted.refused)
  for (const line of lines) expect(JSON.parse(line)).toMatchObject({ level: 40, status: 503, msg: 'answered' })
  expect(started.said.err).toBe('')
})
