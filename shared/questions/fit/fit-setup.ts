import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { Result } from '#shared/result.ts'
import type { Mm } from '#shared/units/length.ts'
import type { FitFault } from './fit.ts'
import type { ReadingKind } from './reading.ts'
import type { Workpiece } from './rescue.ts'
import type { Subject, Target } from './subject.ts'
import type { UnevenBalls } from './uneven-balls.ts'

/** The ring whose groove is being brought to fit. */
export const RINGS = ['outer', 'inner'] as const
export type FittedRing = (typeof RINGS)[number]
/** The part that is cut: one of two rings, or both of two parts that are alike. */
export type FittedPart = FittedRing | 'plate'

/** Why there is nothing to say about a fit. */
export type FitRefusal =
  | UnevenBalls
  | { readonly code: 'gap-not-cut'; readonly path: string }
  | {
      readonly code: 'reading-of-other-ring'
      readonly path: string
      readonly kind: ReadingKind
      readonly ring: FittedPart
    }
  | { readonly code: 'too-many-left-out'; readonly path: string; readonly given: number; readonly most: number }
  | { readonly code: 'target-band-empty'; readonly path: string; readonly min: Mm; readonly max: Mm }
  | { readonly code: 'aim-outside-band'; readonly path: string; readonly aim: Mm; readonly min: Mm; readonly max: Mm }
  | {
      readonly code: 'readings-contradict'
      readonly path: string
      readonly isAlone: boolean
      /** Whether a cut between them, which nobody entered, explains them. */
      readonly isCutBetween: boolean
      /** Whether one of them has the last ball in, and another has it out. */
      readonly isLastBallInAndOut: boolean
      /** An opening for the last ball that is wider than the ball. */
      readonly tooWide?: Mm
    }
  | { readonly code: Exclude<FitFault, 'readings-contradict'>; readonly path: string }

/** The part that is cut, the options for it, and the target band of the design. */
export interface FitSetup {
  readonly resolved: ResolvedBalls
  readonly subject: Subject
  readonly workpiece: Workpiece
  readonly band: Pick<Target, 'aim' | 'min' | 'max'>
}

/** An arrangement as fit correction sees it. */
export interface Fitted<Bearing> {
  /** The parts that can be cut; a request chooses one. */
  readonly parts: readonly FittedPart[]
  setupOf(bearing: Bearing, part: FittedPart): Result<FitSetup, readonly FitRefusal[]>
}

interface GapBand {
  readonly ballGap: number
  readonly minBallGap: number
  readonly maxBallGap: number
}

export const gapBand = ({ ballGap: aim, minBallGap: min, maxBallGap: max }: GapBand): FitSetup['band'] => ({
  aim,
  min,
  max,
})

/** A play from half to twice the design's still runs well: common practice, no source. */
export const playBand = (aim: number): FitSetup['band'] => ({ aim, min: aim / 2, max: 2 * aim })
