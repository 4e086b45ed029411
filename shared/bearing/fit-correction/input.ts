import type { DesignInput, Question } from '#shared/bearing/arrangements.ts'
import type { ReadingError } from '#shared/statistics/likelihood.ts'
import type { Mm } from '#shared/units/length.ts'

/** What the maker reads at a groove. Figures that are rounded or felt carry their error. */
export type Reading =
  | { readonly kind: 'ball-gap'; readonly value: Mm; readonly error: ReadingError }
  | { readonly kind: 'last-ball-opening'; readonly value: Mm; readonly error: ReadingError }
  | { readonly kind: 'last-ball-refused' }
  | { readonly kind: 'plug'; readonly diameter: Mm; readonly result: PlugResult; readonly error: ReadingError }
  | { readonly kind: 'groove-bottom-diameter'; readonly value: Mm; readonly error: ReadingError }
  | { readonly kind: 'groove-depth'; readonly value: Mm; readonly landDiameter: Mm; readonly error: ReadingError }
  | { readonly kind: 'ball-row'; readonly count: number; readonly value: Mm; readonly error: ReadingError }
  | { readonly kind: 'radial-play'; readonly value: Mm; readonly error: ReadingError }
  | { readonly kind: 'binds' }

export type ReadingKind = Reading['kind']

export const FIT_CORRECTION = {
  name: 'fit-correction',
  serves: ['radial', 'thrust', 'roller', 'caged'],
} as const satisfies Question

export const PLUG_RESULTS = ['enters', 'snug', 'refuses'] as const
export type PlugResult = (typeof PLUG_RESULTS)[number]

export const RINGS = ['outer', 'inner'] as const
/** The ring whose groove is being brought to fit. */
export type FittedRing = (typeof RINGS)[number]
/** What is on the lathe: one of two rings, or a plate, which is like the other. */
export type FittedPart = FittedRing | 'plate'

export const TOOLS = ['sharp-tool', 'abrasive'] as const
export type ToolName = (typeof TOOLS)[number]

/** How far a cut of asked depth x comes out from it: standard deviation √(absolute² + (relative · x)²). */
export interface ToolError {
  readonly absolute: Mm
  readonly relative: number
}

interface EarlierState {
  readonly readings: readonly Reading[]
  readonly thenRemoved: { readonly with: ToolName; readonly radial: Mm }
}

/** Strokes of the abrasive, and the ball gap (play, for the inner ring) before and after. */
export interface Removal {
  readonly strokes: number
  readonly before: Mm
  readonly after: Mm
}

export interface BallsOnHand {
  readonly diameter: Mm
  readonly quantity: number
}

/** The band to end in: of the ball gap for the outer ring, of the radial internal clearance for the inner. */
export interface Target {
  /** Each at least 0. */
  readonly aim?: Mm
  readonly min?: Mm
  readonly max?: Mm
  /** Chance of ending too deep that the maker accepts, over all cuts to come. */
  readonly overshootRisk?: number
  /** Film or raised grain that still comes on each surface. Left out: the design's own. */
  readonly finishAllowance?: Mm
}

export interface FitCorrectionInput {
  readonly design: DesignInput
  /** `plate` for a design of plates, and for no other. */
  readonly ring: FittedPart
  readonly readings: readonly Reading[]
  readonly earlier: readonly EarlierState[]
  readonly target: Target
  readonly tools: { readonly sharpTool?: ToolError; readonly abrasive?: ToolError }
  readonly removalHistory: readonly Removal[]
  readonly ballsOnHand: readonly BallsOnHand[]
}
