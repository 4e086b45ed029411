import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { requireWhole } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { FEWEST_BALLS } from './ring-of-balls.ts'

/**
 * Half the angle that two touching neighbours subtend at the ring's centre, and how it moves. Both touch the groove
 * bottom, so their centres stand at a = Ro − r, and the law of cosines collapses to  sin²(θ/2) = r₁ r₂ / (a₁ a₂).
 */
function halfAngle(bottomRadius: number, r1: number, r2: number): number {
  const squaredSine = (r1 * r2) / ((bottomRadius - r1) * (bottomRadius - r2))
  return Math.asin(Math.sqrt(Math.min(1, squaredSine)))
}

function requireRing(diameters: readonly number[]): void {
  requireWhole('number of balls', diameters.length, FEWEST_BALLS - 1)
  for (const diameter of diameters) {
    if (!(diameter > 0 && diameter < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`diameters must be above 0 mm and finite, got ${diameter}`)
    }
  }
}

/** Angle from the first centre to the last, every ball touching the next. */
function filledAngle(bottomRadius: number, diameters: readonly number[]): number {
  let angle = 0
  for (let i = 1; i < diameters.length; i++) {
    angle += 2 * halfAngle(bottomRadius, (diameters[i - 1] ?? 0) / 2, (diameters[i] ?? 0) / 2)
  }
  return angle
}

/**
 * Straight-line gap between the last ball and the first when all others are pushed together, for balls of unequal size
 * in one groove, each on its bottom. Below 0 the ring does not close.
 *
 * @param bottomRadius Ro, of the groove's bottom [mm]; more than the largest ball's radius and its neighbour's together
 * @param diameters in their order round the ring, each above 0 [mm], two at least
 */
export function unequalBallGap(bottomRadius: Mm, diameters: readonly number[]): Mm {
  requireRing(diameters)
  const first = (diameters[0] ?? 0) / 2
  const last = (diameters.at(-1) ?? 0) / 2
  const open = 2 * Math.PI - filledAngle(bottomRadius, diameters)
  const [a, b] = [bottomRadius - first, bottomRadius - last]
  // The law of cosines, with the difference of the sides apart so that nothing cancels.
  const half = Math.sin(open / 2)
  const chord = Math.sqrt((a - b) * (a - b) + 4 * a * b * half * half)
  return mm((open < 0 ? -chord : chord) - first - last)
}

/** In the tightest groove the gap bends like a square root: only there does rounding decide whether it is 0. */
const ROUNDING = 1e-12

/**
 * The groove-bottom radius at which unequal balls leave a given gap: the way back of `unequalBallGap`.
 *
 * @param gap [mm], 0 for a ring that just closes
 * @throws RangeError for diameters that are none, or a gap smaller than the tightest groove leaves
 */
export function closingRadius(diameters: readonly number[], gap: Mm = mm(0)): Mm {
  requireRing(diameters)
  // Two neighbours fill half the groove where its radius is the sum of theirs: no groove is tighter.
  const tightest = Math.max(...diameters.map((diameter, i) => (diameter + (diameters.at(i - 1) ?? 0)) / 2))
  const at = (radius: number): number => unequalBallGap(mm(radius), diameters) - gap
  if (Math.abs(at(tightest)) <= ROUNDING * tightest) return mm(tightest)
  let high = tightest * diameters.length
  while (at(high) < 0) high *= 2
  const slope = (radius: number): number => (at(radius * (1 + 1e-7)) - at(radius * (1 - 1e-7))) / (2e-7 * radius)
  return mm(bracketedRoot((radius) => [at(radius), slope(radius)], tightest, high))
}
