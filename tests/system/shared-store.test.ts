import { execFileSync } from 'node:child_process'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { expect } from 'vitest'
import { storeAddress } from '#src/store-address.ts'
import { ask, post } from '#tests/support/ask.ts'
import { emptyFolder } from '#tests/support/empty-folder.ts'
import { eventually } from '#tests/support/eventually.ts'
import { freePort } from '#tests/support/free-port.ts'
import { startedApp } from '#tests/support/started-app.ts'
import { listening, start } from '#tests/support/started-process.ts'
import { testsThatNeed } from './needed.ts'
import { storeServer } from './store-server.ts'

const { describe, test } = testsThatNeed('redis-server', 'openssl')

const DESIGN = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }

/** On a busy machine a question can miss its deadline, or load be shed, though nothing is wrong. */
const AGAIN_IF_BUSY = { retry: 2 }

/** Longer than a store that failed is left alone. */
const AFTER_A_FAILURE_MS = 1_500

async function replica(address: string, rateLimitPerMinute = 3) {
  const rateLimitStore = storeAddress(address)
  if (rateLimitStore === undefined) throw new Error(`no address: ${address}`)
  const logLines: string[] = []
  const at = await startedApp({ config: { rateLimitPerMinute, rateLimitStore, maxLoopDelayMs: 600_000 }, logLines })
  return {
    at,
    statusOf: async () => (await post(`${at}/v1/design`, DESIGN)).status,
    uncounted: async () => uncountedAt(at),
    warnings: () => logLines.filter((line) => line.includes('shared store failed')),
  }
}

async function uncountedAt(at: string): Promise<number> {
  return Number(/^racewright_requests_uncounted_total (\d+)$/m.exec((await ask(`${at}/metrics`)).text)?.[1])
}

type Replica = Awaited<ReturnType<typeof replica>>

const statuses = async ({ statusOf }: Replica, count: number): Promise<readonly number[]> => {
  const seen: number[] = []
  for (let sent = 0; sent < count; sent += 1) seen.push(await statusOf())
  return seen
}

describe('replicas that share a store', AGAIN_IF_BUSY, () => {
  test.each([
    ['no login', '', []],
    ['a password', ':open%20sesame@', ['requirepass "open sesame"']],
    [
      'a user who may only count',
      'counter:sesame@',
      ['user counter on >sesame ~racewright:* +eval +incr +pexpire +pttl'],
    ],
  ])('count together: %s', async (_how, login, settings) => {
    const cli = login.startsWith(':') ? ['-a', 'open sesame', '--no-auth-warning'] : []
    const store = await storeServer({ settings, cli })
    const address = `redis://${login}127.0.0.1:${store.port}`
    const [one, other] = [await replica(address), await replica(address)]
    expect(await statuses(one, 2)).toEqual([200, 200])
    const third = await post(`${other.at}/v1/design`, DESIGN)
    expect(third).toMatchObject({ status: 200, headers: { 'x-ratelimit-remaining': '0' } })
    expect(Number(third.headers['x-ratelimit-reset'])).toBeGreaterThan(0)
    expect(Number(third.headers['x-ratelimit-reset'])).toBeLessThanOrEqual(60)
    expect(await other.statusOf()).toBe(429)
    expect(await one.statusOf()).toBe(429)
    const [key = ''] = store.tell('keys', '*').split('\n')
    expect(store.tell('get', key)).toBe('5')
    expect(await one.uncounted()).toBe(0)
    expect(one.warnings()).toEqual([])
  })

  test('find the primary through sentinels', async () => {
    const folder = emptyFolder()
    const store = await storeServer()
    const settings = [`sentinel monitor counts 127.0.0.1 ${store.port} 1`]
    const sentinel = await storeServer({ folder, settings, isSentinel: true })
    const gone = await freePort()
    const one = await replica(`redis+sentinel://127.0.0.1:${gone},127.0.0.1:${sentinel.port}/counts`)
    expect(await statuses(one, 4)).toEqual([200, 200, 200, 429])
    expect(store.tell('dbsize')).toBe('1')
    await store.stop()
    expect(await statuses(one, 4)).toEqual([200, 200, 200, 200])
  })

  test('find the server of a cluster that holds a count', async () => {
    const port = await freePort()
    const store = await storeServer({
      port,
      settings: ['cluster-enabled yes', `cluster-port ${port + 20_000}`, 'cluster-announce-ip 127.0.0.1'],
    })
    store.tell('cluster', 'addslotsrange', '0', '16383')
    await eventually(() => expect(store.tell('cluster', 'info')).toContain('cluster_state:ok'))
    const one = await replica(`redis+cluster://127.0.0.1:${port}`)
    expect(await statuses(one, 4)).toEqual([200, 200, 200, 429])
    expect(store.tell('dbsize')).toBe('1')
    await store.stop()
    expect(await statuses(one, 4)).toEqual([200, 200, 200, 200])
  })

  test('reach it by TLS, and count nothing where its certificate is not trusted', async () => {
    const folder = emptyFolder()
    const [key, certificate] = [join(folder, 'key.pem'), join(folder, 'certificate.pem')]
    const made = ['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256', '-nodes', '-days', '2']
    const named = ['-subj', '/CN=store', '-addext', 'subjectAltName=IP:127.0.0.1', '-keyout', key, '-out', certificate]
    execFileSync('openssl', [...made, ...named], { stdio: 'pipe' })
    const tlsPort = await freePort()
    const settings = [`tls-port ${tlsPort}`, `tls-cert-file ${certificate}`, `tls-key-file ${key}`]
    const store = await storeServer({ folder, settings: [...settings, 'tls-auth-clients no'] })
    const environment = { RATE_LIMIT_PER_MINUTE: '1', RATE_LIMIT_STORE: `rediss://127.0.0.1:${tlsPort}` }

    const trusting = await start({ ...environment, NODE_EXTRA_CA_CERTS: certificate })
    await listening(trusting)
    const statusOf = async (port: number) => (await post(`http://127.0.0.1:${port}/v1/design`, DESIGN)).status
    await eventually(async () => expect(await statusOf(trusting.port)).toBe(429))

    const wary = await start(environment)
    await listening(wary)
    expect([await statusOf(wary.port), await statusOf(wary.port)]).toEqual([200, 200])
    expect(store.tell('dbsize')).toBe('1')
    expect(wary.said.out).toContain('self-signed certificate')
  })
})

