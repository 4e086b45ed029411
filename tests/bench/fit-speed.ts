import { fork } from 'node:child_process'
import { once } from 'node:events'
import type { Load } from './load.ts'
import { cpuSeconds, type Started, start, stop, stopAll } from './started.ts'

/* What a fit correction costs the server, over what a design costs it: one bearing, a reading of every kind at either ring. */

const DESIGN = {
  units: 'mm',
  balls: { count: 14, diameter: 14, material: 'glass', standardDeviation: 0.1 },
  bore: 10,
}
const INNER_DESIGN = { ...DESIGN, radialInternalClearance: 0.5 }

const EARLIER = [
  {
    readings: [{ kind: 'last-ball-opening', ballsLeftOut: 2, value: 27, graduation: 0.5 }],
    thenRemoved: { with: 'sharp-tool', radial: 0.6 },
  },
  {
    readings: [{ kind: 'last-ball-opening', value: 13, graduation: 0.5 }],
    thenRemoved: { with: 'abrasive', radial: 0.1 },
  },
]

const outer = (...readings: readonly object[]) => ({ design: DESIGN, ring: 'outer', readings })
const inner = (...readings: readonly object[]) => ({ design: INNER_DESIGN, ring: 'inner', readings })

const QUESTIONS: Readonly<Record<string, object>> = {
  'ball gap': outer({ kind: 'ball-gap', value: 1, graduation: 0.5 }),
  'opening, one ball out': outer({ kind: 'last-ball-opening', value: 12.5, graduation: 0.5 }),
  'opening, two balls out': outer({ kind: 'last-ball-opening', ballsLeftOut: 2, value: 26, graduation: 0.5 }),
  'last ball refused': outer({ kind: 'last-ball-refused' }),
  'last ball in': outer({ kind: 'last-ball-in' }),
  'plug enters': outer({ kind: 'plug', diameter: 48.5, result: 'enters' }),
  'caliper across the bottoms': outer({ kind: 'groove-bottom-diameter', value: 76.5 }),
  'depth from the land': outer({ kind: 'groove-depth', value: 3, landDiameter: 71 }),
  'row of balls': outer({ kind: 'ball-row', count: 14, value: 196.5, graduation: 0.5 }),
  'gap, plug and caliper together': outer(
    { kind: 'ball-gap', value: 1, graduation: 0.5 },
    { kind: 'plug', diameter: 49, result: 'enters' },
    { kind: 'groove-bottom-diameter', value: 77.2 },
  ),
  'gap after two cuts': { ...outer({ kind: 'ball-gap', value: 0.5, graduation: 0.5 }), earlier: EARLIER },
  'inner ring, play': inner({ kind: 'radial-play', value: 0.3 }),
  'inner ring, binds': inner({ kind: 'binds' }),
  'inner ring, caliper': inner({ kind: 'groove-bottom-diameter', value: 48.6 }),
  'inner ring, plug': inner({ kind: 'plug', diameter: 49, result: 'snug' }),
}

const CONNECTIONS = 4
const TURNS = 2
const MOST_MEDIAN = 80
const MOST_OF_ALL = 250

try {
  const server = await start({ arguments: ['src/server.ts'] }, '/health/ready')
  const designs = await cost(server, '/v1/design', DESIGN, 4000)
  const ratios = new Map<string, number>()
  for (const [name, question] of Object.entries(QUESTIONS))
    ratios.set(name, (await cost(server, '/v1/fit-correction', question, 40)) / designs)
  await stop(server)
  print(ratios, designs)
} finally {
  stopAll()
}

/** Microseconds of processor time of one answer: the median of a few turns, after one that warms up. */
async function cost(server: Started, path: string, body: object, requests: number): Promise<number> {
  const found: number[] = []
  for (let turn = 0; turn <= TURNS; turn++) {
    const before = cpuSeconds(server)
    await load(server, { path, body: JSON.stringify(body), requests })
    if (turn > 0) found.push(((cpuSeconds(server) - before) / requests) * 1e6)
  }
  return median(found)
}

async function load(server: Started, what: Pick<Load, 'path' | 'body' | 'requests'>): Promise<void> {
  const caller = fork('tests/bench/load.ts')
  const answer = once(caller, 'message')
  caller.send({
    ...what,
    address: server.address,
    connections: CONNECTIONS,
    warmUp: 0,
    awake: false,
  } satisfies Load)
  const [measured] = await Promise.race([answer, once(caller, 'exit').then(() => [undefined])])
  if (measured === undefined) throw new Error('the callers ended without a figure')
}

function print(ratios: ReadonlyMap<string, number>, designs: number): void {
  console.log(`Processor time of a fit correction, over that of a design (${designs.toFixed(0)} µs):`)
  for (const [name, ratio] of ratios) console.log(`${ratio.toFixed(0).padStart(6)}  ${name}`)
  const [typical, most] = [median([...ratios.values()]), Math.max(...ratios.values())]
  const mark = (figure: number, limit: number): string => (figure <= limit ? 'met   ' : 'missed')
  console.log(`${mark(typical, MOST_MEDIAN)} ${typical.toFixed(0)} (≤ ${MOST_MEDIAN})  median of all kinds`)
  console.log(`${mark(most, MOST_OF_ALL)} ${most.toFixed(0)} (≤ ${MOST_OF_ALL})  the dearest of all kinds`)
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN
}
