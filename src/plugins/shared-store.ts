import { once } from 'node:events'
import type { FastifyRateLimitStore, FastifyRateLimitStoreCtor } from '@fastify/rate-limit'
import type { FastifyInstance } from 'fastify'
import type { StoreAddress } from '#src/store-address.ts'
import { RETRY_MS, type StoreClient, storeClient } from './store-client.ts'
import { storeFailures } from './store-failures.ts'

declare module 'fastify' {
  interface FastifyInstance {
    /** Requests that a shared store should have counted and did not; missing where no store is shared. */
    uncountedRequests?: () => number
  }
}

type Count = { readonly current: number; readonly ttl: number }

/** One more for a caller, and how long its minute still lasts: one step, so that no count is left without its end. */
const COUNT =
  "local n = redis.call('INCR', KEYS[1]) if n == 1 then redis.call('PEXPIRE', KEYS[1], ARGV[1]) end " +
  "return { n, redis.call('PTTL', KEYS[1]) }"

const KEY = 'racewright:requests:'

/** Longer than a store in the same house ever takes; a request waits no longer for its count. */
const PATIENCE_MS = 250

const NOT_ASKED = 'not asked again yet after a failure'

/**
 * Counts that several replicas share. A request that the store does not count, for whatever reason, passes: after such a
 * failure nothing is asked for a second, so that hardly any request waits for a store that is gone. The plugin wants
 * something that it can call with `new`.
 */
export function sharedStore(app: FastifyInstance, address: StoreAddress): FastifyRateLimitStoreCtor {
  const client = storeClient(address, PATIENCE_MS)
  const failures = storeFailures(app.log)
  let askAgainAt = Number.NEGATIVE_INFINITY

  client.on('error', (error: Error) => failures.trouble(error.message))
  app.decorate('uncountedRequests', failures.total)
  app.addHook('onListen', async () => connect(client))
  app.addHook('onClose', async () => client.disconnect())

  const counted = async (key: string, windowMs: number): Promise<Count> => {
    if (performance.now() < askAgainAt) throw new Error(NOT_ASKED)
    try {
      return await inTime((over) => count(client, KEY + key, windowMs, over))
    } catch (error) {
      askAgainAt = performance.now() + RETRY_MS
      throw error
    }
  }
  return class implements FastifyRateLimitStore {
    incr(key: string, done: (error: Error | null, count?: Count) => void, windowMs = 60_000): void {
      counted(key, windowMs).then(
        (count) => done(null, count),
        (error: Error) => {
          failures.uncounted(error.message)
          done(error)
        },
      )
    }

    child(): FastifyRateLimitStore {
      return this
    }
  }
}

async function count(client: StoreClient, key: string, windowMs: number, over: AbortSignal): Promise<Count> {
  if (client.status === 'reconnecting') throw new Error('the connection is lost')
  if (client.status !== 'ready') {
    connect(client)
    await once(client, 'ready', { signal: over })
  }
  const answer: unknown = await client.eval(COUNT, 1, key, windowMs)
  const [current, ttl] = Array.isArray(answer) ? answer : []
  if (typeof current !== 'number' || typeof ttl !== 'number') throw new Error('the store answered with no count')
  return { current, ttl: Math.max(0, ttl) }
}

/** Connects a client that has not been asked to yet; a failure is an `error` event of the client. */
function connect(client: StoreClient): void {
  if (client.status === 'wait') client.connect().catch(() => {})
}

/**
 * The result of asking, or an error once a request has waited long enough, whatever is written or read meanwhile.
 *
 * @param ask is told by its signal when nobody waits any longer
 */
async function inTime<T>(ask: (over: AbortSignal) => Promise<T>): Promise<T> {
  const over = new AbortController()
  const { promise: late, reject } = Promise.withResolvers<never>()
  const deadline = setTimeout(() => {
    reject(new Error(`no answer within ${PATIENCE_MS} ms`))
    over.abort()
  }, PATIENCE_MS)
  return Promise.race([ask(over.signal), late]).finally(() => clearTimeout(deadline))
}