describe('nobody is stopped by a store that', AGAIN_IF_BUSY, () => {
  test('freezes, however many ask', async () => {
    const store = await storeServer()
    const one = await replica(`redis://127.0.0.1:${store.port}`, 1_000)
    expect(await statuses(one, 2)).toEqual([200, 200])
    store.freeze()
    // Far more than one in each of the waits: every one of them is written to the connection.
    const asked: Promise<number>[] = []
    for (let sent = 0; sent < 60; sent += 1) {
      asked.push(one.statusOf())
      await sleep(25)
    }
    expect(new Set(await Promise.all(asked))).toEqual(new Set([200]))
    expect(await one.uncounted()).toBe(60)
    expect(one.warnings()).toHaveLength(1)
    store.thaw()
    await sleep(AFTER_A_FAILURE_MS)
    await eventually(async () => {
      await one.statusOf()
      const before = await one.uncounted()
      await one.statusOf()
      expect(await one.uncounted()).toBe(before)
    })
  })

  test('is killed; and it counts again when it is back', async () => {
    const store = await storeServer()
    const one = await replica(`redis://127.0.0.1:${store.port}`, 1)
    expect(await statuses(one, 2)).toEqual([200, 429])
    await store.stop()
    expect(new Set(await statuses(one, 20))).toEqual(new Set([200]))
    expect(await one.uncounted()).toBe(20)
    expect(one.warnings()).toHaveLength(1)
    await storeServer({ port: store.port })
    await eventually(async () => expect(await one.statusOf()).toBe(429))
  })

  test('was never there', async () => {
    const one = await replica(`redis://127.0.0.1:${await freePort()}`, 1)
    expect(new Set(await statuses(one, 10))).toEqual(new Set([200]))
    expect(await one.uncounted()).toBe(10)
    expect(one.warnings()).toHaveLength(1)
    expect(one.warnings()[0]).toContain('ECONNREFUSED')
  })

  test('has no memory left', async () => {
    const store = await storeServer({ settings: ['maxmemory-policy noeviction'] })
    const one = await replica(`redis://127.0.0.1:${store.port}`, 1)
    expect(await statuses(one, 2)).toEqual([200, 429])
    store.tell('config', 'set', 'maxmemory', '1')
    expect(new Set(await statuses(one, 10))).toEqual(new Set([200]))
    expect(await one.uncounted()).toBe(10)
    expect(one.warnings()).toHaveLength(1)
    expect(one.warnings()[0]).toContain('OOM')
    store.tell('config', 'set', 'maxmemory', '0')
    await eventually(async () => expect(await one.statusOf()).toBe(429))
  })

  test.each([
    ['gives no right to count', 'counter:sesame@', 'NOPERM'],
    ['does not know the password', ':barley@', 'WRONGPASS'],
  ])('%s', async (_how, login, reason) => {
    const store = await storeServer({
      settings: ['user counter on >sesame ~* +ping', 'requirepass secret'],
      cli: ['-a', 'secret', '--no-auth-warning'],
    })
    const one = await replica(`redis://${login}127.0.0.1:${store.port}`, 1)
    expect(new Set(await statuses(one, 10))).toEqual(new Set([200]))
    expect(await one.uncounted()).toBe(10)
    expect(one.warnings()).toHaveLength(1)
    expect(one.warnings()[0]).toContain(reason)
    expect(one.warnings()[0]).not.toMatch(/sesame|barley/)
  })
})
