import { longer, shorter } from '#shared/geometry/ellipse.ts'
import { type EllipticPlay, playInEllipse } from '#shared/geometry/play-in-ellipse.ts'
import { type GapRange, gapRangeOnEllipse } from '#shared/geometry/ring-of-balls-on-ellipse.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { MadeSizes, Shape } from './shape.ts'

/** What the bearing does at one time. */
export interface Fit {
  readonly ballGap: GapRange
  /** The least gap if every ball of wood lay with its largest diameter along the ring: all but impossible. */
  readonly ballGapOfLargest: Mm
  readonly play: EllipticPlay
  /** What is left between the lands where the inner ring has moved all the way to one side. */
  readonly leastLandGap: Mm
}

export type Trouble = 'balls-bind' | 'rings-bind' | 'lands-rub' | 'balls-knock'

/** The gaps between which it runs: the design's own band. */
export interface GapBand {
  readonly minBallGap: Mm
  readonly maxBallGap: Mm
}

export function fitOf(shape: Shape, { ballCount }: MadeSizes): Fit {
  const { outerBottom, innerBottom, outerLand, innerLand, ball } = shape
  const gapWith = (ballDiameter: Mm): GapRange => gapRangeOnEllipse({ bottom: outerBottom, ballDiameter, ballCount })
  const ballGap = gapWith(ball.mean)
  const play = playInEllipse(outerBottom, innerBottom, ball.mean)
  return {
    ballGap,
    ballGapOfLargest: ball.most === ball.mean ? ballGap.least : gapWith(ball.most).least,
    play,
    leastLandGap: mm(shorter(outerLand) - longer(innerLand) - Math.max(0, play.best) / 2),
  }
}

/** A ring that closes within a hundredth of a micrometre closes: what a root is found to must not fail by its rounding. */
const WITHIN = 1e-5

/** What stops the bearing. Balls that knock do not. */
export function whatBinds({ ballGap, play, leastLandGap }: Fit, { minBallGap }: GapBand): readonly Trouble[] {
  return [
    ...(ballGap.least >= minBallGap - WITHIN ? [] : (['balls-bind'] as const)),
    ...(play.worst >= -WITHIN ? [] : (['rings-bind'] as const)),
    ...(leastLandGap >= -WITHIN ? [] : (['lands-rub'] as const)),
  ]
}

export function troublesOf(fit: Fit, band: GapBand): readonly Trouble[] {
  const knocks = fit.ballGap.most <= band.maxBallGap + WITHIN ? [] : (['balls-knock'] as const)
  return [...whatBinds(fit, band), ...knocks]
}
