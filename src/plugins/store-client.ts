import { Cluster, Redis } from 'ioredis'
import type { StoreAddress } from '#src/store-address.ts'

export type StoreClient = Redis | Cluster

/** How long the client waits before it tries again to reach a store that is gone. */
export const RETRY_MS = 1_000

/**
 * A client of a shared store that connects on first use, and again whenever the connection is lost. It keeps no question
 * for later: an answer that comes late is of no use to the request that needed it, and would be counted all the same.
 *
 * @param patienceMs a connection on which a question has waited this long is given up
 */
export function storeClient(address: StoreAddress, patienceMs: number): StoreClient {
  const client = unconnected(address, patienceMs)
  // Every request that waits for the first connection listens for it.
  client.setMaxListeners(0)
  return client
}

function unconnected(address: StoreAddress, patienceMs: number): StoreClient {
  const hosts = [...address.hosts]
  const retry = () => RETRY_MS
  const options = {
    ...address.login,
    ...(address.isEncrypted && { tls: {} }),
    autoResendUnfulfilledCommands: false,
    maxRetriesPerRequest: 0,
    socketTimeout: patienceMs,
    disableClientInfo: true,
  }
  const kept = { lazyConnect: true, enableOfflineQueue: false }
  switch (address.kind) {
    case 'server':
      return new Redis({ ...options, ...kept, ...hosts[0], retryStrategy: retry, enableReadyCheck: false })
    case 'sentinel':
      return new Redis({
        ...options,
        ...kept,
        sentinels: hosts,
        name: address.primary,
        retryStrategy: retry,
        sentinelRetryStrategy: retry,
        sentinelCommandTimeout: patienceMs,
        ...(address.isEncrypted && { enableTLSForSentinelMode: true, sentinelTLS: {} }),
      })
    case 'cluster':
      return new Cluster(hosts, { ...kept, redisOptions: options, clusterRetryStrategy: retry })
  }
}
