import { execFileSync, fork } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { cpus, tmpdir, totalmem } from 'node:os'
import { join } from 'node:path'
import { request } from 'undici'
import { VERSION } from '#src/version.ts'
import { answerCosts, playCost } from './answer-cost.ts'
import type { Load, Measured } from './load.ts'
import { loopHolds } from './loop-holds.ts'
import { pageBytes } from './page-bytes.ts'
import { cpuSeconds, residentMb, type Side, type Started, start, stop, stopAll } from './started.ts'

/** One start differs from the next by up to 15 %: a figure is the median over so many, the sides taking turns. */
const STARTS = 3
const COLD_STARTS = 11
const CONNECTIONS = 50
const WARM_UP = 10_000
const REQUESTS = 30_000
/** Every run has callers of its own, and a caller that is new is slow: those of its first requests do not count. */
const CALLERS_WARM_UP = 3_000
const REQUESTS_FOR_MEMORY = 100_000
const SETTLE_MS = 2_000

const DESIGN = {
  path: '/v1/design',
  body: JSON.stringify({
    units: 'mm',
    balls: { count: 12, diameter: 16, material: 'glass', standardDeviation: 0.1 },
    bore: 12,
  }),
}
const CONSTANT = { path: '/bench/constant', body: DESIGN.body }

/** No file, no TypeScript, no library: the least that a server in Node can be. */
const BARE = `
  const answer = Buffer.alloc(Number(process.env.ANSWER_BYTES), 'x')
  const server = require('node:http').createServer((request, response) => {
    request.resume().on('end', () => response.setHeader('content-type', 'application/json').end(answer))
  })
  server.listen(Number(process.env.PORT), '127.0.0.1')
  process.on('SIGTERM', () => process.exit(0))
`

type Row = {
  readonly what: string
  readonly mark: number
  readonly better: 'more' | 'less'
  readonly ratio: number
  readonly figures: string
}

const cache = mkdtempSync(join(tmpdir(), 'racewright-bench-'))
try {
  execFileSync('npm', ['run', 'build'], { stdio: 'ignore' })
  await main()
} finally {
  stopAll()
  rmSync(cache, { recursive: true })
}

async function main(): Promise<void> {
  const production: Side = {
    arguments: containerArguments(),
    environment: { NODE_COMPILE_CACHE: cache, NODE_ENV: 'production' },
  }
  const bytes = await answerBytes(production)
  const environment = { ANSWER_BYTES: String(bytes) }
  const bare: Side = { arguments: ['-e', BARE], environment }
  const same: Side = { arguments: ['tests/bench/constant-server.ts'], environment }

  const rows = [
    ...(await throughput({ production, bare, same }, bytes)),
    await coldStart(production, bare),
    await memory(production),
    ...(await costs(production)),
    await holds(),
    await page(production),
  ]
  print(rows)
}

/** What the container gives to `node`. */
function containerArguments(): string[] {
  const [, command = '[]'] = /^CMD (\[.*\])$/m.exec(readFileSync('Dockerfile', 'utf8')) ?? []
  return JSON.parse(command).slice(1)
}

/** How long the answer is; and the compiled code of this run is what later starts begin with. */
async function answerBytes(production: Side): Promise<number> {
  const started = await start(production, '/health/ready')
  const { statusCode, body } = await request(started.address + DESIGN.path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: DESIGN.body,
  })
  const answer = await body.bytes()
  if (statusCode !== 200) throw new Error(`${DESIGN.path} answered ${statusCode}: ${Buffer.from(answer).toString()}`)
  await stop(started)
  return answer.length
}

type Run = Measured & { readonly cpuUs: number }

type Runs = 'designs' | 'constants' | 'whole' | 'bare' | 'even' | 'bareEven'

