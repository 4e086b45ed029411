import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { pastHalfTurns } from './balls-on-a-path.ts'
import { requireDiameters } from './ring-of-balls.ts'

/*
 * A ring of unequal balls, each on the bottom of one groove: ball i's centre stands at a = Ro − r, and neighbours touch.
 * Then aᵢ − aⱼ = rⱼ − rᵢ, and the law of cosines collapses. With φ half the angle that two neighbours subtend:
 *
 *   sin² φ = rᵢ rⱼ / (aᵢ aⱼ)      cos² φ = Ro (Ro − rᵢ − rⱼ) / (aᵢ aⱼ)
 *
 * The φ of all neighbours are added as turned vectors, by products alone: no arcsine, so the same bits everywhere.
 * The order is that round the ring, the gap lying between the last and the first; turned round it is the same ring.
 * The formulas assume that only neighbours touch. That is so where no ball is smaller than 2/3 of another, whatever
 * the groove (in the tightest one two of 1 touch across the middle and a third of 2/3 touches both: Descartes' −1, 2, 2,
 * 3); in wider grooves down to 1/4, below which two balls meet over the one between them.
 */

/** A row of balls pushed together, as it is seen from the ring's centre. */
interface Row {
  /** Radii of the first and the last centre: a = Ro − r. */
  readonly first: number
  readonly last: number
  /** Sine and cosine of half the angle from the first centre to the last, H = Σ φ. */
  readonly sine: number
  readonly cosine: number
  /** By how much H is more than a half turn: then the balls but one already overlap. 0 for a row that can be laid. */
  readonly beyond: number
}

/** Two balls that fill the groove right across are allowed this much, in radii, for the rounding of their sum. */
const ROUNDING = 8 * Number.EPSILON

/** Room left across the groove between two neighbours and its far side: Ro − rᵢ − rⱼ. */
function roomAcross(bottomRadius: number, one: number, other: number): number {
  const room = bottomRadius - one - other
  if (!(room >= -ROUNDING * bottomRadius && room < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`bottomRadius must be at least ${one + other} mm and finite, got ${bottomRadius}`)
  }
  return Math.max(0, room)
}

function rowOf(bottomRadius: number, diameters: readonly number[]): Row {
  let [cosine, sine, halfTurns] = [1, 0, 0]
  let before = radius(diameters, 0)
  for (let ball = 1; ball < diameters.length; ball++) {
    const next = radius(diameters, ball)
    const sides = (bottomRadius - before) * (bottomRadius - next)
    const stepCosine = Math.sqrt((bottomRadius * roomAcross(bottomRadius, before, next)) / sides)
    const stepSine = Math.sqrt((before * next) / sides)
    const turned = sine * stepCosine + cosine * stepSine
    cosine = cosine * stepCosine - sine * stepSine
    // No step is more than a quarter turn, so none is missed.
    if (turned < 0 !== sine < 0) halfTurns++
    sine = turned
    before = next
  }
  const [first, last] = [bottomRadius - radius(diameters, 0), bottomRadius - before]
  return {
    first,
    last,
    sine,
    cosine,
    beyond: halfTurns === 0 ? 0 : (halfTurns - 1) * Math.PI + pastHalfTurns(cosine, sine),
  }
}

const radius = (diameters: readonly number[], ball: number): number => (diameters[ball] ?? Number.NaN) / 2

/** Straight line from the first centre to the last. Of a row that overlaps itself, what is left after its arc. */
function spanOf({ first, last, sine, beyond }: Row): number {
  const apart = first - last
  return beyond > 0
    ? Math.abs(apart) - 2 * Math.sqrt(first * last) * beyond
    : Math.sqrt(apart * apart + 4 * first * last * sine * sine)
}

/**
 * Straight-line gap between the last ball and the first when all others are pushed together:
 * g = √((a₁ − a_Z)² + 4 a₁ a_Z sin² H) − r₁ − r_Z. Below 0 the ring does not close; at −2 min(r₁, r_Z) the others alone
 * fill it (H = π). Beyond that nothing can be laid or measured; so that it still says how far off a groove is, it goes
 * on falling by the arc of the overlap, 2 √(a₁ a_Z) (H − π). Of equal balls it is `ballGap` at Ro − Dw/2.
 *
 * @param bottomRadius Ro, of the groove's bottom [mm], at least `tightestBottomRadius`
 * @param diameters in their order round the ring [mm], each above 0, three at least; no ball below 2/3 of another
 * @returns to within 4 Z Ro × 2^-52; in the tightest groove of all, where it moves by a root, 1e-7 Ro
 * @throws RangeError outside those ranges
 */
export function unequalBallGap(bottomRadius: Mm, diameters: readonly number[]): Mm {
  requireDiameters(diameters)
  return mm(spanOf(rowOf(bottomRadius, diameters)) - radius(diameters, 0) - radius(diameters, diameters.length - 1))
}

