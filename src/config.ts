import { isIP } from 'node:net'
import { availableParallelism } from 'node:os'
import { closestMatch } from 'leven'
import { fail, ok, type Result } from '#shared/result.ts'
import { type StoreAddress, storeAddress } from './store-address.ts'

const LOG_LEVELS = ['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'] as const
type LogLevel = (typeof LOG_LEVELS)[number]

export type Config = {
  readonly host: string
  readonly port: number
  /** The port of health and metrics; null puts them on `port`. */
  readonly opsPort: number | null
  readonly logLevel: LogLevel
  /** Whose `X-Forwarded-…` headers are trusted: nobody's, everybody's, or those of these addresses and networks. */
  readonly trustProxy: boolean | readonly string[]
  readonly bodyLimitBytes: number
  readonly requestTimeoutMs: number
  readonly headersTimeoutMs: number
  readonly keepAliveTimeoutMs: number
  /** How late the event loop may run before requests are refused. */
  readonly maxLoopDelayMs: number
  readonly shutdownGraceMs: number
  readonly shutdownDelayMs: number
  /** Threads for work that would delay other requests. */
  readonly workerThreads: number
  /** How long an answer that needs worker threads may take. */
  readonly taskDeadlineMs: number
  /** Whether `/metrics` exists. */
  readonly metrics: boolean
  /** Above it, a new connection replaces the one that has been idle longest. */
  readonly maxConnections: number
  /** The same for the connections of one address that is no trusted proxy; 0 sets no limit. */
  readonly maxConnectionsPerAddress: number
  /** Requests that one address may send in a minute; 0 does not count. */
  readonly rateLimitPerMinute: number
  /** The store that counts them: this process, or a store that all replicas share. */
  readonly rateLimitStore: 'memory' | StoreAddress
  /** The pages that may read answers from a script: all, none, or these origins. */
  readonly corsOrigin: Origins
  /** The pages that may show our figures and sheets in a frame: all, none, or these origins. */
  readonly frameAncestors: Origins
  /** The address of this service as people outside reach it; null where nobody has said it. */
  readonly publicUrl: string | null
}

/** Any, none, or these. */
export type Origins = '*' | false | readonly string[]

export const DEFAULTS: Config = {
  // Loopback, so that a first start on a shop computer is not open to its network; the container image says 0.0.0.0.
  host: '127.0.0.1',
  port: 8080,
  opsPort: null,
  logLevel: 'info',
  trustProxy: false,
  // The largest honest request, a lot of some thousand measured balls, stays under 64 KiB; twice that.
  bodyLimitBytes: 131_072,
  requestTimeoutMs: 15_000,
  headersTimeoutMs: 10_000,
  // Longer than the 60 s for which common proxies keep an idle connection: the proxy must be the one that closes it.
  keepAliveTimeoutMs: 72_000,
  // Whoever has waited a second for an answer of a millisecond waits behind more than can be worked off.
  maxLoopDelayMs: 1_000,
  // Shorter than the 10 s that a container engine waits before it kills.
  shutdownGraceMs: 8_000,
  // Whoever stops a service by hand can wait a second; a balancer that asks more seldom needs more.
  shutdownDelayMs: 1_000,
  // One core stays with the event loop.
  workerThreads: Math.max(1, availableParallelism() - 1),
  // The largest honest check, 2,000,000 trials of a ring with some forty balls, takes a second or two of one core.
  taskDeadlineMs: 10_000,
  corsOrigin: '*',
  metrics: true,
  // Each takes some 20 KB while it is idle: 200 MB in all.
  maxConnections: 10_000,
  // A tenth of all. No school or proxy has so many requests in progress at the same time, and only those count: idle
  // connections make room.
  maxConnectionsPerAddress: 1_000,
  // Not by itself: behind a proxy that TRUST_PROXY does not name, and behind one router of a school, an address is not a
  // caller, and a limit that is right for one caller shuts out a class. The queue limits expensive work.
  rateLimitPerMinute: 0,
  rateLimitStore: 'memory',
  // A course page may show them; nothing in them can be clicked to any effect.
  frameAncestors: '*',
  // No address is right by itself: a code that leads nowhere is worse than none.
  publicUrl: null,
}

/** In a shorter name two letters are too many: they turn PORT into PATH. */
const SHORTEST_GUESSED = 8
const MOST_TYPOS = 2

type Environment = Readonly<Record<string, string | undefined>>

/** How the text of a variable is read: undefined where it must be otherwise. */
type Reader<T> = {
  readonly read: (text: string) => T | undefined
  readonly expected: string
  /** The value may contain a password, and sentences end up in logs. */
  readonly isSecret?: true
}

const whole = (least: number, most: number): Reader<number> => ({
  read: (text) => wholeNumber(text, least, most),
  expected: `a whole number from ${least} to ${most}`,
})
const ORIGINS: Reader<Origins> = {
  read: origins,
  expected: '*, none, or origins separated by commas, for example https://example.org',
}

