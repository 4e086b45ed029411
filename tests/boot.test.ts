import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { createServer } from 'node:net'
import { Readable } from 'node:stream'
import { Agent, request } from 'undici'
import { describe, expect, onTestFinished, test } from 'vitest'

/** A process of `node src/server.ts`, and what it has said. */
type Started = { readonly process: ChildProcess; readonly port: number; readonly said: { out: string; err: string } }

async function start(environment: Readonly<Record<string, string>> = {}): Promise<Started> {
  const port = await freePort()
  // PATH as npm sets it, so `node` is the project's own; nothing of the surroundings but that.
  const env = { PATH: process.env['PATH'] ?? '', PORT: String(port), ...environment }
  const child = spawn('node', ['src/server.ts'], { env, stdio: ['ignore', 'pipe', 'pipe'] })
  onTestFinished(() => {
    child.kill('SIGKILL')
  })
  const said = { out: '', err: '' }
  child.stdout.on('data', (chunk) => {
    said.out += chunk
  })
  child.stderr.on('data', (chunk) => {
    said.err += chunk
  })
  return { process: child, port, said }
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1')
  await once(server, 'listening')
  const address = server.address()
  server.close()
  return typeof address === 'object' && address !== null ? address.port : 0
}

async function listening({ process: child, said }: Started): Promise<void> {
  while (!said.out.includes('Server listening')) {
    if (child.exitCode !== null) throw new Error(`it ended: ${said.err}`)
    await new Promise((resolve) => setTimeout(resolve, 20))
  }
}

async function ended({ process: child }: Started): Promise<number | null> {
  if (child.exitCode === null && child.signalCode === null) await once(child, 'exit')
  return child.exitCode
}

describe('npm start', () => {
  test('runs on the project’s own Node, and a bearing comes out', async () => {
    const started = await start()
    await listening(started)
    expect(process.versions.node.split('.')[0]).toBe('26')

    const answer = await request(`http://127.0.0.1:${started.port}/v1/design`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ units: 'mm', balls: { count: 12, diameter: 16, material: 'glass' }, bore: 12 }),
    })
    expect(answer.statusCode).toBe(200)
    expect(await answer.body.json()).toMatchObject({ units: 'mm', pitchRadius: expect.any(Number) })

    started.process.kill('SIGTERM')
    expect(await ended(started)).toBe(0)
    expect(started.said.err).toBe('')
  })
})

describe('SIGTERM', () => {
  test('lets a request on its way arrive, closes its connection, and ends with 0', async () => {
    const started = await start({ SHUTDOWN_DELAY_MS: '300' })
    await listening(started)
    const at = `http://127.0.0.1:${started.port}`
    const kept = new Agent({ keepAliveTimeout: 60_000 })
    onTestFinished(() => kept.destroy())
    expect((await request(`${at}/health/live`, { dispatcher: kept })).statusCode).toBe(200)

    // The body comes in two halves: the signal strikes between them.
    let send: (rest: string) => void = () => {}
    const rest = new Promise<string>((resolve) => {
      send = resolve
    })
    const text = JSON.stringify({ units: 'mm', balls: { count: 12, diameter: 16, material: 'glass' }, bore: 12 })
    async function* halves() {
      yield text.slice(0, 20)
      yield await rest
    }
    const answer = request(`${at}/v1/design`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: Readable.from(halves()),
      dispatcher: kept,
    })
    await new Promise((resolve) => setTimeout(resolve, 200))
    started.process.kill('SIGTERM')
    await new Promise((resolve) => setTimeout(resolve, 100))
    const ready = await request(`${at}/health/ready`)
    expect(ready.statusCode).toBe(503)
    await ready.body.dump()
    send(text.slice(20))

    const { statusCode, headers, body } = await answer
    expect(statusCode).toBe(200)
    expect(headers['connection']).toBe('close')
    expect(await body.json()).toMatchObject({ units: 'mm' })
    expect(await ended(started)).toBe(0)
  })

  test('twice ends at once, with 1', async () => {
    const started = await start({ SHUTDOWN_DELAY_MS: '7000' })
    await listening(started)
    started.process.kill('SIGTERM')
    await new Promise((resolve) => setTimeout(resolve, 100))
    started.process.kill('SIGTERM')
    expect(await ended(started)).toBe(1)
  })

  test('SIGINT is one too', async () => {
    const started = await start()
    await listening(started)
    started.process.kill('SIGINT')
    expect(await ended(started)).toBe(0)
  })
})

describe('what is set wrong', () => {
  test('is said in full, without a stack, and nothing starts', async () => {
    const started = await start({ PORT: '80x', LOG_LEVEL: 'loud' })
    expect(await ended(started)).toBe(1)
    expect(started.said).toEqual({
      out: '',
      err: [
        'Racewright did not start.',
        '  PORT must be a whole number from 0 to 65535, got "80x"',
        '  LOG_LEVEL must be one of fatal, error, warn, info, debug, trace, silent, got "loud"',
        '',
      ].join('\n'),
    })
  })

  test('a port that is taken', async () => {
    const server = createServer().listen(0, '127.0.0.1')
    await once(server, 'listening')
    onTestFinished(() => {
      server.close()
    })
    const address = server.address()
    const started = await start({ PORT: String(typeof address === 'object' && address?.port) })
    expect(await ended(started)).toBe(1)
    expect(started.said.err).toMatch(/^Racewright did not start\.\n {2}.*EADDRINUSE.*\n$/)
  })
})
