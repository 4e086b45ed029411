import type { AddressInfo } from 'node:net'
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
  const app = await testedApp(options)
  await app.listen({ host: '127.0.0.1', port: 0 })
  return `http://127.0.0.1:${(app.server.address() as AddressInfo).port}`
}

/** The service with its real options, not listening: for `inject`. */
export async function testedApp({ config, route, schemas, logLines }: Options = {}) {
  const app = await buildApp({
    // Tests end many services: each without the delay in which a balancer would look elsewhere.
    config: { ...DEFAULTS, shutdownDelayMs: 0, logLevel: logLines === undefined ? 'silent' : 'info', ...config },
    ...(route !== undefined && { routes: [{ route, prefix: '/test', ...(schemas && { schemas }) }] }),
    ...(logLines !== undefined && { logStream: { write: (line: string) => logLines.push(line) } }),
  })
  onTestFinished(() => app.close())
  return app
}
