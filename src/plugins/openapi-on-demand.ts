import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'

const PATHS = ['/openapi.json', '/docs', '/docs/*']

/**
 * The document and its page, from a second service that is built when someone first asks. What they need has to be there
 * before the routes, and takes a quarter of a start that nearly always serves neither.
 */
export function describeOnDemand(app: FastifyInstance, build: () => Promise<FastifyInstance>): void {
  let documented: Promise<FastifyInstance> | undefined

  const pass = async (request: FastifyRequest, reply: FastifyReply): Promise<void> => {
    documented ??= readied(build)
    const { routing } = await documented
    reply.hijack()
    routing(request.raw, reply.raw)
  }

  for (const path of PATHS) app.get(path, { schema: { hide: true } }, pass)
  // One that could not be built has said so to whoever asked; there is nothing of it to close.
  app.addHook('onClose', () => documented?.then(({ close }) => close()).catch(() => {}))
}

async function readied(build: () => Promise<FastifyInstance>): Promise<FastifyInstance> {
  const app = await build()
  await app.ready()
  return app
}
