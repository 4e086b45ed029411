import { availableParallelism } from 'node:os'
import { join } from 'node:path'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import type { Piscina } from 'piscina'
import { ProblemError } from '#src/http/problem.ts'
import type * as tasks from './tasks.ts'

type Tasks = typeof tasks
type TaskName = keyof Tasks

/** Runs a task in a worker thread, for as long as the caller is there to hear of it. */
type RunTask = <Name extends TaskName>(
  name: Name,
  input: Parameters<Tasks[Name]>[0],
  request: FastifyRequest,
) => Promise<ReturnType<Tasks[Name]>>

declare module 'fastify' {
  interface FastifyInstance {
    runTask: RunTask
  }
}

/** So many more may wait than run. Beyond it a caller is better served by coming back than by waiting. */
const WAITING_PER_THREAD = 16
const IDLE_MS = 60_000

/** The worker's file stands beside this one, as a module here and as a bundled file in the container. */
const WORKER = join(import.meta.dirname, import.meta.filename.endsWith('.ts') ? 'tasks.ts' : 'tasks.cjs')

const TOO_BUSY = 'More is asked at the moment than can be worked out: please come back in a second.'

/** Nobody reads it; but what is thrown away is no bug that the log should hear of. */
const CALLER_LEFT = 'The connection was closed before the answer was there.'

/** A thread's start takes the processor from whoever waits for the service's own: they have been answered by then. */
const AFTER_START_MS = 500

/**
 * Worker threads for work that would hold up everyone else's, with a bound on what waits for them. They start with the
 * first task, or a while after the service began to listen, whichever comes first.
 */
export function addWorkers(app: FastifyInstance): void {
  let pool: Promise<Piscina> | undefined
  let timer: NodeJS.Timeout | undefined
  const started = (): Promise<Piscina> => {
    pool ??= startedPool()
    return pool
  }
  const run: RunTask = async (name, input, request) => {
    const gone = new AbortController()
    const leave = () => gone.abort()
    // Of the connection: the request itself is closed as soon as it has been read.
    const { socket } = request.raw
    socket.once('close', leave)
    try {
      return await (await started()).run(input, { name, signal: gone.signal })
    } catch (error) {
      if (gone.signal.aborted) throw new ProblemError(503, CALLER_LEFT)
      throw isFull(error) ? new ProblemError(503, TOO_BUSY) : error
    } finally {
      socket.off('close', leave)
    }
  }
  app.decorate('runTask', run)
  app.addHook('onListen', async () => {
    timer = setTimeout(() => void started(), AFTER_START_MS).unref()
  })
  app.addHook('onClose', async () => {
    clearTimeout(timer)
    await (await pool)?.close()
  })
}

async function startedPool(): Promise<Piscina> {
  const { Piscina } = await import('piscina')
  const threads = Math.max(1, availableParallelism() - 1)
  return new Piscina({
    filename: WORKER,
    minThreads: 1,
    maxThreads: threads,
    maxQueue: threads * WAITING_PER_THREAD,
    idleTimeout: IDLE_MS,
  })
}

const isFull = (error: unknown): boolean =>
  error instanceof Error && /queue is at limit|no task queue available/i.test(error.message)
