import { isDeepStrictEqual } from 'node:util'
import type { FastifyPluginAsync } from 'fastify'
import type { TSchema } from 'typebox'
import { onTestFinished } from 'vitest'
import { buildApp } from '#src/app.ts'
import { type Config, DEFAULTS } from '#src/config.ts'

type Options = {
  readonly config?: Partial<Config>
  /** A route that the service does not have, under `/test`. */
  readonly route?: FastifyPluginAsync
  /** What that route alone points to. */
  readonly schemas?: readonly TSchema[]
  readonly logLines?: string[]
}

/** The service on a port of its own, as a caller meets it; it stops when the test is over. Gives back its address. */
export async function startedApp(options: Options = {}): Promise<string> {
  const { app, at } = await listening(options)
  onTestFinished(() => app.close())
  return at
}

const shared: { readonly options: Options; readonly at: Promise<string> }[] = []

/**
 * The service with such options, started once for all tests of a process and ended with it: for those that leave nothing
 * behind in it and count nothing of it. To start one, with its threads, takes longer than most of them.
 */
export function sharedApp(options: Omit<Options, 'logLines'> = {}): Promise<string> {
  const known = shared.find((each) => isDeepStrictEqual(each.options, options))
  if (known !== undefined) return known.at
  const at = listening(options).then((started) => started.at)
  shared.push({ options, at })
  return at
}

/** The service with its real options, not listening: for `inject`. */
export async function testedApp(options: Options = {}) {
  const app = await built(options)
  onTestFinished(() => app.close())
  return app
}

async function listening(options: Options) {
  const app = await built(options)
  return { app, at: await app.listen({ host: '127.0.0.1', port: 0 }) }
}

/**
 * Limits of time as for a machine that has far too much to do: none of them is to decide a test that does not set it. And many
 * services are ended: each without the delay in which a balancer would look elsewhere.
 */
const UNHURRIED = {
  shutdownDelayMs: 0,
  taskDeadlineMs: 600_000,
  maxLoopDelayMs: 600_000,
  requestTimeoutMs: 600_000,
  headersTimeoutMs: 600_000,
  // A caller and a service in one process see a kept connection's end in the same turn: one sends on what the other has closed.
  keepAliveTimeoutMs: 600_000,
} as const satisfies Partial<Config>

const built = ({ config, route, schemas, logLines }: Options) =>
  buildApp({
    config: { ...DEFAULTS, ...UNHURRIED, logLevel: logLines === undefined ? 'silent' : 'info', ...config },
    ...(route !== undefined && { routes: [{ route, prefix: '/test', ...(schemas && { schemas }) }] }),
    ...(logLines !== undefined && { logStream: { write: (line: string) => logLines.push(line) } }),
  })
