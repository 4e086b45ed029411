import { monitorEventLoopDelay } from 'node:perf_hooks'
import { setTimeout as sleep } from 'node:timers/promises'
import { buildApp } from '#src/app.ts'
import { DEFAULTS } from '#src/config.ts'
import { OPERATIONS } from '#tests/fuzz/document.ts'

/*
 * How long a valid request holds the event loop: that of every example of the document, asked again and again in this
 * process. A machine that takes the processor away adds to some of the times; the least of several leaves that out.
 */

const WARM_UP = 5
const MEASURED = 9
const RESOLUTION_MS = 1

const BEARING = '?units=mm&balls.count=12&balls.diameter=16&bore=12'
const FILES = [
  ...['svg', 'html', 'pdf', 'dxf'].flatMap((format) =>
    ['assembly', 'templates', 'gauges'].map((view) => `drawings/${view}.${format}`),
  ),
  'job-sheet',
]

export type Hold = { readonly what: string; readonly ms: number }

/** The examples that hold the event loop longest come first. */
export async function loopHolds(): Promise<readonly Hold[]> {
  const app = await buildApp({ config: { ...DEFAULTS, logLevel: 'silent', rateLimitPerMinute: 1_000_000 } })
  const hold = async (ask: () => Promise<unknown>): Promise<number> => {
    const delay = monitorEventLoopDelay({ resolution: RESOLUTION_MS })
    delay.enable()
    await sleep(2 * RESOLUTION_MS)
    delay.reset()
    await ask()
    await sleep(2 * RESOLUTION_MS)
    delay.disable()
    return delay.max / 1e6 - RESOLUTION_MS
  }
  const posts = OPERATIONS.filter(({ method }) => method === 'POST').flatMap(({ path, operationId, examples }) =>
    examples.map((payload, index) => ({
      what: `${operationId} ${index + 1}`,
      ask: () => app.inject({ method: 'POST', url: path, payload: payload as object }),
    })),
  )
  const gets = FILES.map((file) => ({ what: file, ask: () => app.inject(`/v1/${file}${BEARING}`) }))
  const holds: Hold[] = []
  for (const { what, ask } of [...posts, ...gets]) {
    for (let run = 0; run < WARM_UP; run += 1) await ask()
    const times: number[] = []
    for (let run = 0; run < MEASURED; run += 1) times.push(await hold(ask))
    holds.push({ what, ms: Math.min(...times) })
  }
  await app.close()
  return holds.toSorted((one, other) => other.ms - one.ms)
}
