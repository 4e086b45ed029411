/*
 * The figures of a bearing that fit correction needs: plain numbers, in millimetres. It knows no arrangement by name; `from-bearing.ts`
 * makes a subject of today's bearings.
 */

/**
 * How far out the balls stand in the groove that they close on. `x` is what a cut makes larger: the radius of the groove's
 * bottom, or, on a plate, of the groove's circle.
 */
export type SeatLaw =
  | { readonly on: 'bottom' }
  /** On the two edges of an arc tighter than the ball, the land staying where it is. */
  | { readonly on: 'edges'; readonly landRadius: number; readonly arc: number }
  /** On a plate: the balls lie over the groove's circle, whatever their size. */
  | { readonly on: 'circle' }

/** The rolling elements. */
export interface Balls {
  /** Z, at least 3. */
  readonly count: number
  /** Mean diameter: nominal, or of the balls that were measured. */
  readonly diameter: number
  /** Standard deviation of single balls. */
  readonly scatter: number
  /** Set where the balls were measured one by one: the standard uncertainty of their mean. */
  readonly meanUncertainty?: number
  /** Standard deviation of the ball gap that unequal balls cause, per scatter of single balls. */
  readonly gapDeviation: number
}

/** The groove on which the balls stand. */
export interface OuterGroove {
  /** As designed. */
  readonly x: number
  /** How deep it is cut: the scale on which a half-cut groove lies short of the design. */
  readonly depth: number
  readonly seat: SeatLaw
  /** How much x a finish of unit thickness takes back. */
  readonly xPerFinish: number
}

/** The groove of an inner ring that is cut to its play. */
export interface InnerGroove {
  readonly bottomRadius: number
  readonly landRadius: number
  readonly depth: number
  /** Radius of the arc where it is tighter than the ball, so that the ball rides on the edges. */
  readonly arcOnEdges?: number
  /** How much play a finish of unit thickness on every surface takes back. */
  readonly playPerFinish: number
}

/** The ring that is cut. */
export type Subject = {
  readonly balls: Balls
  readonly outer: OuterGroove
} & (
  | {
      readonly cuts: 'outer'
      /** Gap at which rigid balls let the last one in. */
      readonly assemblyGap: number
    }
  | {
      readonly cuts: 'inner'
      readonly inner: InnerGroove
      /** The measure to which the outer ring was finished: a ball gap, or, for balls that are kept apart, a groove. */
      readonly outerKnown:
        | {
            readonly by: 'gap'
            readonly gap: number
            readonly deviation: number
            readonly assemblyGap: number
            /** Readings show that it was not brought to that gap: nothing is known of its groove but what was read. */
            readonly isLeft?: boolean
          }
        | { readonly by: 'groove'; readonly deviation: number }
    }
)

/** The target: a ball gap, or the play of an inner ring. */
export interface Target {
  readonly aim: number
  readonly min: number
  readonly max: number
  /** Chance of ending too deep that the maker accepts. */
  readonly overshootRisk: number
  /** Film or raised grain still to come on each surface. */
  readonly finishAllowance: number
}
