import { join } from 'node:path'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import type { Piscina } from 'piscina'
import { lazy } from '#shared/lazy.ts'
import { ProblemError } from '#src/http/problem.ts'
import type * as tasks from './tasks.ts'
import { turns } from './turns.ts'

type Tasks = typeof tasks
type TaskName = keyof Tasks

/** Runs a task in a worker thread, for as long as the caller is there to hear of it. */
type RunTask = <Name extends TaskName>(
  name: Name,
  input: Parameters<Tasks[Name]>[0],
  request: FastifyRequest,
) => Promise<Awaited<ReturnType<Tasks[Name]>>>

/**
 * Runs one of many short tasks that make up an answer. It is not broken off, which would cost the thread; but none is begun
 * after the caller left, or when the time of the answer is over, and then the answer does not wait for it.
 *
 * @param left how much the answer lacks, with this part: of all that wait, the answer that lacks least goes first
 */
export type RunPart = <Name extends TaskName>(
  name: Name,
  input: Parameters<Tasks[Name]>[0],
  left: number,
) => Promise<Awaited<ReturnType<Tasks[Name]>>>

/** Makes an answer of many parts, of which `atOnce` should be on their way at the same time. */
type InParts = <Answer>(
  request: FastifyRequest,
  make: (runPart: RunPart, atOnce: number) => Promise<Answer>,
) => Promise<Answer>

/** How busy the worker threads are, and what has become of all tasks since the start. */
export type TaskLoad = {
  readonly threads: number
  readonly running: number
  readonly waiting: number
  readonly done: number
  /** Answers that were not begun. */
  readonly refused: number
  /** Threads that ended in the midst of a task. */
  readonly lost: number
}

declare module 'fastify' {
  interface FastifyInstance {
    runTask: RunTask
    inParts: InParts
    taskLoad(): TaskLoad
  }
}

type Limits = {
  /** So many tasks run at the same time. */
  readonly threads: number
  /** How long an answer of many parts may take. */
  readonly budgetMs: number
}

/** So many more may wait than run. Beyond it a caller is better served by coming back than by waiting. */
const WAITING_PER_THREAD = 16
const IDLE_MS = 60_000

/** The worker's file stands beside this one, as a module here and as a bundled file in the container. */
const WORKER = join(import.meta.dirname, import.meta.filename.endsWith('.ts') ? 'tasks.ts' : 'tasks.cjs')

const TOO_BUSY = 'More is asked at the moment than can be worked out: please come back in a second.'
const TOO_LONG = 'This takes longer than it may at the moment: ask for fewer trials, or come back later.'

const THREAD_LOST = 'The worker thread that was at it has ended, and another takes its place: please ask again.'

/** Nobody reads it; but what is thrown away is no bug that the log should hear of. */
const CALLER_LEFT = 'The connection was closed before the answer was there.'

/** Room for a machine that has none at the moment. */
const REVIVE_MS = 100

/** A thread's start takes the processor from whoever waits for the service's own: they have been answered by then. */
const AFTER_START_MS = 500

/**
 * Worker threads for work that would hold up everyone else's, with a bound on what waits for them. They start with the
 * first task, or a while after the service began to listen, whichever comes first.
 */
