import { ARRANGEMENTS, type RadialInput } from '#shared/bearing/arrangements.ts'
import type { Finding } from '#shared/bearing/warning.ts'
import { itemAt, lastOf } from '#shared/numbers/item-at.ts'
import { yearFaults } from '#shared/questions/season/moving-bearing.ts'
import type { SeasonRefusal } from '#shared/questions/season/refusal.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { boundsOf } from './bound.ts'
import { DROP_REASONS, type DropReason } from './drop-reason.ts'
import { effortLeft, effortOfYear, SEARCH_EFFORT } from './effort.ts'
import { type Candidate, candidateAt, designOf, entryAt, gridSize } from './grid.ts'
import { candidatesAsked, type DesignSearchInput, type ResolvedSearch, resolveSearch } from './input.ts'
import { bears, type Judged, judge, runsInYear } from './judge.ts'
import type { Entry, SearchProgress } from './progress.ts'
import { scoreOf } from './score.ts'

/** A design among the best, with what it is asked for by and what there is to watch. */
export interface Ranked extends Judged {
  /** Place in the grid: the order of equal scores. */
  readonly index: number
  readonly design: RadialInput
  readonly findings: readonly Finding[]
}

export interface DesignSearch {
  readonly search: ResolvedSearch
  /** The page that was asked for, the best first. */
  readonly ranked: readonly Ranked[]
  /** Whether there are more behind it. */
  readonly more: boolean
  readonly candidates: number
  /** How many were worked out; the others were told by a bound. */
  readonly workedOut: number
  /** How many cannot be among those asked for, whatever comes out: their bound is too low. */
  readonly outranked: number
  /** How many were dropped, reason by reason. */
  readonly dropped: Readonly<Record<DropReason, number>>
}

/** So many of the best may stop in the year; whoever asks for such a year had better know it than wait. */
const MOST_STOPPED = 1000

/** Why there is no answer. */
export type SearchRefusal = SeasonRefusal | { readonly code: 'hardly-any-runs'; readonly path: string }

/** A bound may differ from a score by its last digits. */
const ROUNDING = 1e-12

/**
 * The best designs within limits: every combination of balls, cutters, groove depths, counts and bores, ranked by score.
 * Complete: candidates are taken in the order of their bounds, and what is left out has a bound below the last that is
 * shown, or a reason. Equal scores keep the order of the grid.
 *
 * @param input lists not empty, bounds of the edge
 * @param mostStopped so many may be tried that do not run all year
 * @returns the page asked for, or what is wrong with the year
 */
export function designSearch(
  input: DesignSearchInput,
  mostStopped: number = MOST_STOPPED,
): Result<DesignSearch, readonly SearchRefusal[]> {
  const begun = beginSearch(input)
  if (!begun.ok) return begun
  const progress = furtherSearch({ input, progress: begun.value, mostEffort: Number.POSITIVE_INFINITY, mostStopped })
  return concludeSearch({ input, progress, mostStopped })
}

interface SearchUnderWay {
  readonly input: DesignSearchInput
  /** Of `beginSearch` or `furtherSearch`, for the same input. */
  readonly progress: SearchProgress
  readonly mostStopped?: number
}

interface SearchStep extends SearchUnderWay {
  /** In `SEARCH_EFFORT` units, above 0; the last candidate may go beyond it. */
  readonly mostEffort: number
}

