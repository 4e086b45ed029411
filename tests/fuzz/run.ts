import fc from 'fast-check'
import { Pool } from 'undici'
import { residentMb, type Started, start, stop, stopAll } from '#tests/bench/started.ts'
import { attemptsAt } from './attempt.ts'
import { OPERATIONS, type Operation } from './document.ts'
import { floodsAt } from './floods.ts'
import type { FuzzRequest } from './requests.ts'

/*
 * A running server under requests that nobody would send: `npm run fuzz`, or `npm run fuzz -- REQUESTS SEED OPERATION`.
 * Each operation has a lane of its own, so that a slow one does not hold up the others. What fails is shrunk to its least.
 */
const [requests = '100000', seedText = '1', only] = process.argv.slice(2)
const LEAST = Number(requests)
const SEED = Number(seedText)

/** So many are drawn from one seed; a lane goes on with the next after what fails. */
const ROUND = 250
/** An answer later than this is a fault, on a machine that is busy with nothing else. */
const DEADLINE_MS = 5_000
/** A flood is up to a hundred answers, one after the other. */
const FLOOD_DEADLINE_MS = 30_000
/** To shrink what is late takes a deadline for each step. */
const MOST_SHRINKING_MS = 60_000
/** So many to each round of requests. */
const FLOODS = 3
/** How often the service is asked for its health; that too is answered in time, whatever else is sent. */
const PROBE_EVERY_MS = 50
/** A server that has seen so much more than its first quarter may have grown by so much. */
const MOST_GROWTH = 1.25
const MEMORY_EVERY_MS = 1_000
/** A shorter run is still warming up in its second quarter. */
const LEAST_LOOKS = 90

type Tally = { readonly statuses: Map<number, number>; slowestMs: number; slowest: string }

/** Resident memory, and how many requests had been answered by then. */
type Look = { readonly answered: number; readonly mb: number }

const faults: string[] = []
let answered = 0

try {
  const server = await start(
    { arguments: ['src/server.ts'], environment: { LOG_LEVEL: 'silent', TASK_DEADLINE_MS: '3000' } },
    '/health/ready',
  )
  const before = performance.now()
  const memory: Look[] = []
  const timer = setInterval(() => isThere(server) && memory.push({ answered, mb: residentMb(server) }), MEMORY_EVERY_MS)
  const probes = { slowestMs: 0 }
  const probing = setInterval(() => void probe(server, probes), PROBE_EVERY_MS)
  const lanes = OPERATIONS.filter(({ operationId }) => only === undefined || operationId === only)
  const tallies = await Promise.all(lanes.map((operation) => lane(operation, server)))
  clearInterval(timer)
  clearInterval(probing)
  const { exitCode, signalCode } = server.process
  if (!isThere(server)) complain(`the server has ended: code ${exitCode}, signal ${signalCode}`)
  await stop(server)
  report(lanes, tallies, (performance.now() - before) / 1000)
  console.log(`slowest probe of health ${probes.slowestMs.toFixed(0)} ms`)
  remember(memory)
} finally {
  stopAll()
}
console.log(`\n${answered} requests, ${faults.length} faults`)
process.exitCode = faults.length === 0 ? 0 : 1

