import { fork, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { Piscina } from 'piscina'
import { request } from 'undici'
import { MOST_TRIALS } from '#shared/questions/tolerance/defaults.ts'
import type { ToleranceCheckInput } from '#shared/questions/tolerance/input.ts'
import { concludeTrials, prepareTrials, runTrials } from '#shared/questions/tolerance/tolerance-check.ts'
import { blockCount } from '#shared/statistics/monte-carlo.ts'
import { mm } from '#shared/units/length.ts'
import type { RunPart } from '#src/workers/pool.ts'
import { checkTolerance } from '#src/workers/tolerance-check.ts'
import type { Load, Measured } from './load.ts'
import { start, stop } from './started.ts'

/*
 * Trials of unequal balls, closed exactly: how many a second, against a NumPy program of the same formula (trials.py);
 * what a second thread adds; how the time grows; and what they cost those who ask for something light.
 */
const RUNS = 3
const TRIALS = 400_000

const inputFor = (count: number, trials: number): ToleranceCheckInput => {
  const normal = (standardDeviation: number) => ({ kind: 'normal', standardDeviation: mm(standardDeviation) }) as const
  return {
    design: { units: 'mm', balls: { count, diameter: mm(16), material: 'glass' }, bore: mm(3) },
    contributors: {
      ballDiameter: normal(0.1),
      ballLotMean: normal(0.05),
      outerGrooveBottomRadius: normal(0.1),
      innerGrooveBottomRadius: normal(0.1),
    },
    trials,
  }
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN
const ofRuns = (run: () => number): number => median(Array.from({ length: RUNS }, run))

function mark(met: boolean, ratio: number, bound: string, what: string, figures: string): void {
  console.log(`\n${met ? 'met   ' : 'missed'} ${ratio.toFixed(2)} (${bound})  ${what}\n       ${figures}`)
}

/** Seconds of a whole check on this thread, statistics included. */
function ourSeconds(count: number, trials: number): number {
  const input = inputFor(count, trials)
  const before = performance.now()
  const prepared = prepareTrials(input)
  if (!prepared.ok || prepared.value.kind !== 'to-run') throw new Error('the bearing of the benchmark must be one')
  const { plan, why } = prepared.value
  concludeTrials({ input, plan, why, tallies: [runTrials({ input, plan, first: 0, count: blockCount(plan) })] })
  return (performance.now() - before) / 1000
}

/** Seconds of the yardstick, or undefined where there is no NumPy. */
function numpySeconds(count: number, trials: number): number | undefined {
  const script = join(import.meta.dirname, 'trials.py')
  const { status, stdout } = spawnSync('python3', [script, String(count), String(trials)], { encoding: 'utf8' })
  return status === 0 ? Number(stdout) : undefined
}

function againstNumpy(): void {
  for (const count of [10, 24]) {
    // Until the engine has made the best of it, which it does by the way.
    for (let run = 0; run < 2 * RUNS; run += 1) ourSeconds(count, TRIALS)
    const ours = ofRuns(() => ourSeconds(count, TRIALS))
    const figure = `${(TRIALS / ours / 1e6).toFixed(2)} million trials a second, one core, statistics included`
    if (numpySeconds(count, 1000) === undefined) {
      console.log(`\n       ${count} balls: ${figure}; there is no NumPy here to compare with`)
      continue
    }
    const ratio = ofRuns(() => numpySeconds(count, TRIALS) ?? Number.NaN) / ours
    mark(ratio >= 3, ratio, '≥ 3', `${count} balls: as fast as NumPy in blocks`, figure)
  }
}

function growth(): void {
  const base = ofRuns(() => ourSeconds(10, TRIALS))
  const times = (seconds: number) => (seconds / base).toFixed(1)
  console.log(`\n       ${TRIALS} trials of 10 balls: 1; of 24: ${times(ofRuns(() => ourSeconds(24, TRIALS)))}`)
  console.log(`       of 100: ${times(ofRuns(() => ourSeconds(100, TRIALS)))}`)
  console.log(`       four times as many trials of 10: ${times(ofRuns(() => ourSeconds(10, 4 * TRIALS)))}`)
}

/** What it saves to reckon a spread instead of making the hundred thousand bearings that would else be made. */
function shortCut(): void {
  for (const count of [10, 24]) {
    const { trials: _, ...asked } = inputFor(count, 0)
    const answer = (): number => {
      const before = performance.now()
      const prepared = prepareTrials(asked)
      if (!prepared.ok || prepared.value.kind !== 'answered') throw new Error('the benchmark must be nearly linear')
      return performance.now() - before
    }
    Array.from({ length: 50 }, answer)
    const near = median(Array.from({ length: 51 }, answer))
    const made = 1000 * ofRuns(() => ourSeconds(count, 100_000))
    console.log(
      `\n       ${count} balls without trials: ${near.toFixed(1)} ms; ${(made / near).toFixed(1)} times as fast as 100000 of them, and surer`,
    )
  }
}

async function threads(): Promise<void> {
  const seconds: Record<1 | 2, number[]> = { 1: [], 2: [] }
  for (const count of [1, 2] as const) {
    const filename = join(import.meta.dirname, '../../src/workers/tasks.ts')
    const pool = new Piscina({ filename, minThreads: count, maxThreads: count })
    const runPart: RunPart = (name, input) => pool.run(input, { name })
    await checkTolerance(inputFor(24, TRIALS), runPart, count)
    for (let run = 0; run < RUNS; run += 1) {
      const before = performance.now()
      await checkTolerance(inputFor(24, MOST_TRIALS), runPart, count)
      seconds[count].push((performance.now() - before) / 1000)
    }
    await pool.destroy()
  }
  const ratio = median(seconds[1]) / median(seconds[2])
  mark(
    ratio >= 1.7,
    ratio,
    '≥ 1.7',
    `two threads / one, ${MOST_TRIALS} trials of 24 balls`,
    `${median(seconds[1]).toFixed(2)} and ${median(seconds[2]).toFixed(2)} s`,
  )
}

/** 99th percentile of light requests, few at a time, alone and beside trials that never end. */
async function beside(): Promise<void> {
  const started = await start({ arguments: ['src/server.ts'] }, '/health/ready')
  const design = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }
  const light = async (requests: number): Promise<number> => {
    const caller = fork(join(import.meta.dirname, 'load.ts'))
    const answer = once(caller, 'message')
    const load: Load = {
      address: started.address,
      path: '/v1/design',
      body: JSON.stringify(design),
      connections: 4,
      warmUp: 2_000,
      requests,
      awake: false,
    }
    caller.send(load)
    const [measured]: Measured[] = await answer
    return measured?.p99Ms ?? Number.NaN
  }
  const idle = await light(10_000)
  let isOver = false
  const heavy = (async () => {
    const body = JSON.stringify({
      design,
      contributors: { ballDiameter: { kind: 'normal', standardDeviation: 0.1 } },
      trials: 2_000_000,
    })
    while (!isOver) {
      const headers = { 'content-type': 'application/json' }
      const { statusCode, body: answer } = await request(`${started.address}/v1/tolerance-check`, {
        method: 'POST',
        headers,
        body,
      })
      await answer.dump()
      if (statusCode !== 200) throw new Error(`the trials were answered with ${statusCode}`)
    }
  })()
  const busy = await light(10_000)
  isOver = true
  await heavy
  await stop(started)
  const figures = `${busy.toFixed(2)} and ${idle.toFixed(2)} ms`
  mark(busy / idle <= 3, busy / idle, '≤ 3', 'p99 of /v1/design beside 2,000,000 trials / alone', figures)
}

console.log(`\nTrials: medians of ${RUNS} runs, ${TRIALS} trials each unless it says otherwise.`)
againstNumpy()
growth()
shortCut()
await threads()
await beside()
