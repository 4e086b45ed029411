import { once } from 'node:events'
import { type AddressInfo, connect, type Socket } from 'node:net'
import { setTimeout as sleep } from 'node:timers/promises'
import type { FastifyPluginAsync } from 'fastify'
import { describe, expect, onTestFinished, test } from 'vitest'
import type { Config } from '#src/config.ts'
import { ask, problemIn } from '#tests/support/ask.ts'
import { eventually } from '#tests/support/eventually.ts'
import { testedApp } from '#tests/support/started-app.ts'

const LIVE = 'GET /health/live HTTP/1.1\r\nhost: a\r\n\r\n'
const HELD = 'GET /test/held HTTP/1.1\r\nhost: a\r\n\r\n'

/** A path that answers when it is told to. */
function heldRoute() {
  const { promise: released, resolve: release } = Promise.withResolvers<void>()
  let begun = 0
  const route: FastifyPluginAsync = async (app) => {
    app.get('/held', { schema: { hide: true } }, async () => {
      begun += 1
      await released
      return { held: true }
    })
  }
  return { route, release, begun: () => begun }
}

/** A service with such a path, and where it is. */
async function holding(config: Partial<Config>) {
  const { route, release, begun } = heldRoute()
  const logLines: string[] = []
  const app = await testedApp({ route, config: { port: 0, ...config }, logLines })
  onTestFinished(() => release())
  await app.serve()
  const { port } = app.server.address() as AddressInfo
  const operations = /Health and metrics at (http:[^"]+)"/.exec(logLines.join(''))?.[1] ?? ''
  return { app, port, at: `http://127.0.0.1:${port}`, operations, release, begun }
}

type Caller = { readonly socket: Socket; text: string; isClosed: boolean }

/** A connection on which `text` was sent, from an address of this machine. */
async function caller(port: number, text = '', localAddress = '127.0.0.1'): Promise<Caller> {
  const socket = connect({ port, host: '127.0.0.1', localAddress })
  const seen: Caller = { socket, text: '', isClosed: false }
  socket.on('error', () => {})
  socket.on('data', (chunk) => {
    seen.text += chunk
  })
  socket.on('close', () => {
    seen.isClosed = true
  })
  onTestFinished(() => void socket.destroy())
  await once(socket, 'connect')
  socket.write(text)
  return seen
}

const answered = ({ text }: Caller): boolean => text.startsWith('HTTP/1.1 200 ')

describe('at the limit of all connections', () => {
  test('those that are idle make room, the longest idle first, so that a probe is always answered', async () => {
    const { port, at } = await holding({ maxConnections: 20 })
    const idle: Caller[] = []
    for (let index = 0; index < 60; index += 1) idle.push(await caller(port, index % 2 === 0 ? '' : LIVE))
    for (let probe = 0; probe < 5; probe += 1) expect((await ask(`${at}/health/ready`)).status).toBe(200)
    await eventually(() => expect(idle.filter(({ isClosed }) => !isClosed).length).toBeLessThan(20))
    const kept = idle.map(({ isClosed }) => !isClosed)
    expect(kept.slice(0, 40)).not.toContain(true)
    expect(kept.slice(-10)).toContain(true)
  })

  test('one that was used a moment ago outlives one that was opened later and says nothing', async () => {
    const { port } = await holding({ maxConnections: 2 })
    const used = await caller(port, LIVE)
    await eventually(() => expect(answered(used)).toBe(true))
    const silent = await caller(port)
    await sleep(20)
    used.text = ''
    used.socket.write(LIVE)
    await eventually(() => expect(answered(used)).toBe(true))
    await caller(port, LIVE)
    await eventually(() => expect(silent.isClosed).toBe(true))
    expect(used.isClosed).toBe(false)
  })

  // That the request before was answered must not make the connection idle while the next is under way.
  test.each(['', 'GET /docs HTTP/1.1\r\nhost: a\r\n\r\n'])(
    'those with a request under way stay, and the new one is closed %#',
    async (before) => {
      const { port, release, begun } = await holding({ maxConnections: 2 })
      const busy = [await caller(port, before + HELD), await caller(port, before + HELD)]
      await eventually(() => expect(begun()).toBe(2))
      const refused = await caller(port, LIVE)
      await eventually(() => expect(refused.isClosed).toBe(true))
      expect(refused.text).toBe('')
      release()
      await eventually(() => expect(busy.every(answered)).toBe(true))
    },
  )
})

describe('at the limit of one address', () => {
  const LIMIT = { maxConnectionsPerAddress: 2 }

  test('its own idle connections make room, and no one else’s', async () => {
    const { port } = await holding(LIMIT)
    const other = await caller(port, '', '127.0.0.2')
    const own = [await caller(port), await caller(port), await caller(port)]
    await eventually(() => expect(own.map(({ isClosed }) => isClosed)).toEqual([true, false, false]))
    expect(other.isClosed).toBe(false)
  })

  test('with as many requests under way, its next connection is closed, and another address is served', async () => {
    const { port, begun } = await holding(LIMIT)
    const busy = [await caller(port, HELD), await caller(port, HELD)]
    await eventually(() => expect(begun()).toBe(2))
    const refused = await caller(port, LIVE)
    const other = await caller(port, LIVE, '127.0.0.2')
    await eventually(() => expect([refused.isClosed, answered(other)]).toEqual([true, true]))
    expect(busy.some(({ isClosed }) => isClosed)).toBe(false)
    // One that has gone makes room.
    busy[0]?.socket.destroy()
    await eventually(async () => {
      const next = await caller(port, LIVE)
      await eventually(() => expect(answered(next) || next.isClosed).toBe(true))
      expect(answered(next)).toBe(true)
    })
  })

  test.each([
    ['a proxy that TRUST_PROXY names', { ...LIMIT, trustProxy: ['127.0.0.0/8'] }],
    ['anyone, where it trusts everyone', { ...LIMIT, trustProxy: true }],
    ['anyone, where no limit is set', { maxConnectionsPerAddress: 0 }],
  ])('there is none for %s', async (_, config) => {
    const { port, begun } = await holding(config)
    for (let index = 0; index < 5; index += 1) await caller(port, HELD)
    await eventually(() => expect(begun()).toBe(5))
  })
})

describe('a port for operations', () => {
  test('has health and metrics, and the main port has all else', async () => {
    const { at: main, operations } = await holding({ opsPort: 0 })
    for (const path of ['/health/live', '/health/ready', '/metrics']) {
      expect((await ask(operations + path)).status, path).toBe(200)
      const answer = await ask(main + path)
      expect(problemIn(answer, 404).detail, path).not.toMatch(/health|metrics/)
      expect((await ask(main + path, { method: 'OPTIONS' })).status, path).toBe(404)
      expect((await ask(main + path, { method: 'DELETE' })).status, path).toBe(404)
    }
    for (const path of ['/v1/sources', '/openapi.json', '/docs', '/']) {
      expect((await ask(main + path)).status, path).toBe(200)
      problemIn(await ask(operations + path), 404)
    }
    expect(problemIn(await ask(`${main}/health/liv`), 404).detail).not.toMatch(/health/)
  })

  test('is answered while every connection of the main port is taken, and while its own are', async () => {
    const { port, at: main, operations, begun } = await holding({ opsPort: 0, maxConnections: 3 })
    for (let index = 0; index < 3; index += 1) await caller(port, HELD)
    await eventually(() => expect(begun()).toBe(3))
    await expect(ask(`${main}/v1/sources`)).rejects.toThrow()
    const { port: apart } = new URL(operations)
    for (let index = 0; index < 150; index += 1) await caller(Number(apart))
    expect((await ask(`${operations}/health/live`)).status).toBe(200)
    expect((await ask(`${operations}/metrics`)).status).toBe(200)
  })

  test('ends with the service', async () => {
    const { app, operations } = await holding({ opsPort: 0 })
    await caller(Number(new URL(operations).port), LIVE)
    await app.close()
    await expect(ask(`${operations}/health/live`)).rejects.toThrow()
  })
})

test('localhost is served at both of its addresses', async () => {
  const app = await testedApp({ config: { host: 'localhost', port: 0 } })
  await app.serve()
  const { port } = app.server.address() as AddressInfo
  expect((await ask(`http://127.0.0.1:${port}/health/live`)).status).toBe(200)
  expect((await ask(`http://[::1]:${port}/health/live`)).status).toBe(200)
})
