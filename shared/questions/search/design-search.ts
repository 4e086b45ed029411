import { ARRANGEMENTS, type RadialInput } from '#shared/bearing/arrangements.ts'
import type { Finding } from '#shared/bearing/warning.ts'
import type { SeasonRefusal } from '#shared/questions/season/refusal.ts'
import { yearFaults } from '#shared/questions/season/seasonal-fit.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { boundsOf } from './bound.ts'
import { DROP_REASONS, type DropReason } from './drop-reason.ts'
import { type Candidate, candidateAt, designOf, gridSize } from './grid.ts'
import { type DesignSearchInput, type SettledSearch, settleSearch } from './input.ts'
import { bears, type Judged, judge, runsInYear } from './judge.ts'
import { scoreOf } from './score.ts'

/** A design among the best, with what it is asked for by and what there is to watch. */
export interface Ranked extends Judged {
  /** Place in the grid: the order of equal scores. */
  readonly index: number
  readonly design: RadialInput
  readonly findings: readonly Finding[]
}

export interface DesignSearch {
  readonly search: SettledSearch
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
  const search = settleSearch(input)
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
  open.sort((one, other) => (bounds[other] ?? 0) - (bounds[one] ?? 0) || one - other)
  const best = new Best(search.offset + search.limit + 1, ringOf(search))
  const closures = new Map<number, number>()
  let workedOut = 0
  for (const index of open) {
    const bound = (bounds[index] ?? 0) + ROUNDING
    if (bound < best.lowest) break
    const at = candidateAt(search, index)
    const outer = outerKey(search, at)
    if (best.isBeaten(index, bound - closureLost(search, closures.get(outer)))) continue
    workedOut++
    const judged = judge(search, at)
    if (typeof judged === 'string') {
      dropped[judged]++
      continue
    }
    closures.set(outer, judged.marks.closure)
    if (!best.takes({ index, judged })) continue
    if (!bears(search, judged.bearing)) {
      dropped['dents-deeper']++
    } else if (!runsInYear(search, designOf(search, at))) {
      dropped['not-all-year']++
      if (dropped['not-all-year'] > mostStopped) return fail([{ code: 'hardly-any-runs', path: '/year' }])
    } else best.add({ index, judged })
  }
  const page = best.entries.slice(search.offset, search.offset + search.limit)
  return ok({
    search,
    ranked: page.map(({ index, judged }) => ({
      ...judged,
      index,
      design: designOf(search, candidateAt(search, index)),
      findings: ARRANGEMENTS.radial.findingsOf(judged.bearing),
    })),
    more: best.entries.length > search.offset + search.limit,
    candidates,
    workedOut,
    outranked: open.length - workedOut,
    dropped,
  })
}

/** Paths are those of the search. */
function yearRefusals({ year, balls }: SettledSearch): readonly SeasonRefusal[] {
  if (year === undefined) return []
  const isOfWood = balls.some(({ material }) => material === 'wood')
  const withoutWood: readonly SeasonRefusal[] =
    isOfWood && year.woods.balls === undefined ? [{ code: 'balls-without-wood', path: '/woods/balls' }] : []
  return [...withoutWood, ...yearFaults(year)].map((refusal) => ({ ...refusal, path: `/year${refusal.path}` }))
}

/** What the outer ring hangs on: the closure is the same for all bores and inner rings in it. */
const outerKey = (search: SettledSearch, { ball, cutter, outer, count }: Candidate): number =>
  ((ball * search.cutters.length + cutter) * search.outerEngagements.length + outer) * search.counts.length + count

/** By how much a bound, which takes the closure for perfect, is too high once the closure is known. */
const closureLost = ({ weights }: SettledSearch, closure = 1): number =>
  scoreOf({ closure: 1 - closure, wall: 0, nesting: 0, seat: 0, sensitivity: 0, material: 0 }, weights)

interface Entry {
  readonly index: number
  readonly judged: Judged
}

/** What two candidates share of which only the better is shown: the ring of balls, or nothing. */
function ringOf(search: SettledSearch): (index: number) => number {
  if (search.show === 'all') return (index) => index
  return (index) => {
    const { ball, count } = candidateAt(search, index)
    return ball * search.counts.length + count
  }
}

/** So many entries as are asked for, the best first, of each ring one. */
class Best {
  readonly entries: Entry[] = []
  readonly #most: number
  readonly #ringOf: (index: number) => number
  readonly #byRing = new Map<number, Entry>()

  constructor(most: number, ringOf: (index: number) => number) {
    this.#most = most
    this.#ringOf = ringOf
  }

  /** The score that must be reached to come in; none as long as there is room. */
  get lowest(): number {
    return this.entries.length < this.#most ? Number.NEGATIVE_INFINITY : (this.entries.at(-1)?.judged.score ?? 0)
  }

  /** Whether a candidate with no better score than this cannot come in: the list is full, or its ring has a better one. */
  isBeaten(index: number, bound: number): boolean {
    const same = this.#byRing.get(this.#ringOf(index))
    return bound < this.lowest || (same !== undefined && bound < same.judged.score)
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
  one.judged.score > other.judged.score || (one.judged.score === other.judged.score && one.index < other.index)