/** The first step of a search in parts: a bound for every candidate, or what is wrong with the year. */
export function beginSearch(input: DesignSearchInput): Result<SearchProgress, readonly SearchRefusal[]> {
  const search = resolveSearch(input)
  const faults = yearRefusals(search)
  if (faults.length > 0) return fail(faults)
  const candidates = gridSize(search)
  const dropped = Object.fromEntries(DROP_REASONS.map((reason) => [reason, 0])) as Record<DropReason, number>
  const bounds = new Float64Array(candidates)
  const boundOf = boundsOf(search)
  const open: number[] = []
  for (let index = 0; index < candidates; index++) {
    const bound = boundOf(candidateAt(search, index))
    if (typeof bound === 'string') {
      dropped[bound]++
    } else {
      bounds[index] = bound
      open.push(index)
    }
  }
  open.sort((one, other) => itemAt(bounds, other) - itemAt(bounds, one) || one - other)
  const progress: Omit<SearchProgress, 'effortLeft'> = {
    order: Uint32Array.from(open),
    bounds: Float64Array.from(open, (index) => itemAt(bounds, index)),
    looked: 0,
    workedOut: 0,
    dropped,
    best: [],
    closures: new Float64Array(outerKeys(search)).fill(Number.NaN),
    years: 0,
    effort: candidates * SEARCH_EFFORT.bound,
    isOver: open.length === 0,
  }
  return ok({ ...progress, effortLeft: effortLeft(input, progress, MOST_STOPPED, 0) })
}

/**
 * The next step: candidates are worked out until `mostEffort` more has been spent or the search is over. How a search is cut
 * into steps plays no part in its answer. The `closures` of the progress given are written to.
 */
export function furtherSearch({ input, progress, mostEffort, mostStopped = MOST_STOPPED }: SearchStep): SearchProgress {
  const search = resolveSearch(input)
  const { order, bounds, closures } = progress
  const dropped = { ...progress.dropped }
  const best = new Best(candidatesAsked(search), ringOf(search), progress.best)
  let { looked, workedOut, years, effort, isOver } = progress
  const until = effort + mostEffort
  for (; !isOver && effort < until; looked++) {
    const index = order[looked]
    const bound = (bounds[looked] ?? Number.NaN) + ROUNDING
    if (index === undefined || bound < best.lowest) {
      isOver = true
      break
    }
    effort += SEARCH_EFFORT.bound
    const at = candidateAt(search, index)
    const outer = outerKey(search, at)
    if (best.isBeaten(index, bound - closureLost(search, closures[outer]))) continue
    workedOut++
    effort += search.load === undefined ? SEARCH_EFFORT.judgement : SEARCH_EFFORT.judgement + SEARCH_EFFORT.load
    const judged = judge(search, at)
    if (typeof judged === 'string') {
      dropped[judged]++
      continue
    }
    closures[outer] = judged.marks.closure
    const entry = { index, score: judged.score }
    if (!best.takes(entry)) continue
    if (!bears(search, judged.bearing)) {
      dropped['dents-deeper']++
      continue
    }
    const { runs, statesLookedAt } = runsInYear(search, designOf(search, at))
    if (search.year !== undefined) {
      years++
      effort += effortOfYear(statesLookedAt, entryAt(search.counts, at.count))
    }
    if (runs) {
      best.add(entry)
    } else {
      dropped['not-all-year']++
      isOver = dropped['not-all-year'] > mostStopped
    }
  }
  const reached = { order, bounds, closures, looked, workedOut, dropped, best: best.entries, years, effort, isOver }
  const each = (effort - progress.effort) / Math.max(1, looked - progress.looked)
  return { ...reached, effortLeft: effortLeft(input, reached, mostStopped, each) }
}

/**
 * The last step: the page of a search that is over.
 *
 * @throws RangeError for a search that is not over
 */
export function concludeSearch({
  input,
  progress: { isOver, order, best, dropped, workedOut },
  mostStopped = MOST_STOPPED,
}: SearchUnderWay): Result<DesignSearch, readonly SearchRefusal[]> {
  if (!isOver) throw new RangeError('progress must be that of a search that is over')
  if (dropped['not-all-year'] > mostStopped) return fail([{ code: 'hardly-any-runs', path: '/year' }])
  const search = resolveSearch(input)
  return ok({
    search,
    ranked: best.slice(search.offset, search.offset + search.limit).map(({ index }) => rankedAt(search, index)),
    more: best.length > search.offset + search.limit,
    candidates: gridSize(search),
    workedOut,
    outranked: order.length - workedOut,
    dropped,
  })
}