export function addWorkers(app: FastifyInstance, { threads, budgetMs }: Limits): void {
  const most = threads * (1 + WAITING_PER_THREAD)
  const tally = { underWay: 0, asked: 0, done: 0, refused: 0, lost: 0 }
  const takeTurn = turns(threads)
  let pool: Piscina | undefined
  let timer: NodeJS.Timeout | undefined
  const started = lazy(async () => {
    pool = revived(await startedPool(threads, (error) => app.log.error({ err: error }, 'worker thread')))
    return pool
  })
  /** A pool gives up starting threads when one ends before it has begun; whoever waits would wait for ever. */
  const revived = (made: Piscina): Piscina => {
    const revive = () => {
      if (tally.asked > tally.done && made.threads.length === 0) made.run(null, { name: 'nothing' }).catch(() => {})
    }
    return made.on('workerDestroy', () => setTimeout(revive, REVIVE_MS).unref())
  }

  const run = async <Name extends TaskName>(
    name: Name,
    input: Parameters<Tasks[Name]>[0],
    signal: AbortSignal | null,
  ): Promise<Awaited<ReturnType<Tasks[Name]>>> => (await started()).run(input, { name, signal })

  const tallied = async <T>(work: () => Promise<T>): Promise<T> => {
    tally.asked += 1
    try {
      return await work()
    } finally {
      tally.done += 1
    }
  }

  /** One answer at a time is counted, however many parts it has, so that none is turned away in the middle of it. */
  const counted = async <T>(
    { raw: { socket }, log }: FastifyRequest,
    make: (gone: AbortSignal) => Promise<T>,
  ): Promise<T> => {
    if (tally.underWay >= most) {
      tally.refused += 1
      throw new ProblemError(503, TOO_BUSY)
    }
    const gone = new AbortController()
    const leave = () => gone.abort()
    // Of the connection: the request itself is closed as soon as it has been read.
    socket.once('close', leave)
    tally.underWay += 1
    try {
      return await make(gone.signal)
    } catch (error) {
      if (gone.signal.aborted || socket.destroyed) throw new ProblemError(503, CALLER_LEFT)
      if (!isLost(error)) throw error
      tally.lost += 1
      log.error({ err: error }, 'worker thread lost')
      throw new ProblemError(503, THREAD_LOST)
    } finally {
      tally.underWay -= 1
      socket.off('close', leave)
    }
  }

  app.decorate('runTask', (name, input, request) =>
    counted(request, (signal) => tallied(() => run(name, input, signal))),
  )
  app.decorate('inParts', (request, make) =>
    counted(request, (signal) => {
      let isOver = false
      const mayGoOn = (): void => {
        if (signal.aborted) throw new ProblemError(503, CALLER_LEFT)
        if (isOver) throw new ProblemError(503, TOO_LONG)
      }
      const runPart: RunPart = (name, input, left) =>
        tallied(() =>
          takeTurn(left, () => {
            mayGoOn()
            return run(name, input, null)
          }),
        )
      // A part can wait for others' work, and the caller is not to wait for that: what is under way by then ends unheard.
      const { promise: over, reject } = Promise.withResolvers<never>()
      const deadline = setTimeout(() => {
        isOver = true
        reject(new ProblemError(503, TOO_LONG))
      }, budgetMs)
      return Promise.race([make(runPart, threads), over]).finally(() => clearTimeout(deadline))
    }),
  )
  app.decorate('taskLoad', () => {
    const { asked, done, refused, lost } = tally
    const running = Math.min(asked - done, threads)
    return { threads: pool?.threads.length ?? 0, running, waiting: asked - done - running, done, refused, lost }
  })
  app.addHook('onListen', async () => {
    // The task that needs the threads tries again, and then has the error.
    const startEarly = () => started().catch((error: unknown) => app.log.warn({ err: error }, 'no worker thread yet'))
    timer = setTimeout(startEarly, AFTER_START_MS).unref()
  })
  app.addHook('onClose', async () => {
    clearTimeout(timer)
    // Every request has its answer by now; what a caller left behind is not waited for.
    await started.started()?.catch(() => undefined)
    await pool?.destroy()
  })
}

/** Its own bound on what waits is not set: tasks that can be aborted wait in a second queue, which that does not count. */
async function startedPool(threads: number, complain: (error: Error) => void): Promise<Piscina> {
  const { Piscina } = await import('piscina')
  const pool = new Piscina({ filename: WORKER, minThreads: 1, maxThreads: threads, idleTimeout: IDLE_MS })
  // Of a thread that ends with nothing to do: it is replaced, and unheard the event would end the service.
  pool.on('error', complain)
  return pool
}

/** The thread is gone, whatever the task was: it ended, or had no memory left. What a task itself throws is a bug of ours. */
const isLost = (error: unknown): boolean =>
  error instanceof Error &&
  (/^worker exited with code|^Terminating worker thread/.test(error.message) ||
    ('code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY'))
