import type { DesignInput } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import { BORED_PARTS } from '#shared/bearing/wood-parts.ts'
import { yearFaults } from '#shared/movement/moving-bearing.ts'
import type { SeasonRefusal } from '#shared/movement/refusal.ts'
import { itemAt, lastOf } from '#shared/numbers/item-at.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { isSegmented } from '#shared/wood/construction.ts'
import { DROP_REASONS, type DropReason } from './drop-reason.ts'
import { effortLeft, effortToProve, SEARCH_EFFORT } from './effort.ts'
import { candidateAt, designOf, gridSize, ringsIn } from './grid.ts'
import { candidatesWanted, type DesignSearchInput, type ResolvedSearch, resolveSearch } from './input.ts'
import { boundWith, type Judged, judge, proved, throughSeason } from './judge.ts'
import type { Entry, SearchProgress } from './progress.ts'

/** A design among the best, with the input that asks for it. */
export interface Ranked extends Judged {
  /** Place in the grid: the order of equal scores. */
  readonly index: number
  readonly design: DesignInput
}

export interface DesignSearch {
  readonly search: ResolvedSearch
  /** The page that was requested, the best first. */
  readonly ranked: readonly Ranked[]
  /** Whether there are more behind it. */
  readonly more: boolean
  readonly candidates: number
  /** How many were dropped, reason by reason: for their load and their year only as far as these were looked at. */
  readonly dropped: Readonly<Record<DropReason, number>>
}

/** So many of the best may stop in the year; whoever asks for such a year had better know it than wait. */
const MOST_STOPPED = 1000

/** Why there is no answer. */
export type SearchRefusal = SeasonRefusal | { readonly code: 'hardly-any-runs'; readonly path: string }

/**
 * The best designs within limits: every combination of balls, lists, counts and bores, ranked by score. Complete: all are
 * judged; their load and their year, which take longer, can only lower a score and are looked at in its order, until none
 * that is left can come into the list. Equal scores keep the order of the grid.
 *
 * @param input lists not empty, bounds of the edge
 * @param mostStopped so many may be tried that do not run all year
 * @returns the page requested, or what is wrong with the year
 */
export function designSearch(
  input: DesignSearchInput,
  mostStopped: number = MOST_STOPPED,
): Result<DesignSearch, readonly SearchRefusal[]> {
  const begun = beginSearch(input)
  if (!begun.ok) return begun
  let progress = begun.value
  while (!progress.isOver) {
    progress = furtherSearch({ input, progress, mostEffort: Number.POSITIVE_INFINITY, mostStopped })
  }
  return concludeSearch({ input, progress, mostStopped })
}

interface Begun {
  readonly input: DesignSearchInput
  /** The progress from `beginSearch` or `furtherSearch`, for the same input. */
  readonly progress: SearchProgress
  readonly mostStopped?: number
}

interface SearchStep extends Begun {
  /** In `SEARCH_EFFORT` units, above 0; the last candidate may go beyond it. */
  readonly mostEffort: number
}

/** The first step of a search in parts: nothing is judged yet, or the faults of the year. */
export function beginSearch(input: DesignSearchInput): Result<SearchProgress, readonly SearchRefusal[]> {
  const search = resolveSearch(input)
  const faults = yearRefusals(search)
  if (faults.length > 0) return fail(faults)
  const candidates = gridSize(search)
  const progress: Omit<SearchProgress, 'effortLeft'> = {
    bounds: new Float64Array(candidates).fill(Number.NaN),
    judged: 0,
    order: new Uint32Array(0),
    lost: new Float64Array(ringsIn(search)).fill(Number.NaN),
    looked: 0,
    proved: 0,
    dropped: Object.fromEntries(DROP_REASONS.map((reason) => [reason, 0])) as Record<DropReason, number>,
    best: [],
    effort: 0,
    isOver: candidates === 0,
  }
  return ok({ ...progress, effortLeft: effortLeft(input, progress, MOST_STOPPED) })
}

/**
 * The next step: candidates are judged, and then proved in the order of their bounds, until `mostEffort` more has been spent
 * or the search is over. How a search is cut into steps plays no part in its answer. The `bounds` and `lost` of the progress
 * given are written to.
 */
export function furtherSearch({ input, progress, mostEffort, mostStopped = MOST_STOPPED }: SearchStep): SearchProgress {
  const search = resolveSearch(input)
  const until = progress.effort + mostEffort
  const isJudged = progress.judged === ringsIn(search)
  const reached = isJudged ? proveOn(search, progress, until, mostStopped) : judgeOn(search, progress, until)
  return { ...reached, effortLeft: effortLeft(input, reached, mostStopped) }
}

type Reached = Omit<SearchProgress, 'effortLeft'>

/** If candidates differ in their bore alone, the one with the smallest is calculated; it gives a bound for the others. */
function judgeOn(search: ResolvedSearch, progress: SearchProgress, until: number): Reached {
  const { bounds } = progress
  const { bores } = search
  const rings = ringsIn(search)
  const dropped = { ...progress.dropped }
  let { judged, effort } = progress
  for (; judged < rings && effort < until; judged++) {
    const first = judged * bores.length
    effort += SEARCH_EFFORT.judgement + bores.length * SEARCH_EFFORT.bound
    const narrow = judge(search, candidateAt(search, first))
    for (const [place, bore] of bores.entries()) {
      const bound = typeof narrow === 'string' ? narrow : boundWith(search, narrow, bore)
      if (typeof bound === 'string') dropped[bound]++
      else bounds[first + place] = bound
    }
  }
  if (judged < rings) return { ...progress, dropped, judged, effort }
  const left = Uint32Array.from(bounds.keys()).filter((index) => !Number.isNaN(itemAt(bounds, index)))
  const order = left.sort((one, other) => itemAt(bounds, other) - itemAt(bounds, one) || one - other)
  return { ...progress, dropped, judged, effort, order, isOver: order.length === 0 }
}

