import type { Socket } from 'node:net'
import { join } from 'node:path'
import type { FastifyBaseLogger, FastifyInstance, FastifyRequest } from 'fastify'
import { lazy } from '#shared/lazy.ts'
import { ProblemError } from '#src/http/problem.ts'
import { admission, laneFor, REFUSALS, type Refusal } from './admission.ts'
import { pace, paceOfOne, standardMs, unitsDone, unitsOf } from './estimate.ts'
import { otherThreadsMs } from './processor-time.ts'
import { LANES, type Lane, type Place, scheduler } from './scheduler.ts'
import { CALLER_LEFT, narrower, TOO_BUSY, tooMuchWork } from './sentences.ts'
import type { InputOf, ResultOf, TaskName, Timed } from './thread.ts'
import { isThreadLost, startThreads, type Threads } from './threads.ts'

/** Runs a task in a worker thread, for as long as the caller is there to hear of it. */
type RunTask = <Name extends TaskName>(
  name: Name,
  input: InputOf<Name>,
  request: FastifyRequest,
) => Promise<ResultOf<Name>>

/** The same for work of the service itself, which has no deadline: it is done once, however slow the machine. */
type RunOwnTask = <Name extends TaskName>(name: Name, input: InputOf<Name>) => Promise<ResultOf<Name>>

/**
 * Runs one of the tasks that make up an answer. None is begun after the caller left, after the deadline, or where it turns out
 * that the answer takes more work than one may.
 *
 * @param left how much the answer still lacks, with this part, in the units of this task; 0 for its last part. By itself what
 *   was expected of the whole answer, less what has been done
 */
export type RunPart = <Name extends TaskName>(
  name: Name,
  input: InputOf<Name>,
  left?: number,
) => Promise<ResultOf<Name>>

/** The work of an answer, as far as it is known beforehand. */
type Expected = {
  /** The task that takes most of it, and its units of work. */
  readonly task: TaskName
  readonly units: number
  /** Whether its parts can run at the same time; else they follow one another. */
  readonly isSpread?: boolean
}

type Make<Answer> = (runPart: RunPart, atOnce: number) => Promise<Answer>

/** Makes an answer of many parts, of which `atOnce` should be on their way at the same time. */
type InParts = <Answer>(request: FastifyRequest, expected: Expected, make: Make<Answer>) => Promise<Answer>

/** Whom an answer is for. */
type Asker = {
  readonly address: string
  readonly log: FastifyBaseLogger
  /** The connection on which it is awaited. */
  readonly socket: Socket
}

/** How busy the worker threads are, and what has become of all tasks since the start. */
export type TaskLoad = {
  readonly threads: number
  readonly running: number
  readonly waiting: Readonly<Record<Lane, number>>
  readonly done: number
  /** Answers that were not worked out, by reason. */
  readonly refused: Readonly<Record<Refusal, number>>
  /** Answers that were not ready in time. */
  readonly late: number
  /** Threads that ended in the midst of a task, and those that had to be ended. */
  readonly lost: number
  readonly stopped: number
  /** Processor time of all answers that were worked out, as estimated beforehand and as measured [ms]. */
  readonly estimatedMs: number
  readonly workedMs: number
}

declare module 'fastify' {
  interface FastifyInstance {
    runTask: RunTask
    runOwnTask: RunOwnTask
    inParts: InParts
    taskLoad(): TaskLoad
    /** Whether more has been asked of the worker threads than they can do, for longer than an answer may take. */
    areWorkersFull(): boolean
  }
}

type Limits = {
  /** So many tasks run at the same time, and one more that is small. */
  readonly threads: number
  /** How long an answer may take. */
  readonly deadlineMs: number
}

/** The worker's file stands beside this one, as a module here and as a bundled file in the container. */
const THREAD = join(import.meta.dirname, import.meta.filename.endsWith('.ts') ? 'thread.ts' : 'thread.cjs')

/** A part that nobody waits for may take so long to come to its end by itself. */
const GRACE_MS = 2_000
/** An answer whose own parts were at work for so much of its time was not kept waiting, here or by the rest of the machine. */
const OWN_SHARE = 0.8

/** Share of its deadline: after so much work of its own, an answer tells how long the rest takes. */
const TELLING_SHARE = 0.1
/** Share of its deadline: a caller who waits in vain behind others is told by then. */
const WAITING_SHARE = 0.3

/** How long something ran [ms], and how long it was at work in that time. */
type Ran = { readonly ms: number; readonly atWorkMs: number }
const NO_TIME: Ran = { ms: 0, atWorkMs: 0 }

