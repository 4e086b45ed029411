import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { lazy } from '#shared/lazy.ts'

const PATHS = ['/openapi.json', '/docs', '/docs/*']

/**
 * The document and its page, from a second service that is built when someone first asks. What they need has to be there
 * before the routes, and takes a quarter of a start that nearly always serves neither.
 */
export function describeOnDemand(app: FastifyInstance, build: () => Promise<FastifyInstance>): void {
  const documented = lazy(() => readied(build))

  const pass = async (request: FastifyRequest, reply: FastifyReply): Promise<void> => {
    const { routing } = await documented()
    reply.hijack()
    routing(request.raw, reply.raw)
  }

  for (const path of PATHS) app.get(path, { schema: { hide: true } }, pass)
  app.addHook('onClose', async () => {
    // If it cannot be built, whoever asked for it has the error, and there is nothing to close.
    const built = await documented.started()?.catch(() => undefined)
    await built?.close()
  })
}

async function readied(build: () => Promise<FastifyInstance>): Promise<FastifyInstance> {
  const app = await build()
  try {
    await app.ready()
  } catch (error) {
    await app.close()
    throw error
  }
  return app
}
