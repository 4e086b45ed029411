import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { readFileSync } from 'node:fs'
import { connect } from 'node:net'
import { freePort } from '#tests/support/free-port.ts'

/** What a side of a comparison is started with: arguments for `node`, and its surroundings. */
export type Side = { readonly arguments: readonly string[]; readonly environment?: Readonly<Record<string, string>> }

export type Started = { readonly process: ChildProcess; readonly address: string; readonly firstAnswerMs: number }

const running = new Set<ChildProcess>()

/** Starts a side on a port of its own and waits for its first answer, asked for every millisecond from the start on. */
export async function start(side: Side, path: string): Promise<Started> {
  const port = await freePort()
  const before = performance.now()
  const child = spawn(process.execPath, side.arguments, {
    env: { ...process.env, ...side.environment, PORT: String(port) },
    stdio: ['ignore', 'ignore', 'inherit'],
  })
  running.add(child)
  child.on('exit', () => running.delete(child))
  while (!(await answers(port, path))) {
    if (child.exitCode !== null) throw new Error(`it ended: node ${side.arguments.join(' ')}`)
    await new Promise((resolve) => setTimeout(resolve, 1))
  }
  return { process: child, address: `http://127.0.0.1:${port}`, firstAnswerMs: performance.now() - before }
}

export async function stop({ process: child }: Started): Promise<void> {
  child.kill('SIGTERM')
  if (child.exitCode === null && child.signalCode === null) await once(child, 'exit')
}

/** For a comparison that was broken off: no server outlives it. */
export function stopAll(): void {
  for (const child of running) child.kill('SIGKILL')
}

/** Resident memory in MB, as Linux tells it of any process. */
export function residentMb({ process: child }: Started): number {
  const kb = /^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))?.[1]
  return Number(kb) / 1024
}

/** Seconds of processor time so far, in hundredths: what a request costs the server, however fast its callers are. */
export function cpuSeconds({ process: child }: Started): number {
  const stat = readFileSync(`/proc/${child.pid}/stat`, 'utf8')
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ')
  return (Number(fields[11]) + Number(fields[12])) / 100
}

/** The bare protocol: a client library would first have to be warm itself. */
function answers(port: number, path: string): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1')
    socket.on('error', () => resolve(false))
    socket.on('close', () => resolve(false))
    socket.on('connect', () => socket.write(`GET ${path} HTTP/1.1\r\nhost: bench\r\nconnection: close\r\n\r\n`))
    socket.on('data', (head) => {
      socket.destroy()
      resolve(head.toString('latin1').startsWith('HTTP/1.1 200'))
    })
  })
}
