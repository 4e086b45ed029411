import { callerAt } from '#src/http/ip-address.ts'
import type { Caller, Lane } from './scheduler.ts'

/** Why an answer is not worked out: too much work by itself, no room at the moment, or room made for another caller. */
export const REFUSALS = ['too-much-work', 'busy', 'displaced'] as const
export type Refusal = (typeof REFUSALS)[number]

/** An answer in progress. */
export interface Admitted {
  /** When it was let in, by the clock of the admission [ms]. */
  readonly since: number
  readonly caller: Caller
  /** The lane of the work that it turned out to be. */
  lane: Lane
  /** How long it still takes a thread [ms]: an estimate, lower as it proceeds. */
  left: number
  /** Ends it, to make room for another caller's. */
  readonly displace: () => void
}

export interface Admission {
  /** Lets an answer in, or says why not. `ms`: how long it takes in all, the threads it can use all its own. */
  readonly admit: (wanted: {
    readonly address: string
    readonly ms: number
    readonly workMs: number
    readonly displace: () => void
  }) => Admitted | Refusal
  readonly leave: (answer: Admitted) => void
  /** Whether an answer in progress cannot be done in so much time [ms], by what is known now of it and of the others. */
  readonly isLate: (answer: Admitted, msLeft: number) => boolean
  /**
   * For how long more answers than there are threads have been kept waiting, those of the caller that asks for most left out [ms];
   * 0 while there is room.
   */
  readonly fullForMs: () => number
}

type Options = {
  readonly threads: number
  readonly deadlineMs: number
  /** The service that a new caller counts as having had. */
  readonly servedSoFar: () => number
  readonly now?: () => number
}

/** So many answers of each lane may wait for a thread. Beyond it a caller is better served by coming back than by waiting. */
const WAITING_PER_THREAD = 16
/** Estimated to take no longer, an answer is quick. */
const QUICK_MS = 200
/** By how long an answer takes a thread in all [ms]. */
export const laneFor = (workMs: number): Lane => (workMs <= QUICK_MS ? 'quick' : 'long')
/** Room for less than this is none: the next request of whoever fills the threads is on its way. */
const GAP_MS = 250
/** Share of its deadline: an answer in progress for longer is kept waiting. Many short ones that overlap are not. */
const KEPT_SHARE = 0.1

const NOBODY = { caller: { servedMs: 0 }, answers: 0 }

/** So long after two callers have been seen, they count as told apart. */
const APART_MS = 60_000

/**
 * Decides which answers are worked out: those that can be done within their deadline. Each lane has room of its own, so that
 * no number of large answers shuts out small ones; where one is full, the caller that has most of it makes room for others.
 */
export function admission({ threads, deadlineMs, servedSoFar, now = () => performance.now() }: Options): Admission {
  const most = threads * (1 + WAITING_PER_THREAD)
  const admitted = new Set<Admitted>()
  const callers = new Map<string, { readonly caller: Caller; answers: number }>()
  const full = { since: Number.NEGATIVE_INFINITY, until: Number.NEGATIVE_INFINITY }

  // One caller that asks for too much is no reason for the others to go elsewhere: they have their share. Where all come from
  // one address, it may stand for many.
  const apart = { address: '', seen: Number.NEGATIVE_INFINITY }
  const areCallersApart = (): boolean => now() - apart.seen <= APART_MS
  const note = (address: string): void => {
    if (apart.address !== '' && apart.address !== address) apart.seen = now()
    apart.address = address
  }
  const heaviest = () =>
    [...callers.values()].reduce((most, each) => (each.answers > most.answers ? each : most), NOBODY)
  const noteFull = (since: number): void => {
    if (since - full.until > GAP_MS) full.since = since
    full.until = now()
  }
  /** Before anything changes, or time would have to be gone through again: notes whether it is full now, and since when. */
  const look = (): void => {
    const left = areCallersApart() ? heaviest().caller : undefined
    const kept = [...admitted].filter(({ caller, since }) => caller !== left && now() - since > KEPT_SHARE * deadlineMs)
    // In the order in which they came: with the last of these there were more than threads.
    const tooMany = kept[threads]
    if (tooMany !== undefined) noteFull(tooMany.since)
  }

  const of = (caller: Caller, lane: Lane): readonly Admitted[] =>
    [...admitted].filter((each) => each.caller === caller && each.lane === lane)

  /** The last to be done of the caller that has most in a lane, if that is more than the newcomer has. */
  const displaceable = (newcomer: Caller, lane: Lane): Admitted | undefined => {
    const lists = [...callers.values()].map(({ caller }) => of(caller, lane))
    const longest = lists.reduce((sofar, list) => (list.length > sofar.length ? list : sofar), [])
    if (longest.length <= of(newcomer, lane).length + 1) return undefined
    return longest.reduce((last, each) => (each.left >= last.left ? each : last))
  }

  /**
   * How long the threads are at work until an answer is done: what goes first, and every other caller's share.
   *
   * @param answer one in progress, or a newcomer, which comes after all of its caller's that lack as much
   */
  const workUntilDone = (answer: Pick<Admitted, 'caller' | 'left'>): number => {
    const own = { before: answer.left, hasPassed: false, others: new Map<Caller, number>() }
    for (const each of admitted) {
      if (each === answer) own.hasPassed = true
      else if (each.caller !== answer.caller)
        own.others.set(each.caller, (own.others.get(each.caller) ?? 0) + each.left)
      else if (each.left < answer.left || (each.left === answer.left && !own.hasPassed)) own.before += each.left
    }
    return [...own.others.values()].reduce((sum, work) => sum + Math.min(work, own.before), own.before)
  }

  const leave = (answer: Admitted): void => {
    look()
    if (!admitted.delete(answer)) return
    for (const [key, known] of callers) {
      if (known.caller !== answer.caller) continue
      known.answers -= 1
      if (known.answers === 0) callers.delete(key)
    }
  }

  return {
    admit: ({ address, ms, workMs, displace }) => {
      if (ms > deadlineMs) return 'too-much-work'
      look()
      const key = callerAt(address)
      note(key)
      const known = callers.get(key) ?? { caller: { servedMs: servedSoFar() }, answers: 0 }
      const { caller } = known
      const lane = laneFor(workMs)
      const isLate = Math.max(ms, workUntilDone({ caller, left: workMs }) / threads) > deadlineMs
      const isCrowded = [...admitted].filter((each) => each.lane === lane).length >= most
      const displaced = !isLate && isCrowded ? displaceable(caller, lane) : undefined
      if (isLate || (isCrowded && displaced === undefined)) {
        if (!areCallersApart() || known.answers < heaviest().answers) noteFull(now())
        return 'busy'
      }
      if (displaced !== undefined) {
        leave(displaced)
        displaced.displace()
      }
      const answer: Admitted = { since: now(), caller, lane, left: workMs, displace }
      callers.set(key, known)
      known.answers += 1
      admitted.add(answer)
      return answer
    },
    leave,
    isLate: (answer, msLeft) => workUntilDone(answer) / threads > msLeft,
    fullForMs: () => {
      look()
      return now() - full.until <= GAP_MS ? now() - full.since : 0
    },
  }
}
