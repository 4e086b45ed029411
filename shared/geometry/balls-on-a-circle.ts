import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { itemAt, lastOf } from '#shared/numbers/item-at.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { requireDiameters } from './ring-of-balls.ts'
import { straightGap } from './unequal-balls.ts'

/*
 * A ring of unequal balls in the groove of a flat plate, each on its bottom: whatever its size, a ball stands over the
 * groove's circle of radius R, with its centre r above the bottom. Neighbours that touch are rᵢ + rⱼ apart in space and rᵢ − rⱼ
 * in height, so 2 √(rᵢ rⱼ) as seen from above, a chord of the circle:
 *
 *   sin² φ = rᵢ rⱼ / R²,  φ half the angle between them
 *
 * which is the closed ring of `unequal-balls.ts` with R in place of aᵢ and aⱼ. Balls on the edges of a tighter groove stand at heights
 * of their own, zᵢ = √(rᵢ² − w²) over the face, and neighbours are √((rᵢ + rⱼ)² − (zᵢ − zⱼ)²) apart. Balls do not push one another aside: at the
 * bottom of the groove a push along the circle meets no slope. The formulas assume that only neighbours touch, as there: that is so
 * where no ball is smaller than half another, whatever the circle. Two of radii u² and v² do not meet over one of w² between
 * them as long as (w/v) √(1 − w²v²/R²) + (w/u) √(1 − u²w²/R²) ≥ 1, and that is least where those two angles come to a right one: √(w²/v² + w²/u²).
 */

/** Height of a ball's centre [mm] by its diameter, from any level. */
export type HeightOf = (diameter: number) => number

/** On the bottom of the groove. */
const HALF_OF_IT: HeightOf = (diameter) => diameter / 2

/** Two balls right across the circle from one another are allowed this much for the rounding of their chord. */
const ROUNDING = 8 * Number.EPSILON

/** sin φ of two neighbours with this squared chord; NaN where they do not fit side by side. */
function sineOf(squaredChord: number, pitchRadius: number): number {
  const sine = Math.sqrt(squaredChord) / (2 * pitchRadius)
  return sine > 1 && sine <= 1 + ROUNDING ? 1 : sine
}

/** Half the angle from the first ball to the last, all others pushed together between them: Σ asin(half a chord / R). */
function halfRow(pitchRadius: number, diameters: readonly number[], heightOf: HeightOf): number {
  let half = 0
  for (let ball = 1; ball < diameters.length; ball++) {
    const [one, other] = [itemAt(diameters, ball - 1), itemAt(diameters, ball)]
    half += Math.asin(sineOf(chordSquared(one, other, heightOf), pitchRadius))
  }
  // NaN where two balls do not fit side by side
  if (!(half > 0))
    throw new RangeError(`pitchRadius must be at least ${tightestCircle(diameters)} mm, got ${pitchRadius}`)
  return half
}

/** Squared chord of two neighbours as seen from above: (rᵢ + rⱼ)² less the square of their difference in height. */
function chordSquared(one: number, other: number, heightOf: HeightOf): number {
  const [touching, rise] = [(one + other) / 2, heightOf(one) - heightOf(other)]
  return (touching - rise) * (touching + rise)
}

/** The least circle in which all neighbours find room: where two of them lie right across, R² = rᵢ rⱼ. */
export function tightestCircle(diameters: readonly number[]): Mm {
  requireDiameters(diameters)
  let most = 0
  for (let ball = 1; ball < diameters.length; ball++) {
    most = Math.max(most, itemAt(diameters, ball - 1) * itemAt(diameters, ball))
  }
  return mm(Math.sqrt(most) / 2)
}

