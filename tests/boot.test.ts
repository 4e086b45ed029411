import { once } from 'node:events'
import { cpSync, readFileSync } from 'node:fs'
import { connect, createServer, type Socket } from 'node:net'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { setTimeout as sleep } from 'node:timers/promises'
import { Agent, request } from 'undici'
import { describe, expect, onTestFinished, test } from 'vitest'
import { eventually } from '#tests/support/eventually.ts'
import { emptyFolder } from './support/empty-folder.ts'
import { ended, listening, type Started, start } from './support/started-process.ts'

describe('npm start', () => {
  test('runs on the project’s own Node, and a bearing comes out', async () => {
    const started = await start({}, ['node', 'src/start.js'])
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
  test('to npm is one to the server: none is left behind that holds the port', async () => {
    const started = await start({ HOME: process.env['HOME'] ?? '' }, ['npm', 'start'])
    await listening(started)
    started.process.kill('SIGTERM')
    await ended(started)
    await eventually(() => expect(request(`http://127.0.0.1:${started.port}/health/live`)).rejects.toThrow())
  })

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
    await sleep(200)
    started.process.kill('SIGTERM')
    await sleep(100)
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

  test('lets all that was accepted be worked out, what still waits for a worker thread too', async () => {
    const started = await start()
    await listening(started)
    const at = `http://127.0.0.1:${started.port}`
    const body = JSON.stringify({
      design: { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 },
      ring: 'outer',
      readings: [{ kind: 'last-ball-opening', value: 12, graduation: 0.5 }],
    })
    const headers = { 'content-type': 'application/json' }
    const asked = Array.from({ length: 12 }, () =>
      request(`${at}/v1/fit-correction`, { method: 'POST', headers, body }),
    )
    await eventually(async () => {
      const metrics = await (await request(`${at}/metrics`)).body.text()
      const of = (name: string) =>
        [...metrics.matchAll(new RegExp(`^racewright_tasks_${name}(?:\\{.*\\})? (\\d+)$`, 'gm'))].reduce(
          (sum, [, count]) => sum + Number(count),
          0,
        )
      expect(of('running') + of('waiting') + of('done_total')).toBe(asked.length)
    })
    started.process.kill('SIGTERM')
    for (const answer of await Promise.all(asked)) {
      expect(answer.statusCode).toBe(200)
      expect(await answer.body.json()).toMatchObject({ state: 'more-to-remove' })
    }
    expect(await ended(started)).toBe(0)
  })

  test('under load fails no request of a balancer that heeds /health/ready', async () => {
    const started = await start({ SHUTDOWN_DELAY_MS: '1500' })
    await listening(started)
    const at = `http://127.0.0.1:${started.port}`
    const kept = new Agent({ keepAliveTimeout: 60_000 })
    onTestFinished(() => kept.destroy())
    const ask = async (path: string): Promise<number> => {
      const { statusCode, body } = await request(at + path, { dispatcher: kept })
      await body.dump()
      return statusCode
    }
    let isReady = true
    const answered = { before: 0, after: 0 }
    const caller = async (): Promise<void> => {
      while (isReady) {
        expect(await ask('/v1/design?units=mm&balls.count=12&balls.diameter=16&bore=12')).toBe(200)
        answered[started.process.killed ? 'after' : 'before'] += 1
      }
    }
    const balancer = async (): Promise<void> => {
      while (isReady) {
        isReady = (await ask('/health/ready')) === 200
        await sleep(50)
      }
    }
    const load = Promise.all([balancer(), ...Array.from({ length: 20 }, caller)])
    await eventually(() => expect(answered.before).toBeGreaterThan(200))
    started.process.kill('SIGTERM')
    await load
    expect(answered.after).toBeGreaterThan(0)
    expect(await ended(started)).toBe(0)
  })

  /** Sends a request on each of many connections, new and kept, while the process is held: all are sent, none is read. */
  async function whileHeld({ process: child, port }: Started, kept: readonly Socket[]): Promise<Promise<string>[]> {
    child.kill('SIGSTOP')
    const fresh = Array.from({ length: 50 }, () => connect(port, '127.0.0.1'))
    await Promise.all(fresh.map((socket) => once(socket, 'connect')))
    return [...fresh, ...kept].map(async (socket) => {
      socket.write('GET /v1/sources HTTP/1.1\r\nhost: a\r\n\r\n')
      let text = ''
      for await (const chunk of socket) text += chunk
      return text
    })
  }

  async function keptConnections({ port }: Started): Promise<readonly Socket[]> {
    const kept = Array.from({ length: 20 }, () => connect(port, '127.0.0.1'))
    for (const socket of kept) {
      socket.write('GET /health/live HTTP/1.1\r\nhost: a\r\n\r\n')
      await once(socket, 'data')
    }
    return kept
  }

  test.each([
    ['with', 0],
    ['at the end of the delay after', 300],
  ])('loses no request that was sent and not yet read %s the signal, at the defaults', async (_, later) => {
    const started = await start()
    await listening(started)
    const kept = await keptConnections(started)
    if (later > 0) {
      started.process.kill('SIGTERM')
      await sleep(later)
    }
    const answers = await whileHeld(started, kept)
    if (later === 0) started.process.kill('SIGTERM')
    // Longer than the delay, so that the timers of the stop are due before anything is read.
    await sleep(later === 0 ? 100 : 1_500)
    started.process.kill('SIGCONT')
    for (const text of await Promise.all(answers)) expect(text).toMatch(/^HTTP\/1\.1 200 /)
    expect(await ended(started)).toBe(0)
  })

  test('of an idle service ends it soon, whatever connections are open and say nothing', async () => {
    const started = await start()
    await listening(started)
    const kept = await keptConnections(started)
    const silent = Array.from({ length: 20 }, () => connect(started.port, '127.0.0.1'))
    await Promise.all(silent.map((socket) => once(socket, 'connect')))
    started.process.kill('SIGTERM')
    expect(await ended(started)).toBe(0)
    for (const socket of [...kept, ...silent]) socket.destroy()
    // Not by the end of the grace: that is an error in the log, and an exit code of 1.
    expect(started.said.out).not.toContain('killed by timeout')
  })

  test('twice ends at once, with 1', async () => {
    const started = await start({ SHUTDOWN_DELAY_MS: '7000' })
    await listening(started)
    started.process.kill('SIGTERM')
    await sleep(100)
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

describe('what is missing', () => {
  test('a Node.js that reads TypeScript is named in a sentence, without a stack', async () => {
    const started = await start({}, ['node', '--no-strip-types', 'src/start.js'])
    expect(await ended(started)).toBe(1)
    expect(started.said.out).toBe('')
    expect(started.said.err).toBe(
      [
        'Racewright did not start.',
        `  It needs Node.js 22.18 or later, and this is ${process.versions.node}.`,
        '  Run `npm ci` without --ignore-scripts: it installs Node.js 26 for this project, which `npm start` then uses.',
        '',
      ].join('\n'),
    )
  })

  test('a package is named, and what installs it', async () => {
    const folder = emptyFolder()
    for (const name of ['package.json', 'src']) cpSync(name, join(folder, name), { recursive: true })
    const started = await start({}, ['node', join(folder, 'src/start.js')])
    expect(await ended(started)).toBe(1)
    expect(started.said.err).toMatch(
      /^Racewright did not start\.\n {2}A package is missing: .*'close-with-grace'.*\n {2}Run `npm ci` first\.\n$/,
    )
  })

  test('Node.js is among the packages that --omit=dev keeps', () => {
    const { dependencies, engines } = JSON.parse(readFileSync('package.json', 'utf8'))
    expect(dependencies).toHaveProperty('node')
    expect(engines.node).toBe('>=22.18')
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

  test('names that look misspelt are in one warning, and the service starts', async () => {
    const started = await start({ RATE_LIMIT_PER_MINUT: '3', LOGLEVEL: 'silent', SOMEONE_ELSES: '1' })
    await listening(started)
    const warnings = started.said.out.split('\n').filter((line) => line.includes('"level":40'))
    expect(warnings).toHaveLength(1)
    expect(JSON.parse(warnings[0] ?? '')).toMatchObject({
      ignored: [
        { name: 'RATE_LIMIT_PER_MINUT', meant: 'RATE_LIMIT_PER_MINUTE' },
        { name: 'LOGLEVEL', meant: 'LOG_LEVEL' },
      ],
    })
    expect(started.said.err).toBe('')
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
