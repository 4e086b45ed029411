import { request } from 'undici'
import { expect } from 'vitest'
import { OPERATIONS } from '#tests/fuzz/document.ts'
import { post } from '#tests/support/ask.ts'
import { eventually } from '#tests/support/eventually.ts'
import { ended, listening, type Started, start } from '#tests/support/started-process.ts'
import { testsThatNeed } from './needed.ts'
import { proxyBefore } from './stock-proxy.ts'

const { describe, test } = testsThatNeed('haproxy')

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
  })

  test('know each other’s entity tags, so a cache may ask either', async () => {
    const [one, other] = await twoReplicas()
    const path = '/v1/design?units=mm&balls.count=12&balls.diameter=16&bore=12'
    const first = await request(addressOf(one) + path)
    const headers = { 'if-none-match': String(first.headers['etag']) }
    await first.body.dump()
    expect((await request(addressOf(other) + path, { headers })).statusCode).toBe(304)
  })

  test('behind a stock proxy, one is killed, started anew, told to stop and started anew under load: no request fails', async () => {
    const [kept, changing] = await twoReplicas()
    const proxy = await proxyBefore([kept.port, changing.port])
    const body = JSON.stringify({ units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 })
    const answers = new Set<string>()
    let answered = 0
    let isOver = false
    const caller = async (): Promise<void> => {
      while (!isOver) {
        const headers = { 'content-type': 'application/json' }
        const answer = await request(`${proxy}/v1/design`, { method: 'POST', headers, body })
        answers.add(`${answer.statusCode} ${await answer.body.text()}`)
        answered += 1
      }
    }
    const load = Promise.all(Array.from({ length: 16 }, caller))
    const more = () => {
      const from = answered
      return eventually(() => expect(answered).toBeGreaterThan(from + 300))
    }
    const startAnew = async (signal: 'SIGKILL' | 'SIGTERM', replica: Started): Promise<Started> => {
      replica.process.kill(signal)
      await ended(replica)
      await more()
      const anew = await start({ PORT: String(changing.port) })
      await listening(anew)
      // By the time that it has answered some, the proxy has seen it.
      await eventually(async () => expect(await designsOf(changing)).toBeGreaterThan(10))
      return anew
    }
    await more()
    await startAnew('SIGTERM', await startAnew('SIGKILL', changing))
    isOver = true
    await load
    expect([...answers].map((each) => each.slice(0, 300))).toHaveLength(1)
    expect([...answers][0]).toMatch(/^200 /)
    expect(await designsOf(kept)).toBeGreaterThan(10)
  })
})

/** How many designs a replica has answered, by its own count. */
async function designsOf({ port }: Pick<Started, 'port'>): Promise<number> {
  const { body } = await request(`http://127.0.0.1:${port}/metrics`)
  const line = /_count\{[^}]*route="\/v1\/design"[^}]*\} (\d+)/.exec(await body.text())
  return Number(line?.[1] ?? 0)
}
