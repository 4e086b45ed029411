import { connect, type Socket } from 'node:net'
import { setPriority } from 'node:os'
import { setTimeout as sleep } from 'node:timers/promises'
import { Pool } from 'undici'
import { LARGE_SEARCH } from '#tests/support/thread-work.ts'
import { headersOf, posted, type Question } from './question.ts'

/*
 * One hostile caller, in a process of its own, so that what it does costs the other callers nothing. It begins when it is told
 * the address of the service, and ends at the next message, with what it has sent and how that was answered.
 */

const DESIGN = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }
const LIST = `[${Array.from({ length: 40_000 }, () => '{}').join(',')}]`
const WRONG_IN_BULK: readonly Question[] = [
  {
    method: 'POST',
    path: '/v1/fit-correction',
    body: `{"design":${JSON.stringify(DESIGN)},"ring":"outer","readings":${LIST}}`,
  },
  { method: 'POST', path: '/v1/design-search', body: `{"units":"mm","balls":${LIST}}` },
  {
    method: 'POST',
    path: '/v1/design',
    body: `{"units":"mm",${Array.from({ length: 1_900 }, (_, index) => `"name${index}":{}`).join(',')}}`,
  },
  { method: 'POST', path: '/v1/design', body: '['.repeat(120_000) },
]

/** All that one hostile caller does at the same time, until it is told to end. */
class Attack {
  #isOver = false
  readonly #idle: Socket[] = []
  readonly #sent = new Map<string, number>()
  readonly #lanes: readonly Promise<void>[]

  constructor(address: string) {
    this.#lanes = [this.#bulk(address), this.#searches(address), this.#floods(address), this.#idleConnections(address)]
  }

  async end(): Promise<void> {
    this.#isOver = true
    for (const socket of this.#idle) socket.destroy()
    await Promise.all(this.#lanes)
  }

  said(): string {
    return [...this.#sent].map(([what, count]) => `${what} ${count}`).join(', ')
  }

  #note(what: string): void {
    this.#sent.set(what, (this.#sent.get(what) ?? 0) + 1)
  }

  async #asks(address: string, questions: readonly Question[], what: string, pauseMs: number): Promise<void> {
    const pool = new Pool(address, { connections: 1 })
    for (let turn = 0; !this.#isOver; turn += 1) {
      const { method, path, body = '' } = questions[turn % questions.length] ?? { method: 'GET', path: '/' }
      const answer = await pool
        .request({ method, path, body, headers: headersOf('198.51.100.1'), signal: AbortSignal.timeout(15_000) })
        .catch(() => undefined)
      await answer?.body.dump().catch(() => undefined)
      this.#note(`${what} ${answer?.statusCode ?? 'cut'}:`)
      await sleep(pauseMs)
    }
    await pool.destroy()
  }

  async #bulk(address: string): Promise<void> {
    await Promise.all([this.#asks(address, WRONG_IN_BULK, 'bulk', 10), this.#asks(address, WRONG_IN_BULK, 'bulk', 10)])
  }

  async #searches(address: string): Promise<void> {
    const lanes = Array.from({ length: 6 }, (_, index) =>
      this.#asks(address, [posted('/v1/design-search', { ...LARGE_SEARCH, offset: index })], 'search', 100),
    )
    await Promise.all(lanes)
  }

  /** A packet of thousands of requests, one connection after the other. */
  async #floods(address: string): Promise<void> {
    const port = Number(new URL(address).port)
    const packets = ['GET /%zz', 'GET /v1/sources', 'GET /health/live'].map((line) =>
      `${line} HTTP/1.1\r\nhost: a\r\n\r\n`.repeat(10_000),
    )
    for (let turn = 0; !this.#isOver; turn += 1) {
      const socket = connect(port, '127.0.0.1')
      socket.on('error', () => {}).resume()
      socket.write(packets[turn % packets.length] ?? '')
      await Promise.race([new Promise((resolve) => socket.once('close', resolve)), sleep(2_000)])
      socket.destroy()
      this.#note('floods')
      await sleep(100)
    }
  }

  /** Connections that send half a request, or nothing. */
  async #idleConnections(address: string): Promise<void> {
    const port = Number(new URL(address).port)
    for (let count = 0; !this.#isOver && count < 1_500; count += 1) {
      const socket = connect(port, '127.0.0.1')
      socket.on('error', () => {})
      if (count % 2 === 0) socket.write('POST /v1/design HTTP/1.1\r\nhost: a\r\n')
      this.#idle.push(socket)
      this.#note('connections')
      await sleep(5)
    }
  }
}

// It stands for a machine of its own: what it takes of the processor is not to be taken from the service.
setPriority(10)
process.once('message', (address: string) => {
  const attack = new Attack(address)
  process.once('message', async () => {
    await attack.end()
    process.send?.(attack.said())
    process.disconnect?.()
  })
})
