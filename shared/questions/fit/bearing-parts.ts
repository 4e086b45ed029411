import { measuredMeanUncertainty } from '#shared/bearing/ball-lot.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { isPlain } from '#shared/geometry/groove.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { Balls, InnerGroove, OuterGroove, SeatLaw } from './subject.ts'

/* The parts of a bearing of any arrangement that make a subject of fit correction. */

/** How far a plain track, or a plate's circle, is taken to be from done when it is first tried, in ball diameters. Common practice, no source. */
export const WITHOUT_DEPTH = 1 / 4

export function outerGrooveOf({ resolved, outerRing }: RingPair): OuterGroove {
  const isTrack = isPlain(resolved.outerGroove)
  const seat: SeatLaw =
    outerRing.seat === 'edges'
      ? { on: 'edges', landRadius: outerRing.landDiameter / 2, arc: resolved.outerGroove.radius }
      : { on: 'bottom' }
  return {
    x: outerRing.grooveBottomDiameter / 2,
    depth: isTrack ? WITHOUT_DEPTH * resolved.ballDiameter : outerRing.grooveDepth,
    seat,
    xPerFinish: 1,
  }
}

export function innerGrooveOf({ resolved, innerRing }: RingPair): InnerGroove {
  const isTrack = isPlain(resolved.innerGroove)
  return {
    bottomRadius: innerRing.grooveBottomDiameter / 2,
    landRadius: innerRing.landDiameter / 2,
    depth: isTrack ? WITHOUT_DEPTH * resolved.ballDiameter : innerRing.grooveDepth,
    ...(innerRing.seat === 'edges' ? { arcOnEdges: resolved.innerGroove.radius } : {}),
    playPerFinish: 4,
  }
}

export function ballsOf(
  { input, ballDiameter, ballScatter }: ResolvedBalls,
  x: number,
  gapOf: (x: Mm, diameters: readonly number[]) => Mm,
): Balls {
  const { count, diameters } = input.balls
  return {
    count,
    diameter: ballDiameter,
    scatter: ballScatter,
    ...(diameters === undefined
      ? {}
      : { meanUncertainty: measuredMeanUncertainty(ballScatter, count, diameters.length) }),
    gapDeviation: gapDeviation(count, ballDiameter, x, gapOf),
  }
}

/** Step of the differences, in ball diameters. */
const STEP = 1e-4

/**
 * Effect of unequal balls on the gap of equal ones of the same mean, per scatter: √Σ (gᵢ − ḡ)², the slopes of the exact closure
 * less their mean. All balls within the row have one slope, the two at its ends another.
 */
function gapDeviation(
  count: number,
  diameter: number,
  x: number,
  gapOf: (x: Mm, diameters: readonly number[]) => Mm,
): number {
  const equal = Array.from({ length: count }, () => diameter)
  const step = STEP * diameter
  const slope = (index: number): number =>
    (gapOf(mm(x), equal.with(index, diameter + step)) - gapOf(mm(x), equal.with(index, diameter - step))) / (2 * step)
  const [end, within] = [slope(0), slope(Math.floor(count / 2))]
  return Math.abs(end - within) * Math.sqrt((2 * (count - 2)) / count)
}
