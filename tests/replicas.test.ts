import { BalancedPool, interceptors, request } from 'undici'
import { describe, expect, onTestFinished, test, vi } from 'vitest'
import { OPERATIONS } from '#tests/fuzz/document.ts'
import { post } from './support/ask.ts'
import { ended, listening, type Started, start } from './support/started-process.ts'

const addressOf = ({ port }: Started): string => `http://127.0.0.1:${port}`

/** Two processes of the service, which know nothing of one another; one has a worker thread more. */
async function twoReplicas(): Promise<readonly [Started, Started]> {
  const replicas = [await start({ WORKER_THREADS: '1' }), await start({ WORKER_THREADS: '2' })] as const
  await Promise.all(replicas.map(listening))
  return replicas
}

describe('two replicas', () => {
  test('give the same bytes for every example', async () => {
    const [one, other] = await twoReplicas()
    let compared = 0
    for (const { path, examples } of OPERATIONS.filter(({ method }) => method === 'POST')) {
      for (const input of examples) {
        const [here, there] = [await post(addressOf(one) + path, input), await post(addressOf(other) + path, input)]
        expect(here.text.length, path).toBeGreaterThan(0)
        expect(there, path).toMatchObject({ status: here.status, text: here.text })
        compared += 1
      }
    }
    expect(compared).toBeGreaterThan(5)
  }, 60_000)

  test('know each other’s entity tags, so a cache may ask either', async () => {
    const [one, other] = await twoReplicas()
    const path = '/v1/design?units=mm&balls.count=12&balls.diameter=16&bore=12'
    const first = await request(addressOf(one) + path)
    const headers = { 'if-none-match': String(first.headers['etag']) }
    await first.body.dump()
    expect((await request(addressOf(other) + path, { headers })).statusCode).toBe(304)
  })

  test('one killed and started anew under load: who asks the other instead sees no request fail', async () => {
    const [kept, doomed] = await twoReplicas()
    const balanced = new BalancedPool([addressOf(kept), addressOf(doomed)], { connections: 8 })
    onTestFinished(() => balanced.destroy())
    // A question may be asked twice, by POST too: its answer depends on nothing but itself.
    const retrying = balanced.compose(
      interceptors.retry({
        methods: ['GET', 'POST'],
        maxRetries: 20,
        minTimeout: 20,
        maxTimeout: 200,
        errorCodes: ['ECONNRESET', 'ECONNREFUSED', 'EPIPE', 'UND_ERR_SOCKET'],
      }),
    )
    const body = JSON.stringify({ units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 })
    const answers = new Set<string>()
    let answered = 0
    let isOver = false
    const caller = async (): Promise<void> => {
      while (!isOver) {
        const answer = await retrying.request({
          origin: addressOf(kept),
          path: '/v1/design',
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body,
        })
        answers.add(`${answer.statusCode} ${await answer.body.text()}`)
        answered += 1
      }
    }
    const load = Promise.all(Array.from({ length: 16 }, caller))
    const more = (count: number) => {
      const from = answered
      return vi.waitFor(() => expect(answered).toBeGreaterThan(from + count), { timeout: 20_000 })
    }
    await more(200)
    doomed.process.kill('SIGKILL')
    await ended(doomed)
    await more(200)
    const revived = await start({ PORT: String(doomed.port) })
    await listening(revived)
    await more(200)
    isOver = true
    await load
    expect(answers.size).toBe(1)
    expect([...answers][0]).toMatch(/^200 /)
  }, 90_000)
})
