import type { DropReason } from './drop-reason.ts'

/** A candidate that was found good, by its place in the grid. */
export interface Entry {
  readonly index: number
  readonly score: number
}

/** A search in progress, as plain data that any thread can go on with. */
export interface SearchProgress {
  /** No score of a candidate is above its bound; NaN where it is dropped or not judged yet. */
  readonly bounds: Float64Array
  /** How many rings of balls are judged, with all their bores: the first of the grid. */
  readonly judged: number
  /** Those that are left, the best bound first; empty until all are judged. */
  readonly order: Uint32Array
  /** How many of `order` have been looked at, and how many of these were proved. */
  readonly looked: number
  readonly proved: number
  /** Loss of score by load and year for a ring of balls, whatever its bore: Infinity if it fails, NaN if unknown. */
  readonly lost: Float64Array
  readonly dropped: Readonly<Record<DropReason, number>>
  /** The best so far. */
  readonly best: readonly Entry[]
  /** Work done so far, in `SEARCH_EFFORT` units, and work that is still to be done: an estimate. */
  readonly effort: number
  readonly effortLeft: number
  /** Whether nothing that is left can change the answer. */
  readonly isOver: boolean
}
