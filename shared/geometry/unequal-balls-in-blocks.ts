import { mm } from '#shared/units/length.ts'
import { unequalBallGap } from './unequal-balls.ts'

/*
 * `unequalBallGap` for many rings at once, by + − × / √ alone. With lengths in groove-bottom radii, r a ball's radius, a = 1 − r
 * where its centre stands, and w = 1 − rᵢ − rⱼ, q = rᵢ rⱼ of two neighbours (derived in `unequal-balls.ts`; doubled angles):
 *
 *   aᵢ aⱼ = w + q      aᵢ aⱼ cos θ = w − q      aᵢ aⱼ sin θ = 2 √(w q)
 *
 * The neighbours are multiplied as complex numbers to P, whose size is a₁ M² a_Z with M = a₂ … a_{Z−1}. So
 * cos Θ = Re P / (a₁ a_Z M²), and the span is √(a₁² + a_Z² − 2 Re P / M²). What the cosine does not know is whether the row
 * reaches round more than once: those few, whose P lies in the first quadrant, are asked of `unequalBallGap` itself.
 */

/** Rings of one count of balls, side by side: ball b of ring t at b × rings + t. */
export interface RingBlock {
  readonly ballCount: number
  readonly rings: number
  /** Of each ring [mm]. */
  readonly bottomRadii: Float64Array
  /** Of each ball, in their order round the ring [mm]. */
  readonly diameters: Float64Array
  /** By how much all balls of a ring are larger than `diameters` says [mm]. */
  readonly larger: Float64Array
}

/**
 * The ball gap of each ring of a block, every ball on the bottom of its groove.
 *
 * @param block ranges as for `unequalBallGap`, which are not looked at here; a row of balls must not reach 5/4 times round
 * @param gaps takes the gap of each ring [mm], to within 1e-15 Z Ro² over the span from the first centre to the last
 * @param meanDiameters takes the mean of the balls of each ring [mm], which costs next to nothing here
 */
export function unequalBallGaps(block: RingBlock, gaps: Float64Array, meanDiameters: Float64Array): void {
  for (let ring = 0; ring < block.rings; ring += 2) {
    // The last of an odd number is closed twice.
    closeTwo(block, ring, Math.min(ring + 1, block.rings - 1), gaps, meanDiameters)
  }
}

/**
 * Two rings, step by step beside one another: what one has to wait for, the other has not. Plain variables, no tuples: this is
 * where trials spend their time.
 */
function closeTwo(block: RingBlock, one: number, two: number, gaps: Float64Array, meanDiameters: Float64Array): void {
  const { ballCount, rings, bottomRadii, diameters, larger } = block
  const scaleOne = 0.5 / (bottomRadii[one] ?? 0)
  const scaleTwo = 0.5 / (bottomRadii[two] ?? 0)
  const largerOne = larger[one] ?? 0
  const largerTwo = larger[two] ?? 0
  const firstOne = ((diameters[one] ?? 0) + largerOne) * scaleOne
  const firstTwo = ((diameters[two] ?? 0) + largerTwo) * scaleTwo
  let realOne = 1
  let realTwo = 1
  let imaginaryOne = 0
  let imaginaryTwo = 0
  let sizeOne = 1
  let sizeTwo = 1
  let lastOne = firstOne
  let lastTwo = firstTwo
  let sumOne = firstOne
  let sumTwo = firstTwo
  const ahead = two - one
  for (let ball = one + rings; ball < ballCount * rings; ball += rings) {
    const ownOne = ((diameters[ball] ?? 0) + largerOne) * scaleOne
    const ownTwo = ((diameters[ball + ahead] ?? 0) + largerTwo) * scaleTwo
    const productOne = ownOne * lastOne
    const productTwo = ownTwo * lastTwo
    const roomOne = 1 - ownOne - lastOne
    const roomTwo = 1 - ownTwo - lastTwo
    const cosineOne = roomOne - productOne
    const cosineTwo = roomTwo - productTwo
    const sineOne = 2 * Math.sqrt(roomOne * productOne)
    const sineTwo = 2 * Math.sqrt(roomTwo * productTwo)
    const turnedOne = realOne * cosineOne - imaginaryOne * sineOne
    const turnedTwo = realTwo * cosineTwo - imaginaryTwo * sineTwo
    imaginaryOne = realOne * sineOne + imaginaryOne * cosineOne
    imaginaryTwo = realTwo * sineTwo + imaginaryTwo * cosineTwo
    realOne = turnedOne
    realTwo = turnedTwo
    sizeOne *= 1 - ownOne
    sizeTwo *= 1 - ownTwo
    lastOne = ownOne
    lastTwo = ownTwo
    sumOne += ownOne
    sumTwo += ownTwo
  }
  // No more divisions than it takes: they are slow.
  const perBall = 2 / ballCount
  meanDiameters[one] = sumOne * perBall * (bottomRadii[one] ?? 0)
  meanDiameters[two] = sumTwo * perBall * (bottomRadii[two] ?? 0)
  gaps[one] = closed(block, one, realOne, imaginaryOne, sizeOne, firstOne, lastOne)
  gaps[two] = closed(block, two, realTwo, imaginaryTwo, sizeTwo, firstTwo, lastTwo)
}

/** The span of a row that has been turned right round, less the balls at its ends. */
function closed(
  block: RingBlock,
  ring: number,
  real: number,
  imaginary: number,
  size: number,
  first: number,
  last: number,
): number {
  if (real > 0 && imaginary > 0) return oneByOne(block, ring)
  const lastSquare = (1 - last) * (1 - last)
  // M, the product of all but the ends, is size / (1 − last).
  const square = (1 - first) * (1 - first) + lastSquare - (2 * real * lastSquare) / (size * size)
  return (Math.sqrt(square) - first - last) * (block.bottomRadii[ring] ?? 0)
}

function oneByOne({ ballCount, rings, bottomRadii, diameters, larger }: RingBlock, ring: number): number {
  const own = Array.from(
    { length: ballCount },
    (_, ball) => (diameters[ball * rings + ring] ?? Number.NaN) + (larger[ring] ?? 0),
  )
  return unequalBallGap(mm(bottomRadii[ring] ?? Number.NaN), own)
}
