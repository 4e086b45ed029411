import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { onTestFinished } from 'vitest'
import { freePort } from './free-port.ts'

/** A process that serves, and what it has said. */
export type Started = {
  readonly process: ChildProcess
  readonly port: number
  readonly said: { out: string; err: string }
}

/** @param command what starts it, by itself or as the leader of processes of its own, which end with the test too */
export async function start(
  environment: Readonly<Record<string, string>> = {},
  [command, ...rest]: readonly [string, ...string[]] = ['node', 'src/server.ts'],
): Promise<Started> {
  const port = await freePort()
  // PATH as npm sets it, so `node` is the project's own; nothing of the surroundings but that.
  const env = { PATH: process.env['PATH'] ?? '', PORT: String(port), ...environment }
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
