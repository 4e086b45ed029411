import { connect, type Socket } from 'node:net'
import { setTimeout as sleep } from 'node:timers/promises'
import { Client, Pool } from 'undici'
import { OPERATIONS } from '#tests/fuzz/document.ts'
import { residentMb, type Started, start, stop, stopAll } from './started.ts'

/*
 * What one hostile caller does to the others: `node tests/bench/hostile.ts MINUTES`. Usual callers ask all the while; the hostile
 * one comes and goes by turns, so that a machine that is busy with something else is so in both. Printed are the others' p99
 * with it and without it, their ratio, and the memory of the service over time.
 */
const MINUTES = Number(process.argv[2] ?? 1)

/** With and without the hostile caller, in turn. */
const TURN_MS = 10_000
/** What the last turn left behind is not part of this one. */
const SETTLE_MS = 1_500
/** Usual callers, each of which asks for its next answer so long after the last. */
const CALLERS = 6
const PAUSE_MS = 25
const MEMORY_EVERY_MS = 1_000
/** The marks: of p99 with the hostile caller to p99 without it, and of memory in the last third of a run to that in the second. */
const MOST_RATIO = 3
const MOST_GROWTH = 1.25

const DESIGN = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }
const SMALL_SELECTION = {
  design: DESIGN,
  measured: Array.from({ length: 30 }, (_, index) => 16 + 0.1 * Math.sin(index)),
  goal: 'close-groove',
}
const QUERY = 'units=mm&balls.count=12&balls.diameter=16&bore=12'

type Question = { readonly method: 'GET' | 'POST'; readonly path: string; readonly body?: string }
const posted = (path: string, input: unknown): Question => ({ method: 'POST', path, body: JSON.stringify(input) })
const exampleOf = (operation: string): unknown =>
  OPERATIONS.find(({ operationId }) => operationId === operation)?.examples[0]

/** What others ask: light questions, small ones for the worker threads, a probe. */
const USUAL: readonly Question[] = [
  posted('/v1/design', DESIGN),
  posted('/v1/design', { ...DESIGN, bore: 10 }),
  { method: 'GET', path: `/v1/drawings/assembly.svg?${QUERY}` },
  posted('/v1/ball-selection', SMALL_SELECTION),
  posted('/v1/load-check', exampleOf('loadCheck')),
  { method: 'GET', path: '/health/ready' },
]

const WOOD = { species: 'maple-sugar' }
const MONTHS = Array.from({ length: 24 }, (_, index) => ({
  name: `month ${index + 1}`,
  temperature: 15,
  relativeHumidity: Math.round(50 + 3 * Math.sin(index)),
}))
const LARGE_SEARCH = {
  units: 'mm',
  outsideDiameter: { most: 2000 },
  bore: { least: 8, most: 20, step: 2 },
  balls: Array.from({ length: 24 }, (_, index) => ({ diameter: 10 + index })),
  counts: { least: 10, most: 60 },
  show: 'all',
  year: {
    woods: { outerRing: WOOD, innerRing: WOOD, balls: WOOD },
    climate: { today: { temperature: 20, relativeHumidity: 50 }, months: MONTHS },
  },
}

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

/** The service cannot tell the hostile caller from the others by its address unless a proxy says it: see TRUST_PROXY. */
const headersOf = (caller: string) => ({ 'content-type': 'application/json', 'x-forwarded-for': caller })

type Times = { readonly ms: number[]; readonly statuses: Map<number, number> }

try {
  const server = await start(
    { arguments: ['src/server.ts'], environment: { LOG_LEVEL: 'silent', TRUST_PROXY: 'true' } },
    '/health/ready',
  )
  await measure(server)
  await stop(server)
} finally {
  stopAll()
}

async function measure(server: Started): Promise<void> {
  const state = { isHostile: false, isOver: false, isCounted: false }
  const times = { without: timesOf(), with: timesOf() }
  const memory: number[] = []
  const looking = setInterval(() => memory.push(residentMb(server)), MEMORY_EVERY_MS)
  const callers = Array.from({ length: CALLERS }, (_, index) => usualCaller(server, index, state, times))
  const before = performance.now()
  while (performance.now() - before < MINUTES * 60_000) {
    for (const isHostile of [false, true]) {
      state.isHostile = isHostile
      const attack = isHostile ? new Attack(server) : undefined
      await sleep(SETTLE_MS)
      state.isCounted = true
      await sleep(TURN_MS)
      state.isCounted = false
      await attack?.end()
      if (attack !== undefined) console.log(`hostile: ${attack.said()}`)
    }
  }
  state.isOver = true
  clearInterval(looking)
  await Promise.all(callers)
  report(times, memory)
}