/** A bound may differ from a score by its last digits. */
const ROUNDING = 1e-12

function proveOn(search: ResolvedSearch, progress: SearchProgress, until: number, mostStopped: number): Reached {
  const { order, bounds, lost } = progress
  const isSame = isSameForAllBores(search)
  const dropped = { ...progress.dropped }
  const best = new Best(candidatesWanted(search.input), ringOf(search), progress.best)
  let { looked, effort, isOver, proved: tried } = progress
  for (; !isOver && effort < until; looked++) {
    const index = order[looked]
    const bound = (bounds[index ?? -1] ?? Number.NaN) + ROUNDING
    if (index === undefined || bound < best.lowest) {
      isOver = true
      break
    }
    effort += SEARCH_EFFORT.bound
    const ring = Math.floor(index / search.bores.length)
    const lostBefore = itemAt(lost, ring)
    if (lostBefore === FAILS || !best.takes({ index, score: bound - (lostBefore || 0) })) continue
    tried++
    effort += effortToProve(search.input, itemAt(search.counts, candidateAt(search, index).count))
    const judged = judge(search, candidateAt(search, index))
    const found = typeof judged === 'string' ? judged : proved(search, judged)
    if (typeof found !== 'string') {
      if (isSame && typeof judged !== 'string') lost[ring] = judged.score - found.score
      best.add({ index, score: found.score })
    } else {
      const isOfRing = isSame && judged !== found
      dropped[found] += isOfRing ? boresLeft(bounds, ring, search.bores.length) : 1
      if (isOfRing) lost[ring] = FAILS
      isOver = dropped['not-all-year'] > mostStopped
    }
  }
  return { ...progress, looked, proved: tried, dropped, best: best.entries, effort, isOver }
}

/** The load and the year of a ring of balls that carries too little, or stops. */
const FAILS = Number.POSITIVE_INFINITY

/** Whether load and year take as much from every bore: the bore is felt in a hoop of segments alone. */
const isSameForAllBores = ({ input: { year } }: ResolvedSearch): boolean =>
  BORED_PARTS.every((part) => {
    const wood = year?.woods[part]
    return wood === undefined || !isSegmented(wood)
  })

/** How many bores of a ring of balls are still in question. */
const boresLeft = (bounds: Float64Array, ring: number, bores: number): number =>
  bounds.subarray(ring * bores, (ring + 1) * bores).filter((bound) => !Number.isNaN(bound)).length

function provedAt(search: ResolvedSearch, index: number): Judged | DropReason {
  const judged = judge(search, candidateAt(search, index))
  return typeof judged === 'string' ? judged : proved(search, judged)
}

/**
 * The last step: the page of a search that is over.
 *
 * @throws RangeError for a search that is not over
 */
export function concludeSearch({
  input,
  progress: { isOver, best, dropped, bounds },
  mostStopped = MOST_STOPPED,
}: Begun): Result<DesignSearch, readonly SearchRefusal[]> {
  if (!isOver) throw new RangeError('progress must be that of a search that is over')
  if (dropped['not-all-year'] > mostStopped) return fail([{ code: 'hardly-any-runs', path: '/year' }])
  const search = resolveSearch(input)
  const { offset, limit } = search.input
  return ok({
    search,
    ranked: best
      .slice(offset, offset + limit)
      .map(({ index }) => rankedAt(search, index))
      .toSorted((one, other) => (isBefore(one, other) ? -1 : 1)),
    more: best.length > offset + limit,
    candidates: bounds.length,
    dropped,
  })
}

/** Judges the best candidates again, so that a search in progress is a list of numbers. */
function rankedAt(search: ResolvedSearch, index: number): Ranked {
  const found = provedAt(search, index)
  if (typeof found === 'string') throw new RangeError(`index must be of a candidate that was found good, got ${index}`)
  return { ...throughSeason(search, found), index, design: designOf(search, candidateAt(search, index)) }
}

/** Paths are those of the search. */
function yearRefusals({ input: { year, balls } }: ResolvedSearch): readonly SeasonRefusal[] {
  if (year === undefined) return []
  const isOfWood = balls.some(({ material = BALL_MATERIAL }) => material === 'wood')
  const withoutWood: readonly SeasonRefusal[] =
    isOfWood && year.woods.balls === undefined ? [{ code: 'balls-without-wood', path: '/woods/balls' }] : []
  return [...withoutWood, ...yearFaults(year)].map((refusal) => ({ ...refusal, path: `/year${refusal.path}` }))
}

/** A key of a candidate: of those that share one, only the best is shown. */
function ringOf(search: ResolvedSearch): (index: number) => number {
  if (search.input.show === 'all') return (index) => index
  return (index) => {
    const { ball, count } = candidateAt(search, index)
    return ball * search.counts.length + count
  }
}

/** The requested number of entries, best first, one for each ring. */
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