async function throughput(sides: Record<'production' | 'bare' | 'same', Side>, bytes: number): Promise<Row[]> {
  const runs: Record<Runs, Run[]> = { designs: [], constants: [], whole: [], bare: [], even: [], bareEven: [] }
  for (let turn = 0; turn < STARTS; turn += 1) {
    runs.designs.push(await loaded(sides.same, DESIGN))
    runs.constants.push(await loaded(sides.same, CONSTANT))
    runs.whole.push(await loaded(sides.production, DESIGN))
    runs.bare.push(await loaded(sides.bare, DESIGN))
    runs.even.push(await loaded(sides.production, DESIGN, false))
    runs.bareEven.push(await loaded(sides.bare, DESIGN, false))
  }
  const of = (side: Runs, figure: keyof Run) => median(runs[side].map((run) => run[figure]))
  const busy = (side: Runs) => (of(side, 'perSecond') * of(side, 'cpuUs')) / 1e6
  const compare = (what: string, mark: number, side: Runs, other: Runs): Row => ({
    what,
    mark,
    better: 'more',
    ratio: of(side, 'perSecond') / of(other, 'perSecond'),
    figures: [
      `${whole(of(side, 'perSecond'))} and ${whole(of(other, 'perSecond'))} answers of ${bytes} bytes a second`,
      `${whole(of(side, 'cpuUs'))} and ${whole(of(other, 'cpuUs'))} µs of processor each`,
      `servers ${percent(busy(side))} and ${percent(busy(other))} busy`,
    ].join('; '),
  })
  return [
    compare('POST /v1/design / same server, a constant', 0.65, 'designs', 'constants'),
    compare('whole production server / bare node:http', 0.45, 'whole', 'bare'),
    {
      what: `p99 of /v1/design at ${CONNECTIONS} connections / p99 of the bare server`,
      mark: 3,
      better: 'less',
      ratio: of('even', 'p99Ms') / of('bareEven', 'p99Ms'),
      figures: [
        `${of('even', 'p99Ms').toFixed(2)} and ${of('bareEven', 'p99Ms').toFixed(2)} ms, the callers asleep in between`,
        `medians ${of('even', 'p50Ms').toFixed(2)} and ${of('bareEven', 'p50Ms').toFixed(2)} ms`,
      ].join('; '),
    },
  ]
}

async function loaded(side: Side, what: { readonly path: string; readonly body: string }, awake = true): Promise<Run> {
  const started = await start(side, '/health/ready')
  // The processor's share of the warm-up is measured apart, by a load that is all warm-up.
  await load(started, { ...what, awake, warmUp: WARM_UP, requests: CONNECTIONS })
  const before = cpuSeconds(started)
  const measured = await load(started, { ...what, awake, warmUp: CALLERS_WARM_UP, requests: REQUESTS })
  const cpuUs = ((cpuSeconds(started) - before) / (CALLERS_WARM_UP + REQUESTS)) * 1e6
  await stop(started)
  return { ...measured, cpuUs }
}

async function load(started: Started, what: Omit<Load, 'address' | 'connections'>): Promise<Measured> {
  const caller = fork('tests/bench/load.ts')
  const answer = once(caller, 'message')
  caller.send({ address: started.address, connections: CONNECTIONS, ...what } satisfies Load)
  const [measured] = await Promise.race([answer, once(caller, 'exit').then(() => [undefined])])
  if (measured === undefined) throw new Error('the callers ended without a figure')
  return measured
}

async function coldStart(production: Side, bare: Side): Promise<Row> {
  const times = { production: [] as number[], bare: [] as number[] }
  for (let turn = 0; turn < COLD_STARTS; turn += 1) {
    for (const [name, side] of Object.entries({ production, bare }) as ['production' | 'bare', Side][]) {
      const started = await start(side, '/health/ready')
      times[name].push(started.firstAnswerMs)
      await stop(started)
    }
  }
  return {
    what: 'cold start / bare node:http',
    mark: 3,
    better: 'less',
    ratio: median(times.production) / median(times.bare),
    figures: `${whole(median(times.production))} and ${whole(median(times.bare))} ms from spawn to the first 200 of /health/ready`,
  }
}

