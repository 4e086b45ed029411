import type { Mm, Units } from '#shared/units/length.ts'
import type { ArrangementName } from './arrangement.ts'

export const BALL_MATERIALS = ['wood', 'glass', 'acrylic', 'steel'] as const
export type BallMaterial = (typeof BALL_MATERIALS)[number]

/** Which ring comes apart at the middle of its groove, so that a full ring of balls can be closed in. */
export const SPLITS = ['inner-ring', 'outer-ring', 'none'] as const
export type Split = (typeof SPLITS)[number]

export const SHOP_DENOMINATORS = [8, 16, 32, 64, 128] as const

/** The groove's arc in section, given in one of three ways. */
export interface GrooveInput {
  /** Groove radius over ball diameter, f. */
  readonly conformity?: number
  readonly grooveRadius?: Mm
  readonly cutterDiameter?: Mm
}

/** What both rings have. `engagement` and `grooveDepth` are two ways to say one thing. */
export interface RingInput {
  readonly engagement?: number
  readonly grooveDepth?: Mm
  readonly groove?: GrooveInput
}

/** `outsideDiameter` stands for `wall` and `roundOutsideDiameterTo`; null switches the rounding off. */
export interface OutsideInput {
  readonly wall?: Mm
  readonly roundOutsideDiameterTo?: Mm | null
  readonly outsideDiameter?: Mm
}

export interface OuterRingInput extends RingInput, OutsideInput {}

/** Both plates of a `thrust` arrangement, which are cut alike. */
export interface PlatesInput extends Pick<RingInput, 'engagement' | 'grooveDepth'>, OutsideInput {
  readonly thickness?: Mm
}

/** The cage of a `caged` arrangement. `web` and `pitchDiameter` are two ways to say how far apart the balls stand. */
export interface CageInput {
  /** Least wood between two pockets. */
  readonly web?: Mm
  readonly pitchDiameter?: Mm
  /** By how much a pocket is wider than a ball. */
  readonly pocketClearance?: Mm
  /** Between the cage and the land of either ring. */
  readonly landClearance?: Mm
  readonly width?: Mm
}

/** What rolls: balls, or the dowels of a `roller` arrangement under the same names. */
export interface BallsInput {
  readonly count: number
  readonly diameter: Mm
  /** Of rollers. */
  readonly length?: Mm
  readonly material?: BallMaterial
  readonly standardDeviation?: Mm
  /** The maker's own measurements, as many as the ring takes or more: their mean closes the ring. */
  readonly diameters?: readonly Mm[]
}

/** What a maker asks for. What is left out takes the defaults of `defaults.ts`. */
export interface DesignInput {
  readonly units: Units
  readonly arrangement?: ArrangementName
  readonly balls: BallsInput
  readonly bore: Mm
  readonly outerRing?: OuterRingInput
  readonly innerRing?: RingInput
  readonly plates?: PlatesInput
  readonly cage?: CageInput
  /** For either ring that names no groove of its own. */
  readonly groove?: GrooveInput
  readonly ballGap?: Mm
  readonly minBallGap?: Mm
  readonly maxBallGap?: Mm
  readonly radialInternalClearance?: Mm
  /** Film or raised grain, per turned surface. */
  readonly finishAllowance?: Mm
  readonly width?: Mm
  readonly split?: Split
  /** Of an inch, for shop figures; without meaning in millimetres. */
  readonly shopDenominator?: number
}
