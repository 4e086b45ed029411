import type { IncomingMessage, ServerResponse } from 'node:http'
import type { Socket } from 'node:net'
import type { FastifyInstance } from 'fastify'

/** What Node keeps on a connection: the answer whose turn it is, and the request that is being read or was read last. */
type Connection = Socket & {
  readonly _httpMessage?: ServerResponse | null
  readonly parser?: { readonly incoming: IncomingMessage | null } | null
}

/**
 * Ends a connection on which nothing more can be read, with a last answer to what was being read there; without it where
 * it would be taken for another's: that has been answered before its body was there, or an answer has begun. An earlier
 * request that still waits for its answer gets it, and the connection closes with that.
 */
export function endConnection(connection: Connection, lastAnswer: string): void {
  const { _httpMessage: answer, parser } = connection
  const request = parser?.incoming ?? undefined
  const isInBody = request?.complete === false
  const isAwaited = answer?.headersSent === false
  if (isAwaited && !(isInBody && answer.req === request)) {
    answer.shouldKeepAlive = false
    return
  }
  if (connection.writable && (isAwaited || (!answer && !isInBody))) connection.write(lastAnswer)
  connection.destroy()
}

/**
 * Cuts connections on which nothing has moved for as long as they may be idle, unless it is this service that is awaited:
 * an answer can take longer to work out than a connection may be idle.
 */
export function cutIdleConnections({ server }: FastifyInstance): void {
  server.on('timeout', (connection: Connection) => {
    if (connection._httpMessage?.headersSent !== false) connection.destroy()
  })
}
