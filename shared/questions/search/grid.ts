import type { DesignInput } from '#shared/bearing/arrangements.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { SEARCHED } from '#shared/questions/search/arrangements/all.ts'
import type { ResolvedSearch } from './input.ts'

/** Places in the lists of a search: one candidate. */
export interface Candidate {
  readonly ball: number
  readonly choice: number
  readonly count: number
  readonly bore: number
}

/** How many candidates a search has. */
export const gridSize = ({ input, choices, counts, bores }: ResolvedSearch): number =>
  input.balls.length * choices.length * counts.length * bores.length

/** How many candidates differ in more than their bore. */
export const ringsIn = (search: ResolvedSearch): number =>
  search.bores.length === 0 ? 0 : gridSize(search) / search.bores.length

/** The candidate of an index from 0 to the size of the grid: bores run fastest, balls slowest. */
export function candidateAt({ bores, counts, choices }: ResolvedSearch, index: number): Candidate {
  let left = index
  const take = (length: number): number => {
    const place = left % length
    left = (left - place) / length
    return place
  }
  const bore = take(bores.length)
  const count = take(counts.length)
  const choice = take(choices.length)
  return { ball: left, choice, count, bore }
}

/** The design of a candidate: what a maker would send to have it by itself. */
export function designOf(search: ResolvedSearch, at: Candidate): DesignInput {
  const { input, arrangement, shared } = search
  const { diameter, material, standardDeviation } = itemAt(input.balls, at.ball)
  // The rows of the arrangement made the fields that are shared, and its module those that a choice decides.
  return {
    units: input.units,
    arrangement,
    ...shared,
    balls: {
      count: itemAt(search.counts, at.count),
      diameter,
      ...(material === undefined ? {} : { material }),
      ...(standardDeviation === undefined ? {} : { standardDeviation }),
    },
    bore: itemAt(search.bores, at.bore),
    ...SEARCHED[arrangement].partsOf(itemAt(search.choices, at.choice)),
  } as unknown as DesignInput
}