async function costs(production: Side): Promise<Row[]> {
  const started = await start(production, '/health/ready')
  // Warmed up by as many designs as any other side.
  await load(started, { ...DESIGN, awake: true, warmUp: WARM_UP, requests: CONNECTIONS })
  const rows = (await answerCosts(started)).map(
    ({ what, mark, us, designUs }): Row => ({
      what: `${what} / a design`,
      mark,
      better: 'less',
      ratio: us / designUs,
      figures: `${whole(us)} and ${whole(designUs)} µs of processor each, one after another`,
    }),
  )
  const play = await playCost(started)
  await stop(started)
  return [
    ...rows,
    {
      what: 'a design with its default play / the same, stated',
      mark: 1.05,
      better: 'less',
      ratio: play.byDefault / play.stated,
      figures: `${play.byDefault.toFixed(1)} and ${play.stated.toFixed(1)} µs of processor each, taking turns`,
    },
  ]
}

async function holds(): Promise<Row> {
  const [longest, ...others] = await loopHolds()
  if (longest === undefined) throw new RangeError('the document must have examples')
  return {
    what: 'longest hold of the event loop by a valid request [ms]',
    mark: 10,
    better: 'less',
    ratio: longest.ms,
    figures: [longest, ...others.slice(0, 2)].map(({ what, ms }) => `${what} ${ms.toFixed(1)}`).join('; '),
  }
}

async function page(production: Side): Promise<Row> {
  const started = await start(production, '/health/ready')
  const bytes = await pageBytes(`${started.address}/`)
  await stop(started)
  return {
    what: 'the page with its scripts until the first drawing [kB]',
    mark: 60,
    better: 'less',
    ratio: bytes / 1000,
    figures: 'compressed, as a browser is sent it',
  }
}

async function memory(production: Side): Promise<Row> {
  const idle: number[] = []
  const after: number[] = []
  for (let turn = 0; turn < STARTS; turn += 1) {
    const started = await start(production, '/health/ready')
    await settled()
    idle.push(residentMb(started))
    await load(started, { ...DESIGN, awake: true, warmUp: 0, requests: REQUESTS_FOR_MEMORY })
    await settled()
    after.push(residentMb(started))
    await stop(started)
  }
  return {
    what: `memory after ${REQUESTS_FOR_MEMORY} designs / idle`,
    mark: 1.5,
    better: 'less',
    ratio: median(after) / median(idle),
    figures: `${whole(median(after))} and ${whole(median(idle))} MB resident`,
  }
}

function settled(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, SETTLE_MS))
}

function print(rows: readonly Row[]): void {
  const [cpu] = cpus()
  console.log(`Racewright ${VERSION}, Node ${process.versions.node}, V8 ${process.versions.v8}, ${process.platform}`)
  console.log(`${cpus().length} × ${cpu?.model.trim()}, ${whole(totalmem() / 2 ** 30)} GB`)
  console.log(
    [
      `Each figure is a median: over ${STARTS} starts of each side, or ${COLD_STARTS} for the cold start, the sides taking`,
      `turns. Load from a process of its own (undici): ${WARM_UP} requests to warm up, then ${REQUESTS} over`,
      `${CONNECTIONS} kept-alive connections, each sending its next when the last was answered. Where a server is less than`,
      'about 90 % busy, its callers set the pace. The production server is',
      'the bundle with a compile cache; designs against constants are two paths of one server run from its sources.',
      'The bare server reads the request to its end and answers a constant of the same size.',
    ].join('\n'),
  )
  console.log('\n| what | mark | now | | figures |\n|---|---|---|---|---|')
  for (const { what, mark, better, ratio, figures } of rows) {
    const isMet = better === 'more' ? ratio >= mark : ratio <= mark
    const sign = better === 'more' ? '≥' : '≤'
    console.log(`| ${what} | ${sign} ${mark} | ${ratio.toFixed(2)} | ${isMet ? 'met' : 'missed'} | ${figures} |`)
  }
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN
}

function whole(value: number): string {
  return value.toFixed(0)
}

function percent(share: number): string {
  return `${whole(share * 100)} %`
}