const READERS: { readonly [Name in keyof Config]: Reader<Config[Name]> } = {
  host: { read: host, expected: 'a host name or an IP address' },
  port: whole(0, 65_535),
  logLevel: { read: logLevel, expected: `one of ${LOG_LEVELS.join(', ')}` },
  trustProxy: {
    read: trustProxy,
    expected: 'true, false, or IP addresses and networks separated by commas, for example 10.0.0.0/8',
  },
  bodyLimitBytes: whole(1_024, 16_777_216),
  requestTimeoutMs: whole(100, 600_000),
  headersTimeoutMs: whole(100, 600_000),
  keepAliveTimeoutMs: whole(100, 600_000),
  maxLoopDelayMs: whole(10, 600_000),
  shutdownGraceMs: whole(100, 600_000),
  shutdownDelayMs: whole(0, 600_000),
  workerThreads: whole(1, 256),
  taskDeadlineMs: whole(1, 600_000),
  metrics: { read: trueOrFalse, expected: 'true or false' },
  maxConnections: whole(1, 1_000_000),
  maxConnectionsPerAddress: whole(0, 1_000_000),
  opsPort: whole(0, 65_535),
  rateLimitPerMinute: whole(0, 10_000_000),
  rateLimitStore: {
    read: store,
    expected: 'memory, or an address, for example redis://:password@host:6379',
    isSecret: true,
  },
  corsOrigin: ORIGINS,
  frameAncestors: ORIGINS,
  publicUrl: { read: publicUrl, expected: 'an address without a query, for example https://bearings.example.org' },
}

/** The variable of a setting: `TASK_DEADLINE_MS` for `taskDeadlineMs`. */
const variableOf = (name: string): string => name.replace(/[A-Z]/g, '_$&').toUpperCase()

/** Every variable that the service reads. */
export const VARIABLES: readonly string[] = Object.keys(READERS).map(variableOf)

/** The settings from the environment, or a sentence for every variable that is wrong. */
export function readConfig(environment: Environment): Result<Config, readonly string[]> {
  const faults: string[] = []
  const read = (name: string, { read, expected, isSecret }: Reader<unknown>): unknown => {
    const variable = variableOf(name)
    const text = environment[variable]
    const value = text === undefined ? undefined : read(text)
    if (text !== undefined && value === undefined)
      faults.push(`${variable} must be ${expected}, got ${isSecret ? 'something else' : JSON.stringify(text)}`)
    return value
  }
  const values = Object.entries(READERS).map(([name, reader]) => [name, read(name, reader)] as const)
  // Each reader gives the type of its setting.
  const config: Config = { ...DEFAULTS, ...Object.fromEntries(values.filter(([, value]) => value !== undefined)) }
  if (config.opsPort === config.port && config.port !== 0)
    faults.push(`OPS_PORT must differ from PORT, got ${config.port} for both`)
  if (config.headersTimeoutMs > config.requestTimeoutMs)
    faults.push(
      `HEADERS_TIMEOUT_MS must be at most REQUEST_TIMEOUT_MS, got ${config.headersTimeoutMs} and ${config.requestTimeoutMs}`,
    )
  if (config.shutdownDelayMs >= config.shutdownGraceMs)
    faults.push(
      `SHUTDOWN_DELAY_MS must be below SHUTDOWN_GRACE_MS, got ${config.shutdownDelayMs} and ${config.shutdownGraceMs}`,
    )
  return faults.length === 0 ? ok(config) : fail(faults)
}

/**
 * The variables of an environment that nothing reads and that look like a misspelling of one of ours: at most two letters from a
 * name of eight or more. All other variables belong to other programs.
 */
export function misspelt(environment: Environment): readonly { readonly name: string; readonly meant: string }[] {
  const guessed = VARIABLES.filter(({ length }) => length >= SHORTEST_GUESSED)
  return Object.keys(environment)
    .filter((name) => !VARIABLES.some((known) => known === name))
    .flatMap((name) => {
      const meant = closestMatch(name, guessed, { maxDistance: MOST_TYPOS })
      return meant === undefined ? [] : [{ name, meant }]
    })
}

/** Digits alone: `Number` also takes blanks, exponents and hexadecimal, none of which anyone means here. */
function wholeNumber(text: string, least: number, most: number): number | undefined {
  if (!/^(0|[1-9]\d{0,9})$/.test(text)) return undefined
  const value = Number(text)
  return value >= least && value <= most ? value : undefined
}

function host(text: string): string | undefined {
  return isIP(text) !== 0 || /^[a-z\d]([a-z\d.-]{0,251}[a-z\d])?$/i.test(text) ? text : undefined
}

function logLevel(text: string): LogLevel | undefined {
  return LOG_LEVELS.find((level) => level === text)
}

function trueOrFalse(text: string): boolean | undefined {
  return text === 'true' || text === 'false' ? text === 'true' : undefined
}

function trustProxy(text: string): boolean | readonly string[] | undefined {
  const networks = list(text)
  return trueOrFalse(text) ?? (networks.every(isNetwork) ? networks : undefined)
}

function isNetwork(text: string): boolean {
  const [address = '', prefix, ...more] = text.split('/')
  const version = isIP(address)
  if (version === 0 || more.length > 0) return false
  return prefix === undefined || wholeNumber(prefix, 0, version === 4 ? 32 : 128) !== undefined
}

function origins(text: string): Origins | undefined {
  if (text === '*') return '*'
  if (text === 'none') return false
  const all = list(text)
  return all.every(isOrigin) ? all : undefined
}

/** An origin as a browser sends it: scheme, host and port, no path, lower case. */
function isOrigin(text: string): boolean {
  return /^https?:/.test(text) && URL.parse(text)?.origin === text
}

/** Without the stroke at its end: paths are appended to it. */
function publicUrl(text: string): string | undefined {
  const url = /^https?:\/\/[^\s?#]{1,100}$/.test(text) ? URL.parse(text) : null
  return url === null || url.username !== '' ? undefined : text.replace(/\/$/, '')
}

function store(text: string): 'memory' | StoreAddress | undefined {
  return text === 'memory' ? text : storeAddress(text)
}

function list(text: string): readonly string[] {
  return text.split(',').map((part) => part.trim())
}
