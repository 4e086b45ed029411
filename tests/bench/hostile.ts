import { fork } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { Client } from 'undici'
import { OPERATIONS } from '#tests/fuzz/document.ts'
import { SMALL_SELECTION } from '#tests/support/thread-work.ts'
import { headersOf, posted, type Question } from './question.ts'
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
const QUERY = 'units=mm&balls.count=12&balls.diameter=16&bore=12'

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

type Times = { readonly ms: number[]; readonly statuses: Map<string, number>; readonly byPath: Map<string, number[]> }

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
      const attack = isHostile ? hostileCaller(server.address) : undefined
      await sleep(SETTLE_MS)
      state.isCounted = true
      await sleep(TURN_MS)
      state.isCounted = false
      if (attack !== undefined) console.log(`hostile: ${await attack.end()}`)
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
      const [asked = ''] = path.split('?', 1)
      const ms = performance.now() - before
      to.ms.push(ms)
      const each = to.byPath.get(asked) ?? []
      each.push(ms)
      to.byPath.set(asked, each)
      const status = answer?.statusCode ?? 0
      const what = status === 200 ? '200' : `${status} at ${asked}`
      to.statuses.set(what, (to.statuses.get(what) ?? 0) + 1)
    }
    await sleep(PAUSE_MS)
  }
  await client.close()
}

/** Starts it; its end says what it has sent. */
function hostileCaller(address: string): { readonly end: () => Promise<string> } {
  const caller = fork(join(import.meta.dirname, 'hostile-caller.ts'))
  caller.send(address)
  return {
    end: async () => {
      caller.send('end')
      const [said] = await once(caller, 'message')
      return String(said)
    },
  }
}

function timesOf(): Times {
  return { ms: [], statuses: new Map(), byPath: new Map() }
}

function report(
  { without, with: hostile }: { readonly without: Times; readonly with: Times },
  memory: readonly number[],
): void {
  const row = (what: string, { ms, statuses, byPath }: Times): void => {
    const counts = [...statuses].map(([status, count]) => `${status}: ${count}`).join(', ')
    console.log(`${what} p50 ${at(ms, 0.5).toFixed(1)} ms, p99 ${at(ms, 0.99).toFixed(1)} ms; ${counts}`)
    for (const [path, each] of byPath)
      console.log(`  ${path} p50 ${at(each, 0.5).toFixed(1)} ms, p99 ${at(each, 0.99).toFixed(1)} ms`)
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
  const failed = [...without.statuses.keys(), ...hostile.statuses.keys()].filter((what) => what !== '200')
  process.exitCode = ratio <= MOST_RATIO && growth <= MOST_GROWTH && failed.length === 0 ? 0 : 1
}

function at(values: readonly number[], share: number): number {
  const sorted = values.toSorted((one, other) => one - other)
  return sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN
}

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