/** Least groove in which all neighbours find room: where two of them fill it right across, Ro = rᵢ + rⱼ. */
export function tightestBottomRadius(diameters: readonly number[]): Mm {
  requireDiameters(diameters)
  let most = 0
  for (let ball = 1; ball < diameters.length; ball++) {
    most = Math.max(most, radius(diameters, ball - 1) + radius(diameters, ball))
  }
  return mm(most)
}

/** How the span moves with where the ends stand and with half the angle between them. */
interface SpanSlopes {
  readonly perFirst: number
  readonly perLast: number
  readonly perHalfAngle: number
}

function spanSlopes(row: Row): SpanSlopes {
  const { first, last, sine, cosine, beyond } = row
  const root = Math.sqrt(first * last)
  if (beyond > 0) {
    const side = Math.sign(first - last)
    const [perFirst, perLast] = [side - (last / root) * beyond, -side - (first / root) * beyond]
    return { perFirst, perLast, perHalfAngle: -2 * root }
  }
  const span = spanOf(row)
  // both are 0 over 0 where the first and the last of equal balls coincide
  const sineOfSpan = span > 0 ? sine / span : 1 / (2 * root)
  const apartOfSpan = span > 0 ? (first - last) / span : 0
  return {
    perFirst: apartOfSpan + 2 * last * sine * sineOfSpan,
    perLast: -apartOfSpan + 2 * first * sine * sineOfSpan,
    perHalfAngle: 4 * first * last * cosine * sineOfSpan,
  }
}

/** tan φ of two neighbours; endless where they fill the groove right across. */
const tangent = (bottomRadius: number, one: number, other: number): number =>
  Math.sqrt((one * other) / (bottomRadius * roomAcross(bottomRadius, one, other)))

/**
 * How fast the gap opens with the groove bottom, the balls staying: by dφ/dRo = −½ tan φ (1/aᵢ + 1/aⱼ). Of equal balls at
 * exact closure 2 Z sin(π / Z), about 2π.
 *
 * @returns mm of gap per mm of groove-bottom radius; ranges and errors as for `unequalBallGap`
 */
export function gapPerBottomRadius(bottomRadius: Mm, diameters: readonly number[]): number {
  requireDiameters(diameters)
  const { perFirst, perLast, perHalfAngle } = spanSlopes(rowOf(bottomRadius, diameters))
  let turn = 0
  for (let ball = 1; ball < diameters.length; ball++) {
    const [one, other] = [radius(diameters, ball - 1), radius(diameters, ball)]
    turn -= (tangent(bottomRadius, one, other) * (1 / (bottomRadius - one) + 1 / (bottomRadius - other))) / 2
  }
  return perFirst + perLast + perHalfAngle * turn
}

/** In the tightest groove the gap moves by a root: its rounding there is the root of a rounding. */
const ROOT_OF_ROUNDING = 4e-8

/**
 * The groove-bottom radius at which unequal balls close, or leave a given gap: the way back of `unequalBallGap`, by a
 * bracketed root find. For a gap of 0 it is the same wherever in the ring the gap is.
 *
 * @param gap g [mm]: from what the tightest groove leaves to below what a straight row of these balls would leave
 * @returns Ro [mm], to 1e-12 relative for gaps up to half a ball; beyond that as sure as the gap still tells
 * @throws RangeError for diameters outside the ranges of `unequalBallGap`, or where no groove leaves that gap
 */
export function closingRadius(diameters: readonly number[], gap: Mm = mm(0)): Mm {
  const tightest = tightestBottomRadius(diameters)
  const ends = radius(diameters, 0) + radius(diameters, diameters.length - 1)
  const least = spanOf(rowOf(tightest, diameters)) - ends
  const most = straightGap(diameters)
  if (!(gap >= least - ROOT_OF_ROUNDING * tightest && gap < most)) {
    throw new RangeError(`gap must be at least ${least} and below ${most} mm, got ${gap}`)
  }
  if (gap <= least + ROUNDING * tightest) return tightest
  const beyond = (bottomRadius: number): number => spanOf(rowOf(bottomRadius, diameters)) - ends - gap
  let high = tightest + ends
  while (beyond(high) < 0) high *= 2
  return mm(bracketedRoot(beyond, tightest, high))
}

/** The gap of a straight row of the balls, the limit of an endless groove: centres 2 √(rᵢ rⱼ) apart along it. */
export function straightGap(diameters: readonly number[]): number {
  let along = 0
  for (let ball = 1; ball < diameters.length; ball++) {
    along += 2 * Math.sqrt(radius(diameters, ball - 1) * radius(diameters, ball))
  }
  const [first, last] = [radius(diameters, 0), radius(diameters, diameters.length - 1)]
  return Math.sqrt(along * along + (first - last) * (first - last)) - first - last
}
