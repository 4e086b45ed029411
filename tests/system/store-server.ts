import { execFileSync, spawn } from 'node:child_process'
import { once } from 'node:events'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { emptyFolder } from '#tests/support/empty-folder.ts'
import { eventually } from '#tests/support/eventually.ts'
import { freePort } from '#tests/support/free-port.ts'

type Options = {
  /** Further settings, as lines of a configuration file; `{{folder}}` stands for a folder of the server's own. */
  readonly settings?: readonly string[]
  /** Starts as a sentinel. */
  readonly isSentinel?: boolean
  /** What redis-cli needs to get in. */
  readonly cli?: readonly string[]
  readonly folder?: string
  readonly port?: number
}

/** A real server of counts, as Debian has it, in memory alone. It ends with the test. */
export async function storeServer({ settings = [], isSentinel = false, cli = [], folder, port }: Options = {}) {
  const at = port ?? (await freePort())
  const own = folder ?? emptyFolder()
  const file = join(own, `${at}.conf`)
  const lines = ['bind 127.0.0.1', `port ${at}`, 'save ""', 'appendonly no', `dir ${own}`, ...settings]
  writeFileSync(file, lines.join('\n'))
  const server = spawn('redis-server', [file, ...(isSentinel ? ['--sentinel'] : [])], { stdio: 'ignore' })
  const stop = async (): Promise<void> => {
    if (server.exitCode !== null || server.signalCode !== null) return
    server.kill('SIGKILL')
    await once(server, 'exit')
  }
  onTestFinished(stop)
  const tell = (...command: readonly string[]): string =>
    execFileSync('redis-cli', ['-p', String(at), ...cli, ...command], { encoding: 'utf8', stdio: 'pipe' }).trim()
  await eventually(() => {
    if (tell('ping') !== 'PONG') throw new Error('the store is not there yet')
  })
  return {
    port: at,
    /** Asks it by its own client. */
    tell,
    /** Holds it still as a machine does that swaps: connections stay open, and nothing is answered. */
    freeze: () => server.kill('SIGSTOP'),
    thaw: () => server.kill('SIGCONT'),
    stop,
  }
}
