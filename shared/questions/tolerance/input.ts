import type { DesignInput, Question } from '#shared/bearing/arrangements.ts'
import type { Traits } from '#shared/bearing/traits.ts'
import type { Year } from '#shared/movement/year.ts'
import type { Mm } from '#shared/units/length.ts'

export const TOLERANCE_CHECK = {
  name: 'tolerance-check',
  serves: ['radial', 'thrust', 'roller'],
} as const satisfies Question

/**
 * The contributors that may differ from the design, in the order in which trials draw them: each ball on its own, all balls together, the
 * bottoms of both grooves (by radius, above 0 further out), two lobes in either groove, and the film on each groove. That of
 * the lobes and the film is the amplitude and the thickness; all others say how far off the design something is. The last two are
 * of plates, each plate on its own: the radius of the circle in which its groove lies, and the groove's depth.
 */
export const CONTRIBUTORS = [
  'ballDiameter',
  'ballLotMean',
  'outerGrooveBottomRadius',
  'innerGrooveBottomRadius',
  'outOfRound',
  'finishFilm',
  'grooveCircleRadius',
  'grooveDepth',
] as const
export type ContributorName = (typeof CONTRIBUTORS)[number]

const OF_BALLS = ['ballDiameter', 'ballLotMean'] as const satisfies readonly ContributorName[]

/** Those that there are, by what lies round the balls. */
export const CONTRIBUTORS_OF: Readonly<Record<Traits['members'], readonly ContributorName[]>> = {
  rings: [...OF_BALLS, 'outerGrooveBottomRadius', 'innerGrooveBottomRadius', 'outOfRound', 'finishFilm'],
  plates: [...OF_BALLS, 'grooveCircleRadius', 'grooveDepth'],
}

/** Whatever makes a bearing differ from its design: the weather changes several things at once, so it has no one scatter. */
export type CauseName = ContributorName | 'climate'

/** How something scatters. Without a mean it does so about what the design says. */
export type Scatter =
  | { readonly kind: 'normal'; readonly mean?: Mm; readonly standardDeviation: Mm }
  | { readonly kind: 'uniform'; readonly plusMinus: Mm }
  | { readonly kind: 'triangular'; readonly plusMinus: Mm }
  /** Balls alone: drawn from this list, none twice; as many as the ring takes or more. */
  | { readonly kind: 'measured'; readonly diameters: readonly Mm[] }

export type Contributors = { readonly [Name in ContributorName]?: Scatter }

export interface LimitsInput {
  readonly minBallGap?: Mm
  readonly maxBallGap?: Mm
  readonly minRadialInternalClearance?: Mm
  readonly maxRadialInternalClearance?: Mm
  readonly minPlateGap?: Mm
  readonly maxPlateGap?: Mm
}

const OF_GAP = ['minBallGap', 'maxBallGap'] as const satisfies readonly (keyof LimitsInput)[]

export const LIMITS_OF: Readonly<Record<Traits['members'], readonly (keyof LimitsInput)[]>> = {
  rings: [...OF_GAP, 'minRadialInternalClearance', 'maxRadialInternalClearance'],
  plates: [...OF_GAP, 'minPlateGap', 'maxPlateGap'],
}

export interface ToleranceCheckInput {
  readonly design: DesignInput
  readonly contributors: Contributors
  /** Whether balls differ as the design says where no `ballDiameter` is named; else they are alike. */
  readonly ballsAsDesigned?: boolean
  /** The woods, the day of making and the year through which the bearing runs; without it the wood stays as it is. */
  readonly year?: Year
  readonly limits?: LimitsInput
  /** How many, or as many as it takes until the figures are stable; if absent, none unless they are needed. */
  readonly trials?: number | 'auto'
  /** Significant digits of the standard deviations to which `auto` needs the figures stable. */
  readonly significantDigits?: number
  readonly seed?: number
  /** Chance of a groove too deep that is accepted where the aim is limited by it. */
  readonly overshootRisk?: number
}
