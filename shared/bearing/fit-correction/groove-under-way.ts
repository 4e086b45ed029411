import type { BallsInput, GapInput, SettledBallRing } from '#shared/bearing/resolve.ts'
import type { Mm } from '#shared/units/length.ts'
import type { ReadingKind } from './input.ts'

/**
 * A groove that is cut until its ring of balls closes to the wanted gap, in whatever part it lies: how far out the balls
 * stand, by the one number x that cuts make larger. Of a ring x is the radius of the groove's bottom, of a plate that of
 * the groove's circle: there a cut is taken off the outer flank.
 */
export interface GrooveUnderWay {
  readonly settled: SettledBallRing
  /** Least gap at which the last ball goes in. */
  readonly assemblyGap: Mm
  /** As designed. */
  readonly x: Mm
  readonly pitchRadius: (x: number, ballDiameter: number) => number
  /** The way back of `pitchRadius`. */
  readonly xForPitch: (pitchRadius: number, ballDiameter: number) => number
  /** Where the cutting can have begun, at the least. */
  readonly beginsAt: number
  /** d(ball gap)/dx as designed. */
  readonly gapPerX: number
  /** Further x that a finish of unit thickness takes back. */
  readonly xPerFinish: number
  /** The exact closure of unequal balls in their order round the ring, from `tightest` on. */
  readonly unequalGap: (x: Mm, diameters: readonly number[]) => Mm
  /** The least x at which all neighbours find room. */
  readonly tightest: (diameters: readonly number[]) => Mm
  /** What the figures of its depth can be read as, besides those that every such groove has. */
  readonly furtherReadings: readonly ReadingKind[]
  /** A new bearing in the wood as it stands; undefined where there can be none. */
  readonly remade: (change: Remaking) => Remade | undefined
  /** What a lining all round leaves of the groove; undefined where a lining does not bring the balls in. */
  readonly lined: (thickness: Mm) => Lined | undefined
}

export interface Remaking {
  readonly balls: BallsInput
  /** Where the groove is now, or is to be cut to. */
  readonly x: Mm
  readonly band: GapInput
  /** Whether the arc is the one of the cutter that was used, whatever the design says of other balls. */
  readonly keepsCutter: boolean
}

/** Lengths by name, in millimetres. */
type Lengths = Readonly<Record<string, Mm>>

export interface Remade {
  readonly groove: Lengths
  readonly sizes: Lengths
  /** Depth over ball diameter. */
  readonly engagement: number
}

interface Lined {
  /** Of the arc that is left, where there is one. */
  readonly grooveRadius?: Mm
}