/** What was found good is judged again: so that a search under way is a list of numbers. */
function rankedAt(search: ResolvedSearch, index: number): Ranked {
  const at = candidateAt(search, index)
  const judged = judge(search, at)
  if (typeof judged === 'string') throw new RangeError(`index must be of a candidate that was found good, got ${index}`)
  return { ...judged, index, design: designOf(search, at), findings: ARRANGEMENTS.radial.findingsOf(judged.bearing) }
}

/** Paths are those of the search. */
function yearRefusals({ year, balls }: ResolvedSearch): readonly SeasonRefusal[] {
  if (year === undefined) return []
  const isOfWood = balls.some(({ material }) => material === 'wood')
  const withoutWood: readonly SeasonRefusal[] =
    isOfWood && year.woods.balls === undefined ? [{ code: 'balls-without-wood', path: '/woods/balls' }] : []
  return [...withoutWood, ...yearFaults(year)].map((refusal) => ({ ...refusal, path: `/year${refusal.path}` }))
}

/** What the outer ring hangs on: the closure is the same for all bores and inner rings in it. */
const outerKey = (search: ResolvedSearch, { ball, cutter, outer, count }: Candidate): number =>
  ((ball * search.cutters.length + cutter) * search.outerEngagements.length + outer) * search.counts.length + count

const outerKeys = ({ balls, cutters, outerEngagements, counts }: ResolvedSearch): number =>
  balls.length * cutters.length * outerEngagements.length * counts.length

/** By how much a bound, which takes the closure for perfect, is too high once the closure is known. */
const closureLost = ({ weights }: ResolvedSearch, closure = Number.NaN): number =>
  Number.isNaN(closure)
    ? 0
    : scoreOf({ closure: 1 - closure, wall: 0, nesting: 0, seat: 0, sensitivity: 0, material: 0 }, weights)

/** What two candidates share of which only the better is shown: the ring of balls, or nothing. */
function ringOf(search: ResolvedSearch): (index: number) => number {
  if (search.show === 'all') return (index) => index
  return (index) => {
    const { ball, count } = candidateAt(search, index)
    return ball * search.counts.length + count
  }
}

/** So many entries as are asked for, the best first, of each ring one. */
class Best {
  readonly entries: Entry[]
  readonly #most: number
  readonly #ringOf: (index: number) => number
  readonly #byRing = new Map<number, Entry>()

  constructor(most: number, ringOf: (index: number) => number, entries: readonly Entry[]) {
    this.#most = most
    this.#ringOf = ringOf
    this.entries = [...entries]
    for (const entry of entries) this.#byRing.set(ringOf(entry.index), entry)
  }

  /** The score that must be reached to come in; none as long as there is room. */
  get lowest(): number {
    return this.entries.length < this.#most ? Number.NEGATIVE_INFINITY : lastOf(this.entries).score
  }

  /** Whether a candidate with no better score than this cannot come in: the list is full, or its ring has a better one. */
  isBeaten(index: number, bound: number): boolean {
    const same = this.#byRing.get(this.#ringOf(index))
    return bound < this.lowest || (same !== undefined && bound < same.score)
  }

  /** Whether an entry would come in. */
  takes(entry: Entry): boolean {
    const same = this.#byRing.get(this.#ringOf(entry.index))
    if (same !== undefined) return isBefore(entry, same)
    const last = this.entries.length < this.#most ? undefined : this.entries.at(-1)
    return last === undefined || isBefore(entry, last)
  }

  add(entry: Entry): void {
    if (!this.takes(entry)) return
    const ring = this.#ringOf(entry.index)
    const same = this.#byRing.get(ring)
    if (same !== undefined) this.entries.splice(this.entries.indexOf(same), 1)
    this.#byRing.set(ring, entry)
    const after = this.entries.findIndex((other) => isBefore(entry, other))
    this.entries.splice(after < 0 ? this.entries.length : after, 0, entry)
    const out = this.entries.length > this.#most ? this.entries.pop() : undefined
    if (out !== undefined) this.#byRing.delete(this.#ringOf(out.index))
  }
}

const isBefore = (one: Entry, other: Entry): boolean =>
  one.score > other.score || (one.score === other.score && one.index < other.index)
