import type { RadialInput } from '#shared/bearing/arrangements.ts'
import type { ResolvedSearch } from './input.ts'

/** Places in the lists of a search: one candidate. */
export interface Candidate {
  readonly ball: number
  readonly cutter: number
  readonly outer: number
  readonly inner: number
  readonly count: number
  readonly bore: number
}

/** How many candidates a search has. */
export const gridSize = (search: ResolvedSearch): number =>
  search.balls.length *
  search.cutters.length *
  search.outerEngagements.length *
  search.innerEngagements.length *
  search.counts.length *
  search.bores.length

/** The candidate of an index from 0 to the size of the grid: bores run fastest, balls slowest. */
export function candidateAt(search: ResolvedSearch, index: number): Candidate {
  let left = index
  const take = (length: number): number => {
    const place = left % length
    left = (left - place) / length
    return place
  }
  const bore = take(search.bores.length)
  const count = take(search.counts.length)
  const inner = take(search.innerEngagements.length)
  const outer = take(search.outerEngagements.length)
  const cutter = take(search.cutters.length)
  return { ball: take(search.balls.length), cutter, outer, inner, count, bore }
}

/** The entry of a list that a place of this grid must have. */
export function entryAt<T>(list: readonly T[], place: number): T {
  if (!(place >= 0 && place < list.length)) throw new RangeError(`place must be below ${list.length}, got ${place}`)
  return list[place] as T
}

/** The design of a candidate: what a maker would ask for by itself. */
export function designOf(search: ResolvedSearch, at: Candidate): RadialInput {
  const { shared } = search
  const cutterDiameter = entryAt(search.cutters, at.cutter)
  return {
    ...shared,
    balls: { count: entryAt(search.counts, at.count), ...entryAt(search.balls, at.ball) },
    bore: entryAt(search.bores, at.bore),
    outerRing: { engagement: entryAt(search.outerEngagements, at.outer) },
    innerRing: { engagement: entryAt(search.innerEngagements, at.inner) },
    ...(cutterDiameter === undefined ? {} : { groove: { cutterDiameter } }),
  }
}
