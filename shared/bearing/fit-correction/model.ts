import type { Belief, Evidence, Prior } from '#shared/statistics/belief.ts'
import type { ErrorToCome } from './error-to-come.ts'
import type { Reading, ReadingKind } from './input.ts'

/**
 * What a groove under way looks like to the statistics: two numbers not known, `x` that cuts make larger and `y` that
 * nothing moves, and the one figure of both that the maker wants in band. The figure grows with x.
 */
export interface GrooveModel {
  readonly prior: Prior
  /** Ball gap (outer ring) or radial internal clearance (inner ring). */
  readonly figure: (x: number, y: number) => number
  /** A figure beyond this is none of this bearing: the gap takes another ball. */
  readonly mostFigure: number
  /** The x at which the figure has a given value: the way back of `figure`. */
  readonly xFor: (figure: number, y: number) => number
  /** d(figure)/dx at the design point. */
  readonly figurePerX: number
  /** Further x that a finish of unit thickness takes back. */
  readonly xPerFinish: number
  /** The true value behind a reading of a figure, and undefined for readings that are yes or no. */
  readonly truth: (reading: Reading) => ((x: number, y: number) => number) | undefined
  readonly evidence: (reading: Reading) => Evidence
  /** The readings of the figure itself, one of which is taken after each cut. */
  readonly checks: readonly [ReadingKind, ...ReadingKind[]]
  /** Readings worth taking next, none of them taken yet, with the error that each kind will have. */
  readonly offers: (belief: Belief, errorOf: ErrorToCome) => readonly Reading[]
  readonly kinds: readonly ReadingKind[]
}
