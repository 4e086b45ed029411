import type { FastifyPluginAsync, FastifyReply, FastifyRequest } from 'fastify'
import { lazy } from '#shared/lazy.ts'
import { isKept } from '#src/http/caching.ts'
import { kioskPage, kioskWorker } from './page.ts'

/** Kept, and checked at every visit: it costs little, and a new build is on the screen at once. */
const CHECKED = 'no-cache'

/** A worker keeps to the policy that it came with, not to the page's. */
const WORKER_POLICY = "default-src 'none'; connect-src 'self'"

/** The page for a screen in the workshop, and the worker that keeps it there. */
export const kioskRoute: FastifyPluginAsync = async (app) => {
  // No caller's work: all who ask meanwhile wait for it, whoever of them leaves.
  const made = lazy(() => kioskPage(app.runOwnTask, app.publicUrl))
  const workerMade = lazy(() => kioskWorker(app.runOwnTask, app.publicUrl))
  const answer = (request: FastifyRequest, reply: FastifyReply, type: string, pagePolicy: string, body: Buffer) =>
    isKept(request, reply, { publicUrl: app.publicUrl, input: '', mediaType: type, pagePolicy, cacheControl: CHECKED })
      ? reply.code(304).send()
      : reply.type(`${type}; charset=utf-8`).send(body)

  app.get('/', { schema: { hide: true } }, async (request, reply) => {
    const { page, policy } = await made()
    return answer(request, reply, 'text/html', policy, page)
  })

  app.get('/service-worker.js', { schema: { hide: true } }, async (request, reply) => {
    return answer(request, reply, 'text/javascript', WORKER_POLICY, await workerMade())
  })
}