/** One operation, until all lanes together have been answered often enough. */
async function lane(operation: Operation, server: Started): Promise<Tally> {
  const { address } = server
  const pool = new Pool(address, { connections: 2 })
  const tally: Tally = { statuses: new Map(), slowestMs: 0, slowest: '' }
  const witness = (request: FuzzRequest, status: number, ms: number): void => {
    answered += 1
    tally.statuses.set(status, (tally.statuses.get(status) ?? 0) + 1)
    if (ms <= tally.slowestMs) return
    tally.slowestMs = ms
    tally.slowest = shown(request)
  }
  const takesInput = operation.method === 'POST' || operation.parameters.length > 0
  for (let round = 0; isThere(server) && answered < LEAST && (takesInput || round === 0); round += 1) {
    const seed = SEED + round * 7_919
    const options = { seed, interruptAfterTimeLimit: MOST_SHRINKING_MS }
    const attempts = attemptsAt(operation, pool, address, witness, DEADLINE_MS)
    const run = await fc.check(attempts, { ...options, numRuns: ROUND })
    const [request] = run.counterexample ?? []
    if (run.failed && request !== undefined)
      complain(`${operation.operationId}, seed ${seed}: ${run.errorInstance}\n${shown(request)}`)
    const flooded = await fc.check(floodsAt(operation, address, FLOOD_DEADLINE_MS), { ...options, numRuns: FLOODS })
    const [flood] = flooded.counterexample ?? []
    if (flooded.failed && flood !== undefined)
      complain(`${operation.operationId}, seed ${seed}: ${flooded.errorInstance}\n${flood.what}`)
  }
  await pool.destroy()
  return tally
}

/** One more probe; what has ended by itself complains elsewhere. */
async function probe(server: Started, probes: { slowestMs: number }): Promise<void> {
  const before = performance.now()
  const answer = await fetch(`${server.address}/health/live`).catch(() => undefined)
  const ms = performance.now() - before
  if (!isThere(server)) return
  probes.slowestMs = Math.max(probes.slowestMs, ms)
  if (answer === undefined || ms > DEADLINE_MS)
    complain(`a probe of health ${answer === undefined ? 'failed' : 'was answered'} after ${ms.toFixed(0)} ms`)
}

function isThere({ process: { exitCode, signalCode } }: Started): boolean {
  return exitCode === null && signalCode === null
}

function shown({ method, target, headers, body = '' }: FuzzRequest): string {
  return `${method} ${target} ${JSON.stringify(headers)} ${body}`.slice(0, 4_000)
}

/** At once: a run of hours may be broken off. */
function complain(fault: string): void {
  faults.push(fault)
  console.log(`FAULT ${fault}\n`)
}

/** Memory is flat when the last quarter of a run lies no higher than the second, when all is warm. */
function remember(looks: readonly Look[]): void {
  const median = (from: number, to: number): number => {
    const part = looks.slice(Math.floor(from * looks.length), Math.floor(to * looks.length))
    return part.map(({ mb }) => mb).toSorted((a, b) => a - b)[Math.floor(part.length / 2)] ?? Number.NaN
  }
  const fifths = [0.2, 0.4, 0.6, 0.8, 1].map((share) => {
    const look = looks.findLast((each) => each.answered <= share * answered)
    return `${(100 * share).toFixed(0)} %: ${look?.mb.toFixed(0)} MB`
  })
  const peak = looks.reduce((most, { mb }) => Math.max(most, mb), 0)
  const [warm, last] = [median(0.25, 0.5), median(0.75, 1)]
  console.log(`memory by requests answered: ${fifths.join(', ')}; peak ${peak.toFixed(0)} MB`)
  console.log(`memory: ${warm.toFixed(0)} MB in the second quarter, ${last.toFixed(0)} MB in the last`)
  if (last > MOST_GROWTH * warm && looks.length >= LEAST_LOOKS)
    complain(`memory grew from ${warm.toFixed(0)} to ${last.toFixed(0)} MB`)
}

function report(lanes: readonly Operation[], tallies: readonly Tally[], seconds: number): void {
  console.log(`seed ${SEED}, ${answered} requests in ${seconds.toFixed(0)} s`)
  for (const [index, { statuses, slowestMs }] of tallies.entries()) {
    const counts = [...statuses].sort(([a], [b]) => a - b).map(([status, count]) => `${status}: ${count}`)
    console.log(`${lanes[index]?.operationId.padEnd(20)} ${counts.join(', ')}; slowest ${slowestMs.toFixed(0)} ms`)
    if (only !== undefined) console.log(tallies[index]?.slowest)
  }
}
