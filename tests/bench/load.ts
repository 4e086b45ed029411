import { Pool } from 'undici'

/** A number of requests over a number of connections, each of which sends its next when the last was answered. */
export type Load = {
  readonly address: string
  readonly path: string
  readonly body: string
  readonly connections: number
  readonly warmUp: number
  readonly requests: number
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

async function measure({ address, path, body, connections, warmUp, requests }: Load): Promise<Measured> {
  const pool = new Pool(address, { connections, pipelining: 1 })
  await send(pool, path, body, connections, warmUp)
  const before = performance.now()
  const times = await send(pool, path, body, connections, requests)
  const seconds = (performance.now() - before) / 1000
  await pool.close()
  times.sort()
  const at = (share: number) => times[Math.floor(share * (times.length - 1))] ?? Number.NaN
  return { perSecond: requests / seconds, p50Ms: at(0.5), p99Ms: at(0.99) }
}

/** Milliseconds of every request. Anything but a 200 ends it: a refusal is answered faster than a bearing. */
function send(pool: Pool, path: string, body: string, connections: number, requests: number): Promise<Float64Array> {
  const times = new Float64Array(requests)
  let sent = 0
  let answered = 0
  if (requests === 0) return Promise.resolve(times)
  // Never asleep: to wake a sleeping core takes a server longer than to write the answer, and a slow server would pay for
  // it at every answer, a fast one never.
  const stayAwake = (): void => {
    if (answered < requests) setImmediate(stayAwake)
  }
  stayAwake()
  return new Promise((resolve, reject) => {
    const next = (): void => {
      if (sent === requests) return
      const index = sent
      sent += 1
      const before = performance.now()
      pool.dispatch(
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
            else next()
          },
          onResponseError(_controller, error) {
            reject(error)
          },
        },
      )
    }
    for (let connection = 0; connection < connections; connection += 1) next()
  })
}
