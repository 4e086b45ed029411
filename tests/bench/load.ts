import { Client } from 'undici'

/** A number of requests over a number of connections, each of which sends its next when the last was answered. */
export type Load = {
  readonly address: string
  readonly path: string
  readonly body: string
  readonly connections: number
  readonly warmUp: number
  readonly requests: number
  /**
   * Whether the callers' core never sleeps. To wake it takes a server longer than to write the answer, and a slow server
   * would pay for it at every answer, a fast one never. But callers that are back at once are served before those who
   * wait: their times are no measure of how even the answers come.
   */
  readonly awake: boolean
}

export type Measured = {
  readonly perSecond: number
  readonly p50Ms: number
  readonly p99Ms: number
}

// A process of its own: the callers must not take the server's core, nor its garbage collector's time.
process.on('message', async (load: Load) => {
  process.send?.(await measure(load))
  process.disconnect?.()
})

async function measure({ address, path, body, connections, warmUp, requests, awake }: Load): Promise<Measured> {
  // A client a connection: a pool would keep one request of all waiting for whichever connection is free next.
  const clients = Array.from({ length: connections }, () => new Client(address, { pipelining: 1 }))
  await send(clients, path, body, warmUp, awake)
  const before = performance.now()
  const times = await send(clients, path, body, requests, awake)
  const seconds = (performance.now() - before) / 1000
  await Promise.all(clients.map((client) => client.close()))
  times.sort()
  const at = (share: number) => times[Math.floor(share * (times.length - 1))] ?? Number.NaN
  return { perSecond: requests / seconds, p50Ms: at(0.5), p99Ms: at(0.99) }
}

/** Milliseconds of every request. Anything but a 200 ends it: a refusal is answered faster than a bearing. */
function send(
  clients: readonly Client[],
  path: string,
  body: string,
  requests: number,
  awake: boolean,
): Promise<Float64Array> {
  const times = new Float64Array(requests)
  let sent = 0
  let answered = 0
  if (requests === 0) return Promise.resolve(times)
  const stayAwake = (): void => {
    if (answered < requests) setImmediate(stayAwake)
  }
  if (awake) stayAwake()
  return new Promise((resolve, reject) => {
    const next = (client: Client): void => {
      if (sent === requests) return
      const index = sent
      sent += 1
      const before = performance.now()
      client.dispatch(
        { path, method: 'POST', headers: { 'content-type': 'application/json' }, body },
        {
          onRequestStart() {},
          onResponseStart(_controller, status) {
            if (status !== 200) reject(new Error(`${path} answered ${status}`))
          },
          onResponseData() {},
          onResponseEnd() {
            times[index] = performance.now() - before
            answered += 1
            if (answered === requests) resolve(times)
            else next(client)
          },
          onResponseError(_controller, error) {
            reject(error)
          },
        },
      )
    }
    for (const client of clients) next(client)
  })
}
