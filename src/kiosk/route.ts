import type { FastifyPluginAsync, FastifyRequest } from 'fastify'
import { lazy } from '#shared/lazy.ts'
import { ProblemError } from '#src/http/problem.ts'
import { kioskOf } from './page.ts'

/** Of a build: the address says which, so that it may be kept for good. */
const FOR_GOOD = 'public, max-age=31536000, immutable'
const ASK_AGAIN = 'no-cache'

type File = { readonly Params: { readonly build: string; readonly '*': string } }

/** The page for a screen in the workshop, and the modules that it runs. */
export const kioskRoute: FastifyPluginAsync = async (app) => {
  const made = lazy((request: FastifyRequest) => kioskOf(app.runTask, request))

  app.get('/', { schema: { hide: true } }, async (request, reply) => {
    const { page, policy } = await made(request)
    reply.headers({ 'cache-control': ASK_AGAIN, 'content-security-policy': policy })
    return reply.type('text/html; charset=utf-8').send(page)
  })

  app.get('/service-worker.js', { schema: { hide: true } }, async (request, reply) => {
    const { serviceWorker } = await made(request)
    // A worker keeps to the policy that it came with, not to the page's.
    reply.headers({ 'cache-control': ASK_AGAIN, 'content-security-policy': "default-src 'none'; connect-src 'self'" })
    return reply.type('text/javascript; charset=utf-8').send(serviceWorker)
  })

  app.get<File>('/kiosk/:build/*', { schema: { hide: true } }, async (request, reply) => {
    const { build, files } = await made(request)
    const file = request.params.build === build ? files.get(request.params['*']) : undefined
    if (file === undefined) throw new ProblemError(404, 'There is no such file: the page asks for those it needs.')
    return reply.header('cache-control', FOR_GOOD).type(`${file.type}; charset=utf-8`).send(file.text)
  })
}
