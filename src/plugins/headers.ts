import cors from '@fastify/cors'
import type { FastifyInstance } from 'fastify'
import type { Config, Origins } from '#src/config.ts'
import { headersOfUnread, setStandingHeaders } from '#src/http/answer-headers.ts'

declare module 'fastify' {
  interface FastifyInstance {
    /** Who may show a page of ours in a frame, for the policy of that page. */
    frameAncestors: string
    /** The headers of an answer to what could not be read as a request. */
    headersOfUnread: Readonly<Record<string, string>>
  }
}

const EXPOSED = ['ETag', 'Retry-After', 'X-Engine', 'X-Request-Id']
const EXPOSED_WITH_LIMIT = [
  ...EXPOSED,
  ...['RateLimit', 'RateLimit-Policy', 'X-RateLimit-Limit', 'X-RateLimit-Remaining', 'X-RateLimit-Reset'],
]

/**
 * On every answer, refusals too, or a script in a page could not read why it was refused: to be added before whatever refuses
 * a request or makes it wait. Set by hand, since the usual plugin builds its list anew for every request, which costs a
 * quarter of them. Answers may be used by any page: a course shows our drawings in its own. No `strict-transport-security`:
 * that is the business of a proxy that speaks TLS.
 */
export function setHeaders(
  app: FastifyInstance,
  {
    corsOrigin,
    frameAncestors,
    rateLimitPerMinute,
  }: Pick<Config, 'corsOrigin' | 'frameAncestors' | 'rateLimitPerMinute'>,
): void {
  app.decorate('frameAncestors', sourceList(frameAncestors))
  app.addHook('onRequest', (request, reply, done) => {
    setStandingHeaders(reply, request.id)
    done()
  })
  app.addHook('onSend', (_request, reply, body, done) => {
    reply.header('server-timing', `total;dur=${reply.elapsedTime.toFixed(1)}`)
    done(null, body)
  })
  const exposed = rateLimitPerMinute > 0 ? EXPOSED_WITH_LIMIT : EXPOSED
  app.decorate('headersOfUnread', headersOfUnread({ origins: corsOrigin, exposed }))
  if (corsOrigin === false) return
  app.register(cors, {
    origin: typeof corsOrigin === 'string' ? corsOrigin : [...corsOrigin],
    methods: ['GET', 'HEAD', 'POST'],
    exposedHeaders: exposed,
    maxAge: 86_400,
    // It only adds its headers: left to itself it answers a plain OPTIONS with a 400 in plain text.
    preflightContinue: true,
    strictPreflight: false,
  })
}

/** As a content security policy writes it. */
function sourceList(origins: Origins): string {
  if (origins === false) return "'none'"
  return origins === '*' ? '*' : origins.join(' ')
}
