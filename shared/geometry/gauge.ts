import { type Mm, mm } from '#shared/units/length.ts'
import { pitchRadiusForGap } from './ring-of-balls.ts'

/** Plug diameters: the circle inside the balls seated in the outer groove, at the aim and at the gaps of both plugs. */
export interface Gauge {
  readonly nominalDiameter: Mm
  /** Enters when the gap is at least the one of the go plug: the groove is deep enough. */
  readonly goDiameter: Mm
  /** Must not enter: it would mean that the gap is over the largest allowed. */
  readonly noGoDiameter: Mm
  /** How the ball gap moves per ball diameter for a groove that fits a plug: at exact closure −Z (1 − sin(π/Z)). */
  readonly gapPerBallDiameterAtPlug: number
}

/** The ball gaps [mm] at which the go plug just enters, and at which the no-go plug would. */
export interface PlugGaps {
  readonly go: Mm
  readonly noGo: Mm
}

/** The circle that touches all seated balls from inside:  2 (R − Dw/2). */
export const plugDiameter = (pitchRadius: Mm, ballDiameter: Mm): Mm => mm(2 * pitchRadius - ballDiameter)

/**
 * The plug for an outer groove: Taylor's go and no-go (ISO 1938-1), here at the limits of the ball gap.
 *
 * @param gaps each above −Dw and below (Z − 2) Dw
 * @throws RangeError outside those ranges
 */
export function plugGauge(
  at: { readonly pitchRadius: Mm; readonly ballDiameter: Mm; readonly ballCount: number },
  gaps: PlugGaps,
  slopes: { readonly gapPerPitchRadius: number; readonly gapPerBallDiameterAtPitchRadius: number },
): Gauge {
  const { pitchRadius, ballDiameter, ballCount } = at
  const forGap = (gap: Mm): Mm => plugDiameter(pitchRadiusForGap(gap, ballDiameter, ballCount), ballDiameter)
  return {
    nominalDiameter: plugDiameter(pitchRadius, ballDiameter),
    goDiameter: forGap(gaps.go),
    noGoDiameter: forGap(gaps.noGo),
    gapPerBallDiameterAtPlug: slopes.gapPerBallDiameterAtPitchRadius + slopes.gapPerPitchRadius / 2,
  }
}