/**
 * Straight-line gap, in space, between the last ball and the first when all others are pushed together:
 * g = √(4 R² sin² H + (r₁ − r_Z)²) − r₁ − r_Z. Below 0 the ring does not close. Of equal balls it is `ballGap` at R. Where the
 * balls but one fill more than the circle (H > π) it goes on falling by the arc of the overlap, as `unequalBallGap` does.
 * With R it never falls: dφ/dR = −tan φ / R, so that in H beyond a quarter turn both parts of the chord's slope open it, and
 * below, tan H ≥ Σ tan φ.
 *
 * @param pitchRadius R, of the groove's circle [mm], at least `tightestCircle`
 * @param diameters in their order round the ring [mm], each above 0, three at least
 * @param heightOf on the bottom of the groove by default
 * @throws RangeError outside those ranges
 */
export function ballGapOnCircle(pitchRadius: Mm, diameters: readonly number[], heightOf = HALF_OF_IT): Mm {
  requireDiameters(diameters)
  const ends = [itemAt(diameters, 0), lastOf(diameters)] as const
  const [first, last] = [ends[0] / 2, ends[1] / 2]
  const half = halfRow(pitchRadius, diameters, heightOf)
  const rise = Math.abs(heightOf(ends[0]) - heightOf(ends[1]))
  if (half > Math.PI) return mm(rise - 2 * pitchRadius * (half - Math.PI) - first - last)
  const chord = 2 * pitchRadius * Math.sin(half)
  return mm(Math.sqrt(chord * chord + rise * rise) - first - last)
}

/**
 * How the gap moves with each single ball, the circle and all others staying: by ∂φ/∂rⱼ = ½ tan φ / rⱼ for each of its
 * neighbours, and where it stands at an end by itself. Of equal balls at exact closure −1 for each (per diameter), −Z for all:
 * in a ring, where a larger ball stands further in as well, it is −(1 + sin(π / Z)).
 *
 * For equal balls it is the same on edges, because equal heights move nothing.
 *
 * @returns mm of gap per mm of that ball's diameter, in the order given; ranges and errors as for `ballGapOnCircle`
 */
export function gapPerEachDiameterOnCircle(pitchRadius: Mm, diameters: readonly number[]): readonly number[] {
  requireDiameters(diameters)
  const half = halfRow(pitchRadius, diameters, HALF_OF_IT)
  const chord = 2 * pitchRadius * Math.sin(half)
  const rise = (itemAt(diameters, 0) - lastOf(diameters)) / 2
  const span = Math.sqrt(chord * chord + rise * rise)
  const perHalf = (chord * 2 * pitchRadius * Math.cos(half)) / span
  const tangent = (one: number, other: number | undefined): number => {
    if (other === undefined) return 0
    const squared = (one * other) / (4 * pitchRadius * pitchRadius)
    return Math.sqrt(squared / (1 - squared))
  }
  return diameters.map((diameter, ball) => {
    const turn = tangent(diameter, diameters[ball - 1]) + tangent(diameter, diameters[ball + 1])
    const leans = ball === 0 ? rise / span - 1 : ball === diameters.length - 1 ? -rise / span - 1 : 0
    return ((perHalf * turn) / diameter + leans) / 2
  })
}

/** In the tightest circle the gap moves by a root: its rounding there is the root of a rounding. */
const ROOT_OF_ROUNDING = 4e-8

/**
 * The circle on which unequal balls close, or leave a given gap: the way back of `ballGapOnCircle`, by a bracketed root find.
 *
 * @param gap g [mm]: from what the tightest circle leaves to below what a straight row of these balls would leave
 * @throws RangeError for diameters outside the ranges of `ballGapOnCircle`, or where no circle leaves that gap
 */
export function closingCircle(diameters: readonly number[], gap: Mm = mm(0)): Mm {
  const tightest = tightestCircle(diameters)
  const least = ballGapOnCircle(tightest, diameters)
  const most = straightGap(diameters)
  if (!(gap >= least - ROOT_OF_ROUNDING * tightest && gap < most)) {
    throw new RangeError(`gap must be at least ${least} and below ${most} mm, got ${gap}`)
  }
  if (gap <= least + ROUNDING * tightest) return tightest
  const beyond = (radius: number): number => ballGapOnCircle(mm(radius), diameters) - gap
  let high = 2 * tightest
  while (beyond(high) < 0) high *= 2
  return mm(bracketedRoot(beyond, tightest, high))
}