/** One usual caller on a connection of its own. Of the answers counts how long they took, and that they are what was asked for. */
async function usualCaller(
  { address }: Started,
  index: number,
  state: { isHostile: boolean; isOver: boolean; isCounted: boolean },
  times: { readonly without: Times; readonly with: Times },
): Promise<void> {
  const client = new Client(address)
  for (let turn = index; !state.isOver; turn += 1) {
    const { method, path, body } = USUAL[turn % USUAL.length] ?? { method: 'GET', path: '/health/live' }
    const to = state.isHostile ? times.with : times.without
    const isCounted = state.isCounted
    const before = performance.now()
    const answer = await client
      .request({ method, path, headers: headersOf(`192.0.2.${10 + index}`), ...(body !== undefined && { body }) })
      .catch(() => undefined)
    await answer?.body.dump()
    if (isCounted && state.isCounted) {
      to.ms.push(performance.now() - before)
      const status = answer?.statusCode ?? 0
      to.statuses.set(status, (to.statuses.get(status) ?? 0) + 1)
    }
    await sleep(PAUSE_MS)
  }
  await client.close()
}

/** All that one hostile caller does at the same time, until it is told to end. */
class Attack {
  #isOver = false
  readonly #idle: Socket[] = []
  readonly #sent = new Map<string, number>()
  readonly #lanes: readonly Promise<void>[]

  constructor(server: Started) {
    this.#lanes = [this.#bulk(server), this.#searches(server), this.#floods(server), this.#idleConnections(server)]
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

  async #asks({ address }: Started, questions: readonly Question[], what: string, pauseMs: number): Promise<void> {
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

  async #bulk(server: Started): Promise<void> {
    await Promise.all([this.#asks(server, WRONG_IN_BULK, 'bulk', 10), this.#asks(server, WRONG_IN_BULK, 'bulk', 10)])
  }

  async #searches(server: Started): Promise<void> {
    const lanes = Array.from({ length: 6 }, (_, index) =>
      this.#asks(server, [posted('/v1/design-search', { ...LARGE_SEARCH, offset: index })], 'search', 100),
    )
    await Promise.all(lanes)
  }

  /** A packet of thousands of requests, one connection after the other. */
  async #floods({ address }: Started): Promise<void> {
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
  async #idleConnections({ address }: Started): Promise<void> {
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

function timesOf(): Times {
  return { ms: [], statuses: new Map() }
}

function report(
  { without, with: hostile }: { readonly without: Times; readonly with: Times },
  memory: readonly number[],
): void {
  const row = (what: string, { ms, statuses }: Times): void => {
    const counts = [...statuses].map(([status, count]) => `${status}: ${count}`).join(', ')
    console.log(`${what} p50 ${at(ms, 0.5).toFixed(1)} ms, p99 ${at(ms, 0.99).toFixed(1)} ms; ${counts}`)
  }
  row('others, without:', without)
  row('others, with:   ', hostile)
  const ratio = at(hostile.ms, 0.99) / at(without.ms, 0.99)
  console.log(`p99 with / without: ${ratio.toFixed(2)} (mark ${MOST_RATIO}, ${ratio <= MOST_RATIO ? 'met' : 'missed'})`)
  const thirds = [0, 1, 2].map((third) =>
    at(memory.slice((third * memory.length) / 3, ((third + 1) * memory.length) / 3), 0.5),
  )
  const [, second = Number.NaN, last = Number.NaN] = thirds
  const growth = last / second
  console.log(
    `memory in thirds: ${thirds.map((mb) => mb.toFixed(0)).join(', ')} MB, most ${Math.max(...memory).toFixed(0)} MB; ` +
      `last / second ${growth.toFixed(2)} (mark ${MOST_GROWTH}, ${growth <= MOST_GROWTH ? 'met' : 'missed'})`,
  )
  const failed = [...without.statuses.keys(), ...hostile.statuses.keys()].filter(
    (status) => status === 0 || status >= 500,
  )
  if (failed.length > 0) console.log(`others were also answered ${failed.join(', ')}`)
  process.exitCode = ratio <= MOST_RATIO && growth <= MOST_GROWTH && failed.length === 0 ? 0 : 1
}

function at(values: readonly number[], share: number): number {
  const sorted = values.toSorted((one, other) => one - other)
  return sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN
}
