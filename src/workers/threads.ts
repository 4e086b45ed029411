import type { Piscina } from 'piscina'
import type { Place } from './scheduler.ts'
import type { InputOf, Order, ResultOf, TaskName, Timed } from './thread.ts'

/** Worker threads, one task in each at a time. */
export interface Threads {
  /** @param stop ends the thread that is at it: the last resort, for another has to be started */
  readonly run: <Name extends TaskName>(
    name: Name,
    input: InputOf<Name>,
    place: Place,
    stop: AbortSignal,
  ) => Promise<Timed<ResultOf<Name>>>
  readonly count: () => number
  readonly destroy: () => Promise<void>
}

type Options = {
  /** The module that runs in each, with what `thread.ts` exports. */
  readonly filename: string
  /** How many threads there may be for either place. */
  readonly most: Readonly<Record<Place, number>>
  readonly complain: (error: Error) => void
}

const IDLE_MS = 60_000
/** Room for a machine that has none at the moment. */
const REVIVE_MS = 100
/**
 * How far threads of large answers give way to everyone else's, in steps of the system's scheduler: where the processor is
 * short, the event loop and small answers come first, and a large one still gets about a quarter.
 */
const GIVES_WAY: Readonly<Record<Place, number>> = { any: 5, quick: 0 }

/** They start as they are needed; the first one for small answers at once. */
export async function startThreads({ filename, most, complain }: Options): Promise<Threads> {
  const { Piscina } = await import('piscina')
  const open = (place: Place) => {
    const pool: Piscina = new Piscina({
      filename,
      minThreads: place === 'quick' ? 1 : 0,
      maxThreads: most[place],
      idleTimeout: IDLE_MS,
      workerData: { givesWay: GIVES_WAY[place] },
    })
    let running = 0
    // Of a thread that ends with nothing to do: it is replaced, and unheard the event would end the service.
    pool.on('error', complain)
    // A pool gives up starting threads when one ends before it has begun; whoever waits would wait for ever.
    const revive = () => {
      if (running > 0 && pool.threads.length === 0) pool.run(null, { name: 'nothing' }).catch(() => {})
    }
    pool.on('workerDestroy', () => setTimeout(revive, REVIVE_MS).unref())
    return {
      pool,
      run: async <Name extends TaskName>(order: Order<Name>, signal: AbortSignal) => {
        running += 1
        try {
          return await pool.run(order, { name: 'timed', signal })
        } finally {
          running -= 1
        }
      },
    }
  }
  const pools = { any: open('any'), quick: open('quick') }
  return {
    run: (name, input, place, stop) => pools[place].run({ name, input }, stop),
    count: () => pools.any.pool.threads.length + pools.quick.pool.threads.length,
    destroy: async () => {
      await Promise.all([pools.any.pool.destroy(), pools.quick.pool.destroy()])
    },
  }
}

/** Whether the thread is gone, whatever its task was: it ended, or had no memory left. What a task throws is a bug of ours. */
export const isThreadLost = (error: unknown): boolean =>
  error instanceof Error &&
  (/^worker exited with code|^Terminating worker thread/.test(error.message) ||
    ('code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY'))
