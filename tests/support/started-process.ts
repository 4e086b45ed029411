import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { onTestFinished } from 'vitest'
import { COMPILED } from './compile-once.ts'
import { freePort } from './free-port.ts'

/** A process that serves, and what it has said. */
export type Started = {
  readonly process: ChildProcess
  readonly port: number
  readonly said: { out: string; err: string }
}

/** Limits of time as for a machine that has far too much to do: none of them is to decide a test that does not set it. */
const UNHURRIED = { TASK_DEADLINE_MS: '600000', MAX_LOOP_DELAY_MS: '600000', SHUTDOWN_GRACE_MS: '600000' }

/** PATH as npm sets it, so `node` is the project's own; nothing else of what is around the tests. */
export const surroundings = (own: Readonly<Record<string, string>>) => ({
  PATH: process.env['PATH'] ?? '',
  NODE_COMPILE_CACHE: COMPILED,
  ...UNHURRIED,
  ...own,
})

/** @param command what starts it, by itself or as the leader of processes of its own, which end with the test too */
export async function start(
  environment: Readonly<Record<string, string>> = {},
  [command, ...rest]: readonly [string, ...string[]] = ['node', 'src/server.ts'],
): Promise<Started> {
  const port = await freePort()
  const env = surroundings({ PORT: String(port), ...environment })
  const child = spawn(command, rest, { env, stdio: ['ignore', 'pipe', 'pipe'], detached: true })
  onTestFinished(() => killAll(child))
  const said = { out: '', err: '' }
  child.stdout.on('data', (chunk) => {
    said.out += chunk
  })
  child.stderr.on('data', (chunk) => {
    said.err += chunk
  })
  return { process: child, port, said }
}

/** With whatever it has started. */
function killAll({ pid }: ChildProcess): void {
  try {
    if (pid !== undefined) process.kill(-pid, 'SIGKILL')
  } catch {
    // All of them have ended.
  }
}

export async function listening({ process: child, said }: Started): Promise<void> {
  while (!said.out.includes('Server listening')) {
    if (child.exitCode !== null) throw new Error(`it ended: ${said.err}`)
    await new Promise((resolve) => setTimeout(resolve, 20))
  }
}

export async function ended({ process: child }: Started): Promise<number | null> {
  if (child.exitCode === null && child.signalCode === null) await once(child, 'exit')
  return child.exitCode
}
