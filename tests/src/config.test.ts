import { describe, expect, test } from 'vitest'
import { DEFAULTS, misspelt, readConfig, VARIABLES } from '#src/config.ts'

test('nothing set: the defaults', () => {
  expect(readConfig({ PATH: '/bin' })).toEqual({ ok: true, value: DEFAULTS })
})

test('everything set', () => {
  const environment = {
    HOST: '0.0.0.0',
    PORT: '0',
    OPS_PORT: '8081',
    LOG_LEVEL: 'warn',
    TRUST_PROXY: '10.0.0.0/8, ::1',
    BODY_LIMIT_BYTES: '65536',
    REQUEST_TIMEOUT_MS: '3000',
    HEADERS_TIMEOUT_MS: '2000',
    KEEP_ALIVE_TIMEOUT_MS: '1000',
    MAX_LOOP_DELAY_MS: '400',
    SHUTDOWN_GRACE_MS: '5000',
    SHUTDOWN_DELAY_MS: '100',
    WORKER_THREADS: '3',
    TASK_DEADLINE_MS: '2500',
    CORS_ORIGIN: 'https://example.org, http://localhost:3000',
    METRICS: 'false',
    MAX_CONNECTIONS: '500',
    MAX_CONNECTIONS_PER_ADDRESS: '50',
    RATE_LIMIT_PER_MINUTE: '600',
    RATE_LIMIT_STORE: 'redis://:open%20sesame@store.lan:6380',
    FRAME_ANCESTORS: 'https://courses.example',
    PUBLIC_URL: 'https://bench.example/bearings/',
  }
  expect(readConfig(environment)).toEqual({
    ok: true,
    value: {
      host: '0.0.0.0',
      port: 0,
      opsPort: 8081,
      logLevel: 'warn',
      trustProxy: ['10.0.0.0/8', '::1'],
      bodyLimitBytes: 65_536,
      requestTimeoutMs: 3_000,
      headersTimeoutMs: 2_000,
      keepAliveTimeoutMs: 1_000,
      maxLoopDelayMs: 400,
      shutdownGraceMs: 5_000,
      shutdownDelayMs: 100,
      workerThreads: 3,
      taskDeadlineMs: 2_500,
      corsOrigin: ['https://example.org', 'http://localhost:3000'],
      metrics: false,
      maxConnections: 500,
      maxConnectionsPerAddress: 50,
      rateLimitPerMinute: 600,
      rateLimitStore: {
        kind: 'server',
        hosts: [{ host: 'store.lan', port: 6380 }],
        login: { password: 'open sesame' },
        isEncrypted: false,
      },
      frameAncestors: ['https://courses.example'],
      publicUrl: 'https://bench.example/bearings',
    },
  })
})

describe('one thing wrong', () => {
  test.each([
    ['PORT', ['', ' 80', '80.5', '8e1', '0x50', '-1', '65536', '080', '٨٠'], 'a whole number from 0 to 65535'],
    ['OPS_PORT', ['', 'none', '65536'], 'a whole number from 0 to 65535'],
    ['BODY_LIMIT_BYTES', ['1023', '1k', '99999999999'], 'a whole number from 1024 to 16777216'],
    ['HOST', ['', 'not a host', '-a', 'a/b'], 'a host name or an IP address'],
    ['LOG_LEVEL', ['', 'INFO', 'verbose'], 'one of fatal, error, warn, info, debug, trace, silent'],
    ['TRUST_PROXY', ['', 'yes', '10.0.0.0/33', '10.0.0/8', '::1/129', '1/2/3'], /^true, false, or IP addresses/],
    ['METRICS', ['', 'yes', 'TRUE', '1'], 'true or false'],
    ['CORS_ORIGIN', ['', 'example.org', 'https://example.org/', 'HTTPS://example.org', '*,*'], /^\*, none, or origins/],
    [
      'PUBLIC_URL',
      ['', 'bench.example', 'ftp://a.example', 'https://a.example/?b', 'https://a:b@c.example'],
      /^an address/,
    ],
    ['FRAME_ANCESTORS', ['', "'self'", 'https://a.example; script-src *'], /^\*, none, or origins/],
  ])('%s', (name, values, expected) => {
    for (const value of values) {
      const read = readConfig({ [name]: value })
      expect(read.ok, value).toBe(false)
      if (read.ok) continue
      expect(read.error).toHaveLength(1)
      const [sentence = ''] = read.error
      expect(sentence.startsWith(`${name} must be `)).toBe(true)
      expect(sentence.endsWith(`, got ${JSON.stringify(value)}`)).toBe(true)
      expect(sentence.slice(`${name} must be `.length)).toMatch(expected)
    }
  })
})