/** A thread's start takes the processor from whoever waits for the service's own: they have been answered by then. */
const AFTER_START_MS = 500

/**
 * Worker threads for work that would hold up everyone else's. Each answer is let in by what it costs (`admission.ts`,
 * `estimate.ts`), its parts run in an order that is fair (`scheduler.ts`), and it is over at its deadline, come what may. The
 * threads start with the first task, or a while after the service began to listen, whichever comes first.
 */
export function addWorkers(app: FastifyInstance, { threads: places, deadlineMs }: Limits): void {
  const tally = { done: 0, late: 0, lost: 0, stopped: 0, estimatedMs: 0, workedMs: 0 }
  const refused = Object.fromEntries(REFUSALS.map((reason) => [reason, 0])) as Record<Refusal, number>
  const { msFor, learn, forgetSome } = pace()
  const schedule = scheduler({ places, quickPlaces: 1 })
  const door = admission({ threads: places, deadlineMs, servedSoFar: schedule.servedSoFar })
  let threads: Threads | undefined
  let timer: NodeJS.Timeout | undefined
  const started = lazy(async (): Promise<Threads> => {
    const complain = (error: Error): void => app.log.error({ err: error }, 'worker thread failed')
    threads = await startThreads({ filename: THREAD, most: { any: places, quick: 1 }, complain })
    return threads
  })

  const tooMuch = (task: TaskName): ProblemError =>
    new ProblemError(422, tooMuchWork(deadlineMs / 1000), [narrower(task)])
  const refusal = (reason: Refusal, task: TaskName): ProblemError => {
    refused[reason] += 1
    return reason === 'too-much-work' ? tooMuch(task) : new ProblemError(503, TOO_BUSY)
  }

  /**
   * Runs a task, and once more if its thread is lost: what it does hangs on its input alone, and mostly it is not the task that
   * ended the thread. Where it is, as with one that no memory suffices for, the error of the second time is a bug of ours.
   */
  const runOrAgain = async <Name extends TaskName>(
    name: Name,
    input: InputOf<Name>,
    place: Place,
    stop: AbortSignal,
    log: FastifyBaseLogger,
  ): Promise<Timed<ResultOf<Name>>> => {
    for (let isSecond = false; ; isSecond = true) {
      try {
        return await (await started()).run(name, input, place, stop)
      } catch (error) {
        if (stop.aborted) tally.stopped += 1
        if (stop.aborted || !isThreadLost(error)) throw error
        tally.lost += 1
        if (isSecond) throw error
        log.warn({ err: error, task: name }, 'worker thread lost: its task is run once more')
      }
    }
  }

  const workOut = async <Answer>(
    { address, log, socket }: Asker,
    { task, units: expected, isSpread = false }: Expected,
    make: Make<Answer>,
  ): Promise<Answer> => {
    const expectedMs = msFor(task, expected)
    const atOnce = isSpread ? places : 1
    const over = new AbortController()
    const end = (errorOf: () => ProblemError): void => {
      if (over.signal.aborted) return
      over.abort(errorOf())
      for (const stop of running) setTimeout(() => stop.abort(), GRACE_MS).unref()
    }
    const running = new Set<AbortController>()
    const own = { workedMs: 0, ran: NO_TIME, since: NO_TIME }
    const ownPace = paceOfOne(TELLING_SHARE * deadlineMs)
    const until = performance.now() + deadlineMs
    const admitted = door.admit({
      address,
      ms: expectedMs / atOnce,
      workMs: expectedMs,
      displace: () => end(() => refusal('displaced', task)),
    })
    if (admitted === 'too-much-work' && standardMs(task, expected) <= deadlineMs * atOnce) forgetSome(task)
    if (typeof admitted === 'string') throw refusal(admitted, task)

    /** How long its parts have run, those that run now too, and how long that kept a processor at work. */
    const ran = (): Ran => {
      if (running.size === 0) return own.ran
      const { ms, atWorkMs } = own.since
      return {
        ms: own.ran.ms + performance.now() - ms,
        atWorkMs: own.ran.atWorkMs + (otherThreadsMs() - atWorkMs) / schedule.running(),
      }
    }
    /** @param msLeft how long it still would be at work */
    const reasonOfLateness = (msLeft: number): Refusal => {
      const { ms, atWorkMs } = ran()
      return Math.min(ms, atWorkMs) + msLeft >= OWN_SHARE * deadlineMs ? 'too-much-work' : 'busy'
    }

    const runPart: RunPart = async <Name extends TaskName>(name: Name, input: InputOf<Name>, left?: number) => {
      over.signal.throwIfAborted()
      const units = unitsOf(name, input)
      const msOf = ownPace.of(name) ?? ((units: number) => msFor(name, units))
      const rest = left === undefined ? expectedMs - own.workedMs : msOf(left)
      admitted.left = Math.max(rest, msFor(name, units))
      if (own.workedMs + admitted.left > deadlineMs * atOnce) throw refusal('too-much-work', task)
      if (performance.now() + admitted.left / atOnce > until)
        throw refusal(reasonOfLateness(admitted.left / atOnce), task)
      admitted.lane = laneFor(own.workedMs + admitted.left)
      const { caller, lane } = admitted
      const order = left === undefined ? standardMs(task, expected) : standardMs(name, left)
      const turn = { caller, left: order, isQuick: lane === 'quick', over: over.signal }
      const { result, ms } = await schedule.run<Timed<ResultOf<Name>>>(turn, async (place) => {
        const stop = new AbortController()
        if (running.size === 0) own.since = { ms: performance.now(), atWorkMs: otherThreadsMs() }
        running.add(stop)
        try {
          return await runOrAgain(name, input, place, stop.signal, log)
        } finally {
          if (running.size === 1) own.ran = ran()
          running.delete(stop)
          tally.done += 1
        }
      })
      own.workedMs += ms
      const done = unitsDone(name, input, result)
      learn(name, done, ms)
      ownPace.learn(name, done, ms)
      return result
    }

    const leave = () => end(() => new ProblemError(503, CALLER_LEFT))
    // Of the connection: the request itself is closed as soon as it has been read.
    socket.once('close', leave)
    const deadline = setTimeout(() => {
      tally.late += 1
      end(() => refusal(reasonOfLateness(0), task))
    }, deadlineMs)
    const wait = setTimeout(() => {
      const isWaiting = running.size === 0
      if (isWaiting && door.isLate(admitted, until - performance.now())) end(() => refusal('busy', task))
    }, WAITING_SHARE * deadlineMs)
    // A part can wait for others' work, and the caller is not to wait for that: the work in progress then ends unheard.
    const ended = new Promise<never>((_, reject) => {
      over.signal.addEventListener('abort', () => reject(over.signal.reason), { once: true })
    })
    try {
      const answer = await Promise.race([make(runPart, atOnce), ended])
      tally.estimatedMs += expectedMs
      tally.workedMs += own.workedMs
      return answer
    } catch (error) {
      if (over.signal.aborted) throw over.signal.reason
      if (socket.destroyed) throw new ProblemError(503, CALLER_LEFT)
      throw error
    } finally {
      clearTimeout(deadline)
      clearTimeout(wait)
      door.leave(admitted)
      socket.off('close', leave)
    }
  }

  const inParts: InParts = ({ raw: { socket }, ip, log }, expected, make) =>
    workOut({ address: ip, log, socket }, expected, make)
  app.decorate('inParts', inParts)
  app.decorate('runTask', (name, input, request) =>
    inParts(request, { task: name, units: unitsOf(name, input) }, (runPart) => runPart(name, input)),
  )
  app.decorate('runOwnTask', async (name, input) => {
    const { signal } = new AbortController()
    const left = standardMs(name, unitsOf(name, input))
    const turn = { caller: { servedMs: schedule.servedSoFar() }, left, isQuick: false, over: signal }
    const { result } = await schedule.run(turn, (place) => runOrAgain(name, input, place, signal, app.log))
    tally.done += 1
    return result
  })
  app.decorate('taskLoad', () => ({
    ...tally,
    threads: threads?.count() ?? 0,
    running: schedule.running(),
    waiting: Object.fromEntries(LANES.map((lane) => [lane, schedule.waiting(lane)])) as Record<Lane, number>,
    refused: { ...refused },
  }))
  app.decorate('areWorkersFull', () => door.fullForMs() > deadlineMs)
  app.addHook('onListen', async () => {
    // The task that needs the threads tries again, and then has the error.
    const startEarly = () =>
      started().catch((error: unknown) => app.log.warn({ err: error }, 'could not start a worker thread yet'))
    timer = setTimeout(startEarly, AFTER_START_MS).unref()
  })
  app.addHook('onClose', async () => {
    clearTimeout(timer)
    // Every request has its answer by now; what a caller left behind is not waited for.
    await started.started()?.catch(() => undefined)
    await threads?.destroy()
  })
}
