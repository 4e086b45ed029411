import rateLimit, { type FastifyRateLimitStoreCtor } from '@fastify/rate-limit'
import type { FastifyInstance } from 'fastify'
import type { Config } from '#src/config.ts'
import { computes } from '#src/http/computing-paths.ts'
import { ProblemError } from '#src/http/problem.ts'
import { tooManyRequests } from '#src/http/sentences.ts'
import type { StoreAddress } from '#src/store-address.ts'

const WINDOW_MS = 60_000

/** Addresses that are counted at the same time; beyond it the one longest unseen is forgotten. */
const MOST_ADDRESSES = 10_000

type Limit = Pick<Config, 'rateLimitPerMinute' | 'rateLimitStore'>

/**
 * So many requests a minute from one address, and 429 beyond. Counted is what computes; what the service says about itself
 * is not, for a probe or a scrape that is refused looks like a service that is down.
 *
 * Every answer that was counted says what is left of the limit, so that a caller can slow down before it is refused.
 */
export async function limitRates(app: FastifyInstance, { rateLimitPerMinute, rateLimitStore }: Limit): Promise<void> {
  app.addHook('onRoute', (route) => {
    if (!computes(route.url)) route.config = { ...route.config, rateLimit: false }
  })
  await app.register(rateLimit, {
    max: rateLimitPerMinute,
    timeWindow: WINDOW_MS,
    errorResponseBuilder: (_request, { max, ttl }) =>
      new ProblemError(429, tooManyRequests(max, Math.ceil(ttl / 1000))),
    // A store that cannot be reached must not stop the service that it is there to protect.
    skipOnError: true,
    ...(rateLimitStore === 'memory' ? { cache: MOST_ADDRESSES } : { store: await storeAt(app, rateLimitStore) }),
  })
  // Beside the plugin's own: the two fields of draft-ietf-httpapi-ratelimit-headers-10.
  app.addHook('onSend', (_request, reply, body, done) => {
    const left = reply.getHeader('x-ratelimit-remaining')
    if (left !== undefined)
      reply.headers({
        ratelimit: `"minute";r=${left};t=${reply.getHeader('x-ratelimit-reset')}`,
        'ratelimit-policy': `"minute";q=${rateLimitPerMinute};w=${WINDOW_MS / 1000}`,
      })
    done(null, body)
  })
}

/** Loaded where it is asked for: the client is large. */
async function storeAt(app: FastifyInstance, address: StoreAddress): Promise<FastifyRateLimitStoreCtor> {
  const { sharedStore } = await import('./shared-store.ts')
  return sharedStore(app, address)
}