test('all that is wrong comes at once, limits between two settings too', () => {
  const read = readConfig({
    PORT: 'eighty',
    LOG_LEVEL: 'loud',
    REQUEST_TIMEOUT_MS: '1000',
    HEADERS_TIMEOUT_MS: '2000',
    SHUTDOWN_DELAY_MS: '9000',
    OPS_PORT: '8080',
  })
  expect(read).toEqual({
    ok: false,
    error: [
      'PORT must be a whole number from 0 to 65535, got "eighty"',
      'LOG_LEVEL must be one of fatal, error, warn, info, debug, trace, silent, got "loud"',
      'OPS_PORT must differ from PORT, got 8080 for both',
      'HEADERS_TIMEOUT_MS must be at most REQUEST_TIMEOUT_MS, got 2000 and 1000',
      'SHUTDOWN_DELAY_MS must be below SHUTDOWN_GRACE_MS, got 9000 and 8000',
    ],
  })
})

test.each([
  ['true', true],
  ['false', false],
])('TRUST_PROXY=%s', (text, trustProxy) => {
  expect(readConfig({ TRUST_PROXY: text })).toMatchObject({ ok: true, value: { trustProxy } })
})

test('CORS_ORIGIN=none', () => {
  expect(readConfig({ CORS_ORIGIN: 'none' })).toMatchObject({ ok: true, value: { corsOrigin: false } })
})

test('RATE_LIMIT_STORE=memory', () => {
  expect(readConfig({ RATE_LIMIT_STORE: 'memory' })).toMatchObject({ ok: true, value: { rateLimitStore: 'memory' } })
})

test('RATE_LIMIT_STORE is not repeated where it is refused: it may contain a password', () => {
  expect(readConfig({ RATE_LIMIT_STORE: 'redis://:secret@host/1' })).toEqual({
    ok: false,
    error: [
      'RATE_LIMIT_STORE must be memory, or an address, for example redis://:password@host:6379, got something else',
    ],
  })
})

describe('a name that looks misspelt', () => {
  test.each([
    ['RATE_LIMIT_PER_MINUT', 'RATE_LIMIT_PER_MINUTE'],
    ['LOGLEVEL', 'LOG_LEVEL'],
    ['LOG_LEVLE', 'LOG_LEVEL'],
    ['WORKER_THREAD', 'WORKER_THREADS'],
    ['WORKERS_THREADSS', 'WORKER_THREADS'],
    ['MAX_CONECTIONS', 'MAX_CONNECTIONS'],
  ])('%s is recognized', (name, meant) => {
    expect(misspelt({ PATH: '/bin', [name]: '1' })).toEqual([{ name, meant }])
  })

  test.each([
    'PATH',
    'HOSTS',
    'POST',
    'METRIC', // a name of seven letters is not guessed
    'LOG_LEVER_2', // three letters off
    'LOG_LINES',
    '',
    '__proto__',
    'x'.repeat(100_000),
  ])('%.20s is left alone', (name) => {
    expect(misspelt(Object.fromEntries([[name, '1']]))).toEqual([])
  })

  test('a known name is never one, and every name that is read is known', () => {
    expect(misspelt(Object.fromEntries(VARIABLES.map((name) => [name, '1'])))).toEqual([])
    const read = new Set<string>()
    readConfig(
      new Proxy<Record<string, string>>(
        {},
        { get: (_target, name) => void (typeof name === 'string' && read.add(name)) },
      ),
    )
    expect([...read].sort()).toEqual([...VARIABLES].sort())
  })
})
