import type { FastifyPluginAsync, FastifyReply, FastifyRequest } from 'fastify'
import { lazy } from '#shared/lazy.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { notValid } from '#src/http/problem.ts'
import { SEND_ONE } from '#src/words/tools.ts'

/** Both, whatever the caller says: what it can read is settled between its library and ours by the version of the protocol. */
const ACCEPT = 'application/json, text/event-stream'

/**
 * The tools for programs that are driven by language models, by the Model Context Protocol over streamable HTTP. It is stateless: a
 * server for each message, no session, and no stream that stays open. Body limits, rate limit and refusals are those of every path.
 */
export const mcpRoute: FastifyPluginAsync = async (app) => {
  // Loaded where it is asked for: a start has no time for it.
  const made = lazy(async () => {
    const [sdk, { listedTools, toolServer }] = await Promise.all([
      import('@modelcontextprotocol/server'),
      import('./server.ts'),
    ])
    const tools = listedTools(app)
    const askers = new WeakMap<Request, FastifyRequest>()
    const handler = sdk.createMcpHandler(
      ({ requestInfo }) => {
        const asker = requestInfo === undefined ? undefined : askers.get(requestInfo)
        if (asker === undefined) throw new RangeError('requestInfo must be that of a message of a caller')
        return toolServer(app, sdk, tools, asker)
      },
      { onerror: (error) => app.log.debug({ err: error }, 'message of a tool refused'), maxSubscriptions: 0 },
    )
    return { handler, askers }
  })
  app.addHook('onClose', async () => void (await (await made.started())?.handler.close()))

  app.post('/mcp', { schema: { hide: true } }, async (request, reply) => {
    if (typeof request.body !== 'object' || request.body === null || Array.isArray(request.body))
      throw notValid([{ path: '', message: SEND_ONE }])
    const { handler, askers } = await made()
    const message = messageOf(request)
    askers.set(message, request)
    return send(reply, await handler.fetch(message, { parsedBody: request.body }))
  })
}

/** The request as the library reads it: its own headers alone count. */
function messageOf({ headers }: FastifyRequest): Request {
  const kept = new Headers({ accept: ACCEPT, 'content-type': JSON_TYPE })
  for (const [name, value] of Object.entries(headers))
    if (name.startsWith('mcp-') && typeof value === 'string') kept.set(name, value)
  return new Request('http://localhost/mcp', { method: 'POST', headers: kept })
}

async function send(reply: FastifyReply, answer: Response): Promise<FastifyReply> {
  const type = answer.headers.get('content-type')
  if (type !== null) reply.type(type)
  return reply.code(answer.status).send((await answer.text()) || undefined)
}
