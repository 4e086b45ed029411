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
 * reaches round more than once: those few, whose P lies in the first quadrant, are computed by `unequalBallGap` itself.
 */

/** Rings of one count of balls, side by side: ball b of ring t at b × rings + t. */
interface RingBlock {
  readonly ballCount: number
  readonly rings: number
  /** One for each ring [mm]. */
  readonly bottomRadii: Float64Array
  /** One for each ball, in their order round the ring [mm]. */
  readonly diameters: Float64Array
  /** By how much all balls of a ring are larger than `diameters` says [mm]. */
  readonly larger: Float64Array
}

/**
 * The ball gap of each ring of a block, every ball on the bottom of its groove.
 *
 * @param block has the ranges of `unequalBallGap`, which are not checked here; a row of balls must not reach 5/4 times round
 * @param gaps takes the gap of each ring [mm], to within 1e-15 Z Ro² over the span from the first centre to the last
 */
export function unequalBallGaps(block: RingBlock, gaps: Float64Array): void {
  const { ballCount, rings, bottomRadii, diameters, larger } = block
  const end = ballCount * rings
  for (let ring = 0; ring < rings; ring++) {
    const bottomRadius = bottomRadii[ring] ?? Number.NaN
    const more = larger[ring] ?? Number.NaN
    const scale = 0.5 / bottomRadius
    const first = ((diameters[ring] ?? Number.NaN) + more) * scale
    let last = first
    let real = 1
    let imaginary = 0
    let size = 1
    for (let place = ring + rings; place < end; place += rings) {
      const own = ((diameters[place] ?? Number.NaN) + more) * scale
      const product = own * last
      const room = 1 - own - last
      size *= 1 - own
      const cosine = room - product
      const sine = 2 * Math.sqrt(room * product)
      const turned = real * cosine - imaginary * sine
      imaginary = real * sine + imaginary * cosine
      real = turned
      last = own
    }
    const lastSquare = (1 - last) * (1 - last)
    const square = (1 - first) * (1 - first) + lastSquare - (2 * real * lastSquare) / (size * size)
    // In the first quadrant the cosine of the whole angle does not tell how far the row reaches.
    gaps[ring] = real > 0 && imaginary > 0 ? oneByOne(block, ring) : (Math.sqrt(square) - first - last) * bottomRadius
  }
}

function oneByOne({ ballCount, rings, bottomRadii, diameters, larger }: RingBlock, ring: number): number {
  const own = Array.from(
    { length: ballCount },
    (_, ball) => (diameters[ball * rings + ring] ?? Number.NaN) + (larger[ring] ?? Number.NaN),
  )
  return unequalBallGap(mm(bottomRadii[ring] ?? Number.NaN), own)
}
