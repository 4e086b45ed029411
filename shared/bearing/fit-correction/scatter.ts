import type { GrooveUnderWay } from './groove-under-way.ts'

/** What uneven balls do to a gap that is reckoned from their mean. */
export interface Scatter {
  /** Standard deviation of single balls round their mean [mm]. */
  readonly single: number
  /** Mean of the gap's change against equal balls of the same mean [mm]. */
  readonly bias: number
  /** Standard deviation of that change [mm]. */
  readonly deviation: number
}

/** Balls that scatter by less, over their diameter, are even: differences would be of rounding alone. */
const EVEN_WITHIN = 1e-6

/** Step of the central differences, in deviations of a single ball: small against what bends, large against rounding. */
const STEP = 0.5

/**
 * How the gap of the balls as they are differs from that of equal balls of the same mean, at the design's groove.
 *
 * Measured balls that are exactly those of the ring: the difference itself, for the order given. Otherwise by the law
 * of propagation to second order (JCGM 100, 5.1.2), each ball moved against the others so that the mean stays: the
 * slopes gᵢ less their mean make the deviation, σ √Σ (gᵢ − ḡ)², and the curvatures gᵢᵢ the bias, σ²/2 Σ gᵢᵢ. Both are
 * differences of the exact closure of unequal balls. Very little is left: the gap depends almost on the mean alone.
 */
export function scatterOf({
  settled: { input, ballDiameter, ballScatter: single },
  x,
  unequalGap,
}: GrooveUnderWay): Scatter {
  const { count, diameters } = input.balls
  const gapOf = (balls: readonly number[]): number => unequalGap(x, balls)
  const equal = Array.from({ length: count }, () => ballDiameter as number)
  if (diameters !== undefined && diameters.length === count) {
    return { single, bias: gapOf(diameters) - gapOf(equal), deviation: 0 }
  }
  return single > EVEN_WITHIN * ballDiameter
    ? { single, ...propagated(gapOf, equal, single) }
    : { single, bias: 0, deviation: 0 }
}

function propagated(
  gapOf: (balls: readonly number[]) => number,
  equal: readonly number[],
  single: number,
): Pick<Scatter, 'bias' | 'deviation'> {
  const step = STEP * single
  const there = gapOf(equal)
  const moved = (index: number, by: number): number => {
    const share = by / equal.length
    return gapOf(equal.map((diameter, each) => diameter - share + (each === index ? by : 0)))
  }
  let [bias, square] = [0, 0]
  for (let index = 0; index < equal.length; index++) {
    const [up, down] = [moved(index, step), moved(index, -step)]
    const slope = (up - down) / (2 * step)
    square += slope * slope
    bias += (up - 2 * there + down) / (2 * step * step)
  }
  return { bias: bias * single * single, deviation: single * Math.sqrt(square) }
}
