import { requireWhole, requireWithin } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { FEWEST_BALLS, requireDiameters } from './ring-of-balls.ts'

/**
 * An order in which no side of the ring stands out: the largest ball, the second opposite, the next two a quarter turn on,
 * and so on, each in the middle of the widest stretch that is left (van der Corput's sequence). By thirds it is the same
 * for what rests on three: the three largest a third of a turn from one another.
 *
 * @param parts into which a turn is divided again and again: the base of the sequence
 * @returns for each place round the ring the rank of its ball, 0 for the largest
 */
export function spreadOrder(ballCount: number, parts: 2 | 3 = 2): readonly number[] {
  requireWhole('ballCount', ballCount, FEWEST_BALLS)
  const ranks = Array.from({ length: ballCount }, (_, rank) => ({ rank, at: mirrored(rank, parts) }))
  return ranks.sort((one, other) => one.at - other.at).map(({ rank }) => rank)
}

/**
 * An order with the large balls on one side: the largest in the middle of it, the next two either side, and so on to
 * the smallest opposite. Sizes that rise and fall once in a turn only shift the inner ring, so it leaves nearly all of
 * the play, and costs the most run-out.
 *
 * @returns for each place round the ring the rank of its ball, 0 for the largest
 */
export function oneSidedOrder(ballCount: number): readonly number[] {
  requireWhole('ballCount', ballCount, FEWEST_BALLS)
  const order = Array.from({ length: ballCount }, () => 0)
  for (let rank = 1; rank < ballCount; rank++) {
    const beside = Math.ceil(rank / 2)
    order[rank % 2 === 1 ? beside : ballCount - beside] = rank
  }
  return order
}

/** The digits of a whole number, mirrored at the point. In base 2: 1 → 1/2, 2 → 1/4, 3 → 3/4, … */
function mirrored(rank: number, base: number): number {
  let [at, digit] = [0, 1 / base]
  for (let left = rank; left > 0; left = Math.floor(left / base), digit /= base) at += (left % base) * digit
  return at
}

/** The range of the gap of the same balls over all their orders. */
export interface GapOverOrders {
  /** No order leaves less. */
  readonly least: Mm
  /** No order leaves more. */
  readonly most: Mm
  /** Whether in every order all others reach round half the ring at least, so that larger balls mean a smaller gap. */
  readonly coversHalf: boolean
}

/** For what the sums below lose in their last digits, per ball and by the radius. */
const ROUNDING = 16 * Number.EPSILON

/**
 * Between which bounds the ball gap lies whatever the order of the balls round the ring (`unequalBallGap` gives that of
 * one order). Neighbours subtend 2φ with sin φ = √(xᵢ xⱼ), x = r / (Ro − r); so φ = F((eᵢ + eⱼ)/2) of e = ln x, and
 * F(t) = asin eᵗ is convex, F' = tan φ. Hence, p and q being the two at the gap and ē the mean of all e,
 *
 *   H = Σ φ ≤ Σ F(eᵢ) − (F(e_p) + F(e_q)) / 2                   each pair lies below its chord
 *   H ≥ (Z − 1) F(ē) + F'(ē) (ē − (e_p + e_q) / 2)              each pair lies above the tangent at ē
 *
 * and the gap follows from H and the two at it: all pairs p, q are looked at. The bounds part by the square of the spread:
 * nothing for equal balls, some thousandths of a millimetre for twelve of 16 mm ± 0.1 mm.
 *
 * @param bottomRadius Ro [mm], at least the largest diameter: two of each fit side by side
 * @param diameters each above 0 [mm], three at least, in any order
 * @throws RangeError outside those ranges
 */
export function gapOverOrders(bottomRadius: Mm, diameters: readonly number[]): GapOverOrders {
  requireDiameters(diameters)
  requireWithin('bottomRadius', bottomRadius, Math.max(...diameters), Number.MAX_VALUE)
  return overOrders(bottomRadius, diameters, (radius) => {
    const centre = bottomRadius - radius
    return { out: centre, aside: centre }
  })
}

/**
 * The same on a plate, of `ballGapOnCircle`: every centre stands at R, so that x = r / R, and those of the two at the gap
 * differ in height by what they differ in distance from the axis in a ring.
 *
 * @param pitchRadius R [mm], at least the largest radius
 */
export function gapOverOrdersOnCircle(pitchRadius: Mm, diameters: readonly number[]): GapOverOrders {
  requireDiameters(diameters)
  requireWithin('pitchRadius', pitchRadius, Math.max(...diameters) / 2, Number.MAX_VALUE)
  return overOrders(pitchRadius, diameters, (radius) => ({ out: pitchRadius, aside: radius }))
}

/** The place of a centre: from the axis, and along the line on which centres shift with the ball's size. */
interface Centre {
  readonly out: number
  readonly aside: number
}

function overOrders(
  cutRadius: number,
  diameters: readonly number[],
  centreOf: (radius: number) => Centre,
): GapOverOrders {
  const balls = diameters.map((diameter) => seated(centreOf(diameter / 2), diameter / 2))
  const chords = balls.reduce((sum, { upper }) => sum + upper, 0)
  const mean = balls.reduce((sum, { logarithm }) => sum + logarithm, 0) / balls.length
  const sine = Math.min(1, Math.exp(mean))
  const tangent = sine / Math.sqrt((1 - sine) * (1 + sine))
  const touching = (balls.length - 1) * Math.asin(sine) + tangent * mean
  let [least, most, smallestHalf] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  balls.forEach((first, index) => {
    for (let other = index + 1; other < balls.length; other++) {
      const last = balls[other] ?? first
      const low = touching - (tangent * (first.logarithm + last.logarithm)) / 2
      const high = Math.max(low, chords - (first.upper + last.upper) / 2)
      // The gap grows up to a quarter turn and falls from there.
      const widest = Math.min(Math.max(low, Math.PI / 2), high)
      most = Math.max(most, gapOf(widest, first, last))
      least = Math.min(least, gapOf(high, first, last), low < Math.PI / 2 ? gapOf(low, first, last) : least)
      smallestHalf = Math.min(smallestHalf, low)
    }
  })
  const rounding = ROUNDING * balls.length * cutRadius
  return { least: mm(least - rounding), most: mm(most + rounding), coversHalf: smallestHalf >= Math.PI / 2 }
}

/** A ball where it lies, and ln x and asin x of x = its radius over how far out its centre stands. */
interface Seated extends Centre {
  readonly radius: number
  readonly logarithm: number
  readonly upper: number
}

function seated(centre: Centre, radius: number): Seated {
  const part = Math.min(1, radius / centre.out)
  return { ...centre, radius, logarithm: Math.log(part), upper: Math.asin(part) }
}

/** The gap between two balls whose centres are 2 H apart round the ring; as in `unequalBallGap`, beyond a half turn too. */
function gapOf(half: number, first: Seated, last: Seated): number {
  const [apart, product] = [first.aside - last.aside, first.out * last.out]
  const ends = first.radius + last.radius
  if (half > Math.PI) return Math.abs(apart) - 2 * Math.sqrt(product) * (half - Math.PI) - ends
  const sine = Math.sin(half)
  return Math.sqrt(apart * apart + 4 * product * sine * sine) - ends
}
