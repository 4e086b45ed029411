import type { Lost } from '#src/words/kiosk/link.ts'
import { fragmentOf, readAddress } from './address.ts'
import { FIRST_JOB, type Job } from './job.ts'

/*
 * Where a job is kept: in the address of its tab, which alone counts; beside it in the browser's store, for a visit without
 * an address. The steps back are kept for this tab alone.
 */

export const LAST = 'racewright-job'
const PAST = 'racewright-past'
const MOST_STEPS = 40

/** The stores of a browser. They may be switched off, or full. */
export interface Kept {
  readonly get: (name: string) => string | undefined
  readonly set: (name: string, text: string) => void
}

export interface Surroundings {
  /** The fragment of the address, without its `#`. */
  readonly fragment: () => string
  readonly setFragment: (fragment: string) => void
  /** Of all tabs, and of this one. */
  readonly browser: Kept
  readonly tab: Kept
}

export interface JobStore {
  readonly job: () => Job
  /** What of the address could not be read. */
  readonly lost: () => readonly Lost[]
  /** Takes over the next job and keeps it; the one before can be had back. `field`: where it was typed. */
  readonly change: (next: Job, field?: string) => void
  /** Shows another stage or ring: nothing to take back. */
  readonly show: (next: Job) => void
  readonly undo: () => void
  readonly canUndo: () => boolean
  /** Reads the address once more: someone typed another one, or followed a link. */
  readonly readAgain: () => void
  /** What another tab has kept since this one changed its job last, where it is another job. */
  readonly other: () => Job | undefined
  /** Another tab has kept a job. */
  readonly otherKept: () => void
  readonly subscribe: (listener: () => void) => () => void
}

export function jobStore({ fragment, setFragment, browser, tab }: Surroundings): JobStore {
  const listeners = new Set<() => void>()
  const found = readAddress(fragment()) ?? readAddress(browser.get(LAST) ?? '')
  let job = found?.job ?? FIRST_JOB
  let lost = found?.lost ?? []
  let past = steps(tab.get(PAST))
  let typedIn: string | undefined
  let other: Job | undefined

  const keep = (): void => {
    const text = fragmentOf(job)
    setFragment(text)
    browser.set(LAST, text)
    tab.set(PAST, past.join('\n'))
    for (const listener of listeners) listener()
  }
  const take = (next: Job): void => {
    job = next
    lost = []
    other = undefined
    keep()
  }
  return {
    job: () => job,
    lost: () => lost,
    change: (next, field) => {
      // What is typed into one field is one step back.
      if (field === undefined || field !== typedIn) past = [...past, fragmentOf(job)].slice(-MOST_STEPS)
      typedIn = field
      take(next)
    },
    show: (next) => take(next),
    canUndo: () => past.length > 0,
    undo: () => {
      const last = past.at(-1)
      past = past.slice(0, -1)
      typedIn = undefined
      const before = readAddress(last ?? '')
      // The hand stays at the stage where it is.
      if (before !== undefined) take({ ...before.job, stage: job.stage })
    },
    readAgain: () => {
      const text = fragment()
      if (text === fragmentOf(job)) return
      const read = readAddress(text)
      if (read === undefined) return
      past = [...past, fragmentOf(job)].slice(-MOST_STEPS)
      job = read.job
      lost = read.lost
      keep()
    },
    other: () => other,
    otherKept: () => {
      const kept = readAddress(browser.get(LAST) ?? '')?.job
      // Where a tab is in its job is its own matter.
      const isOther =
        kept !== undefined && fragmentOf({ ...kept, stage: job.stage, ring: job.ring }) !== fragmentOf(job)
      other = isOther ? kept : undefined
      for (const listener of listeners) listener()
    },
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}

const steps = (text = ''): readonly string[] => text.split('\n').filter((line) => line !== '')
