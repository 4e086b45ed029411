import { once } from 'node:events'
import { createServer, type Server, type ServerOptions } from 'node:http'
import { type AddressInfo, isIPv6, type Socket } from 'node:net'
import type { FastifyInstance } from 'fastify'
import type { Config } from '#src/config.ts'
import type { IsServed } from '#src/http/addresses.ts'
import { clientErrorHandler } from '#src/http/client-error.ts'
import { type Connections, openConnections } from '#src/http/connections.ts'

declare module 'fastify' {
  interface FastifyInstance {
    /** Listens wherever the configuration says, or throws what stands against it. */
    serve(): Promise<void>
  }
}

/** What those who run the service ask of it: probes and scrapes. */
const OPERATIONS = /^\/(health\/|metrics$)/

/** A probe or a scrape has one connection; so many are enough for any house. */
const MOST_OPERATIONS_CONNECTIONS = 100

/** `localhost` has two addresses. */
const LOOPBACK = ['127.0.0.1', '::1'] as const

type Ports = Pick<Config, 'host' | 'port' | 'opsPort' | 'keepAliveTimeoutMs'>

/**
 * Adds the ports beside Fastify's own: the second address of `localhost`, and the port for operations, which has a limit of
 * connections to itself, so that no number of callers keeps a probe out.
 *
 * @returns which routes are served on the port at which a request came in
 */
export function addPorts(
  app: FastifyInstance,
  { host, port, opsPort, keepAliveTimeoutMs }: Ports,
  options: ServerOptions,
  connections: Connections,
): IsServed {
  const further: Server[] = []
  const operationsSockets = new WeakSet<Socket>()
  const address = host === 'localhost' ? LOOPBACK[0] : host

  const furtherServer = (watchedBy: Connections): Server => {
    const server = createServer({ ...options, keepAliveTimeout: keepAliveTimeoutMs })
    server.on('request', (request, response) => app.routing(request, response))
    server.on('checkExpectation', (request, response) => app.routing(request, response))
    server.on('clientError', clientErrorHandler.bind(app))
    server.setTimeout(keepAliveTimeoutMs)
    watchedBy.watch(server)
    further.push(server)
    return server
  }

  const serveOperations = async (at: number): Promise<void> => {
    const apart = openConnections({ most: MOST_OPERATIONS_CONNECTIONS, mostPerCaller: 0, callerOf: () => undefined })
    const server = furtherServer(apart)
    server.on('connection', (socket) => operationsSockets.add(socket))
    await listening(server, address, at)
    app.log.info(`Health and metrics at ${urlOf(server)}`)
  }

  app.decorate('serve', async () => {
    try {
      await app.ready()
      if (opsPort !== null) await serveOperations(opsPort)
      await app.listen({ host: address, port })
      if (host !== 'localhost') return
      // A machine without IPv6 is served at the one address that it has.
      await listening(furtherServer(connections), LOOPBACK[1], portOf(app.server)).catch(() => {})
    } catch (error) {
      await app.close()
      throw error
    }
  })
  // All that is under way has been answered by then: probes may ask until the end.
  app.addHook('onClose', async () => {
    for (const server of further) {
      server.close()
      server.closeAllConnections()
    }
  })
  if (opsPort === null) return () => true
  return (route, { raw: { socket } }) => operationsSockets.has(socket) === OPERATIONS.test(route)
}

async function listening(server: Server, host: string, port: number): Promise<void> {
  server.listen(port, host)
  await once(server, 'listening')
}

const portOf = (server: Server): number => (server.address() as AddressInfo).port

function urlOf(server: Server): string {
  const { address } = server.address() as AddressInfo
  return `http://${isIPv6(address) ? `[${address}]` : address}:${portOf(server)}`
}
