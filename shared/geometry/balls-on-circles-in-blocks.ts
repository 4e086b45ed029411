import { mm } from '#shared/units/length.ts'
import { ballGapOnCircle, type HeightOf } from './balls-on-a-circle.ts'

/*
 * `ballGapOnCircle` for many rings at once, by + − × / √ alone. Of neighbours with chord c, q = c² / 2R²: cos θ = 1 − q and
 * sin θ = √(q (2 − q)); the steps are multiplied as complex numbers. A row that reaches round more than once has the cosine of
 * a shorter one: those few, which end in the first quadrant, are computed by `ballGapOnCircle` itself.
 */

/** Rings of one count of balls, side by side: ball b of ring t at b × rings + t. */
export interface CircleBlock {
  readonly ballCount: number
  readonly rings: number
  /** One for each ring [mm]. */
  readonly radii: Float64Array
  readonly diameters: Float64Array
  /** How high a ball of a ring stands by its diameter. */
  readonly heightOf: (ring: number) => HeightOf
}

/**
 * @param block ranges as for `ballGapOnCircle`, which are not looked at here; a row of balls must not reach 5/4 times round
 * @param gaps takes the gap of each ring [mm]
 */
export function gapsOnCircles(block: CircleBlock, gaps: Float64Array): void {
  const { ballCount, rings, radii, diameters, heightOf } = block
  for (let ring = 0; ring < rings; ring++) {
    const radius = radii[ring] ?? Number.NaN
    const height = heightOf(ring)
    const per = 1 / (2 * radius * radius)
    const first = diameters[ring] ?? Number.NaN
    const firstHeight = height(first)
    let [x, y, last, lastHeight] = [1, 0, first, firstHeight]
    for (let ball = ring + rings; ball < ballCount * rings; ball += rings) {
      const own = diameters[ball] ?? Number.NaN
      const ownHeight = height(own)
      const touching = (last + own) / 2
      const rise = ownHeight - lastHeight
      const q = (touching - rise) * (touching + rise) * per
      const [cosine, sine] = [1 - q, Math.sqrt(q * (2 - q))]
      ;[x, y, last, lastHeight] = [x * cosine - y * sine, x * sine + y * cosine, own, ownHeight]
    }
    const rise = firstHeight - lastHeight
    const span = Math.sqrt(2 * radius * radius * (1 - x) + rise * rise)
    gaps[ring] = x > 0 && y > 0 ? oneByOne(block, ring) : span - (first + last) / 2
  }
}

function oneByOne({ ballCount, rings, radii, diameters, heightOf }: CircleBlock, ring: number): number {
  const own = Array.from({ length: ballCount }, (_, ball) => diameters[ball * rings + ring] ?? Number.NaN)
  return ballGapOnCircle(mm(radii[ring] ?? Number.NaN), own, heightOf(ring))
}
