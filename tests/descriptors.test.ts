import { Client } from 'undici'
import { expect, onTestFinished, test } from 'vitest'
import { DEFAULTS } from '#src/config.ts'
import { eventually } from '#tests/support/eventually.ts'
import { listening, type Started, start } from './support/started-process.ts'

const HOARD = new URL('support/hoard-descriptors.ts', import.meta.url).href

/** What is loaded or read on first use, and kept from then on. */
const KEPT = ['/metrics', '/openapi.json', '/docs', '/']

/** The same for what may have been loaded already by the time there is no descriptor. */
const LOADED_EARLY = [
  '/v1/design?units=mm&balls.count=12&balls.diameter=16&bore=12',
  '/v1/drawings/assembly.pdf?units=mm&balls.count=12&balls.diameter=16&bore=12',
  '/v1/job-sheet?units=mm&balls.count=12&balls.diameter=16&bore=12',
]

test('a lack of descriptors at first use is over when it is over', async () => {
  const started = await start({ NODE_OPTIONS: `--import ${HOARD}`, LOG_LEVEL: 'info' }, [
    'bash',
    '-c',
    'ulimit -n 200 && exec node src/server.ts',
  ])
  await listening(started)
  // A connection that is there already: the process could not accept another.
  const client = new Client(`http://127.0.0.1:${started.port}`, { keepAliveTimeout: DEFAULTS.keepAliveTimeoutMs })
  onTestFinished(() => client.destroy())
  const statusOf = async (path: string): Promise<number> => {
    const { statusCode, body } = await client.request({ method: 'GET', path })
    await body.dump()
    return statusCode
  }
  expect(await statusOf('/health/live')).toBe(200)

  await signalled(started, 'no descriptor is left')
  for (const path of KEPT) expect(await statusOf(path), path).toBe(500)
  for (const path of LOADED_EARLY) await statusOf(path)

  await signalled(started, 'descriptors are free')
  for (const path of [...KEPT, ...LOADED_EARLY])
    await eventually(async () => expect(await statusOf(path), path).toBe(200))
  expect(started.process.exitCode).toBeNull()
})

async function signalled({ process: child, said }: Started, line: string): Promise<void> {
  child.kill('SIGWINCH')
  await eventually(() => expect(said.out).toContain(line))
}
