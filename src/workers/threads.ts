import type { Piscina } from 'piscina'
import type { InputOf, Order, ResultOf, TaskName, Timed } from './thread.ts'

/** Worker threads, one task in each at a time. */
export interface Threads {
  /** @param stop ends the thread that is at it: the last resort, for another has to be started */
  readonly run: <Name extends TaskName>(
    name: Name,
    input: InputOf<Name>,
    stop: AbortSignal,
  ) => Promise<Timed<ResultOf<Name>>>
  readonly count: () => number
  readonly destroy: () => Promise<void>
}

type Options = {
  /** The module that runs in each, with what `thread.ts` exports. */
  readonly filename: string
  readonly most: number
  readonly complain: (error: Error) => void
}

const IDLE_MS = 60_000
/** Room for a machine that has none at the moment. */
const REVIVE_MS = 100

/** They start as they are needed; the first one at once. */
export async function startThreads({ filename, most, complain }: Options): Promise<Threads> {
  const { Piscina } = await import('piscina')
  const pool: Piscina = new Piscina({ filename, minThreads: 1, maxThreads: most, idleTimeout: IDLE_MS })
  let underWay = 0
  // Of a thread that ends with nothing to do: it is replaced, and unheard the event would end the service.
  pool.on('error', complain)
  // A pool gives up starting threads when one ends before it has begun; whoever waits would wait for ever.
  const revive = () => {
    if (underWay > 0 && pool.threads.length === 0) pool.run(null, { name: 'nothing' }).catch(() => {})
  }
  pool.on('workerDestroy', () => setTimeout(revive, REVIVE_MS).unref())
  return {
    run: async <Name extends TaskName>(name: Name, input: InputOf<Name>, signal: AbortSignal) => {
      underWay += 1
      try {
        const order: Order<Name> = { name, input }
        return await pool.run(order, { name: 'timed', signal })
      } finally {
        underWay -= 1
      }
    },
    count: () => pool.threads.length,
    destroy: () => pool.destroy(),
  }
}

/** Whether the thread is gone, whatever its task was: it ended, or had no memory left. What a task throws is a bug of ours. */
export const isThreadLost = (error: unknown): boolean =>
  error instanceof Error &&
  (/^worker exited with code|^Terminating worker thread/.test(error.message) ||
    ('code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY'))
