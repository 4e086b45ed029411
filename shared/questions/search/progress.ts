import type { DropReason } from './drop-reason.ts'

/** A candidate that was found good, by its place in the grid. */
export interface Entry {
  readonly index: number
  readonly score: number
}

/** A search under way, as plain data: any thread can go on with it. */
export interface SearchProgress {
  /** Candidates by their bounds, the best bound first, and those bounds. */
  readonly order: Uint32Array
  readonly bounds: Float64Array
  /** How many of them have been looked at. */
  readonly looked: number
  readonly workedOut: number
  readonly dropped: Readonly<Record<DropReason, number>>
  /** The best so far. */
  readonly best: readonly Entry[]
  /** Marks of the closures known so far, by `outerKey`; NaN where none is known. */
  readonly closures: Float64Array
  /** Years that were looked through. */
  readonly years: number
  /** Work done so far, in `SEARCH_EFFORT` units. */
  readonly effort: number
  /** Work that is still to be done, in the same units: an estimate. */
  readonly effortLeft: number
  /** Whether nothing that is left can change the answer. */
  readonly isOver: boolean
}
