/** Whose work it is. Callers share the threads evenly while they have work in progress. */
export interface Caller {
  /** How long the threads have worked for this caller [ms]; others' time before it came counts as its own. */
  servedMs: number
}

/** A part of an answer that waits for a thread. */
interface Turn {
  readonly caller: Caller
  /** How much work the answer lacks, with this part: in any unit that all share, and that stays the same while it waits. */
  readonly left: number
  /** Whether the whole answer is small: it may use the place that is kept for such. */
  readonly isQuick: boolean
  /** Aborted when nobody waits for the answer any more. */
  readonly over: AbortSignal
}

export interface Scheduler {
  /** Runs what is given when its turn comes. Rejects with the reason of `over` if that comes first. */
  readonly run: <T>(turn: Turn, start: (place: Place) => Promise<T>) => Promise<T>
  /** The service that a new caller counts as having had. */
  readonly servedSoFar: () => number
  readonly running: () => number
  readonly waiting: (lane: Lane) => number
}

export const LANES = ['quick', 'long'] as const
/** `quick`: parts of answers that are small as a whole. */
export type Lane = (typeof LANES)[number]

/** The thread of a part: any, or the one for small answers alone. */
export type Place = 'any' | 'quick'

type Waiting = Turn & { readonly begin: (place: Place) => void }

/**
 * Decides which part runs next. First comes the caller that has been served least, so that none takes more than its share; of
 * one caller's parts that whose answer lacks least, so that a small answer does not wait for a large one and of many large
 * ones some are ready in time. Were they to take turns, all would be late and all the work for nothing. A small answer takes
 * the place that is kept for such where it is free, and leaves the other to those that have no choice.
 *
 * @param places so many parts run at the same time
 * @param quickPlaces so many more, of small answers alone: a part that runs is never interrupted
 * @param now a clock [ms]
 */
export function scheduler(
  { places, quickPlaces }: { readonly places: number; readonly quickPlaces: number },
  now: () => number = () => performance.now(),
): Scheduler {
  const waiting: Waiting[] = []
  const free = { any: places, quick: quickPlaces }
  let servedSoFar = 0

  const startNext = (): void => {
    if (free.any + free.quick === 0) return
    const next = nextOf(free.any > 0 ? waiting : waiting.filter(({ isQuick }) => isQuick))
    if (next === undefined) return
    const place = next.isQuick && free.quick > 0 ? 'quick' : 'any'
    waiting.splice(waiting.indexOf(next), 1)
    servedSoFar = Math.max(servedSoFar, next.caller.servedMs)
    free[place] -= 1
    next.begin(place)
  }

  return {
    run: async (turn, start) => {
      const { over, caller } = turn
      const place = await new Promise<Place>((resolve, reject) => {
        const leave = (): void => {
          waiting.splice(waiting.indexOf(entry), 1)
          reject(over.reason)
        }
        const entry: Waiting = {
          ...turn,
          begin: (place) => {
            over.removeEventListener('abort', leave)
            resolve(place)
          },
        }
        if (over.aborted) {
          reject(over.reason)
          return
        }
        over.addEventListener('abort', leave)
        waiting.push(entry)
        startNext()
      })
      const began = now()
      try {
        return await start(place)
      } finally {
        caller.servedMs += now() - began
        free[place] += 1
        // The answer that this was a part of first asks for its next, or two would go by turns after all.
        setImmediate(startNext)
      }
    },
    servedSoFar: () => servedSoFar,
    running: () => places - free.any + quickPlaces - free.quick,
    waiting: (lane) => waiting.filter(({ isQuick }) => isQuick === (lane === 'quick')).length,
  }
}

function nextOf(waiting: readonly Waiting[]): Waiting | undefined {
  let next: Waiting | undefined
  for (const each of waiting) if (next === undefined || isBefore(each, next)) next = each
  return next
}

const isBefore = (one: Waiting, other: Waiting): boolean =>
  one.caller.servedMs < other.caller.servedMs ||
  (one.caller.servedMs === other.caller.servedMs && one.left < other.left)
