import { mm } from '#shared/units/length.ts'
import type { Arena } from '#shared/wasm/arena.ts'
import { closingKernel } from './closing-kernel.ts'
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

/** Rings of one count of balls, side by side, all in one arena: ball b of ring t at b × rings + t. */
interface RingBlock {
  readonly ballCount: number
  /** `RINGS_AT_ONCE` or more. */
  readonly rings: number
  /** Of each ring [mm]. */
  readonly bottomRadii: Float64Array
  /** Of each ball, in their order round the ring [mm]. */
  readonly diameters: Float64Array
  /** By how much all balls of a ring are larger than `diameters` says [mm]. */
  readonly larger: Float64Array
}

/** Closes blocks whose arrays lie in an arena. */
type CloseBlock = (block: RingBlock, gaps: Float64Array, meanDiameters: Float64Array) => void

/**
 * The ball gap of each ring of a block, every ball on the bottom of its groove. Of what it makes,
 *
 * - `block` has the ranges of `unequalBallGap`, which are not looked at here; a row of balls must not reach 5/4 times round
 * - `gaps` takes the gap of each ring [mm], to within 1e-15 Z Ro² over the span from the first centre to the last
 * - `meanDiameters` takes the mean of the balls of each ring [mm], which costs next to nothing here
 */
export function unequalBallGaps(arena: Arena): CloseBlock {
  const run = arena.start(closingKernel)
  return (block, gaps, meanDiameters) => {
    const { ballCount, rings, bottomRadii, diameters, larger } = block
    const places = [bottomRadii, diameters, larger, gaps, meanDiameters].map(({ byteOffset }) => byteOffset)
    const untold = run(ballCount, rings * Float64Array.BYTES_PER_ELEMENT, ...places)
    // The sums are those of half the diameters in bottom radii.
    const perBall = 2 / ballCount
    for (let ring = 0; ring < rings; ring++) {
      meanDiameters[ring] = (meanDiameters[ring] ?? 0) * perBall * (bottomRadii[ring] ?? 0)
    }
    if (untold === 0) return
    for (let ring = 0; ring < rings; ring++) {
      if (Number.isNaN(gaps[ring])) gaps[ring] = oneByOne(block, ring)
    }
  }
}

function oneByOne({ ballCount, rings, bottomRadii, diameters, larger }: RingBlock, ring: number): number {
  const own = Array.from(
    { length: ballCount },
    (_, ball) => (diameters[ball * rings + ring] ?? Number.NaN) + (larger[ring] ?? 0),
  )
  return unequalBallGap(mm(bottomRadii[ring] ?? Number.NaN), own)
}
