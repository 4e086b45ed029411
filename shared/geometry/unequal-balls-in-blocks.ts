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
}

/** Arrays for what is carried from ball to ball, a number a ring. */
export interface BlockRoom {
  readonly per: Float64Array
  readonly before: Float64Array
  readonly real: Float64Array
  readonly imaginary: Float64Array
  readonly size: Float64Array
}

export const blockRoom = (rings: number): BlockRoom => ({
  per: new Float64Array(rings),
  before: new Float64Array(rings),
  real: new Float64Array(rings),
  imaginary: new Float64Array(rings),
  size: new Float64Array(rings),
})

/**
 * The ball gap of each ring of a block, every ball on the bottom of its groove.
 *
 * @param block ranges as for `unequalBallGap`, which are not looked at here; a row of balls must not reach 5/4 times round
 * @param gaps takes the gap of each ring [mm], to within 1e-15 Z Ro² over the span from the first centre to the last
 */
export function unequalBallGaps(block: RingBlock, room: BlockRoom, gaps: Float64Array): void {
  const { ballCount, rings, bottomRadii, diameters } = block
  const { per, before, real, imaginary, size } = room
  for (let ring = 0; ring < rings; ring++) {
    const scale = 0.5 / (bottomRadii[ring] ?? 0)
    per[ring] = scale
    before[ring] = (diameters[ring] ?? 0) * scale
    real[ring] = 1
    imaginary[ring] = 0
    size[ring] = 1
  }
  for (let ball = 1; ball < ballCount; ball++) {
    const from = ball * rings
    for (let ring = 0; ring < rings; ring++) {
      const own = (diameters[from + ring] ?? 0) * (per[ring] ?? 0)
      const other = before[ring] ?? 0
      const product = own * other
      const room = 1 - own - other
      const cosine = room - product
      const sine = 2 * Math.sqrt(room * product)
      const [x, y] = [real[ring] ?? 0, imaginary[ring] ?? 0]
      real[ring] = x * cosine - y * sine
      imaginary[ring] = x * sine + y * cosine
      size[ring] = (size[ring] ?? 0) * (1 - own)
      before[ring] = own
    }
  }
  for (let ring = 0; ring < rings; ring++) {
    const [x, y, last] = [real[ring] ?? 0, imaginary[ring] ?? 0, before[ring] ?? 0]
    const first = (diameters[ring] ?? 0) * (per[ring] ?? 0)
    const between = (size[ring] ?? 0) / (1 - last)
    const span = Math.sqrt((1 - first) * (1 - first) + (1 - last) * (1 - last) - (2 * x) / (between * between))
    gaps[ring] = x > 0 && y > 0 ? oneByOne(block, ring) : (span - first - last) * (bottomRadii[ring] ?? 0)
  }
}

function oneByOne({ ballCount, rings, bottomRadii, diameters }: RingBlock, ring: number): number {
  const own = Array.from({ length: ballCount }, (_, ball) => diameters[ball * rings + ring] ?? Number.NaN)
  return unequalBallGap(mm(bottomRadii[ring] ?? Number.NaN), own)
}
