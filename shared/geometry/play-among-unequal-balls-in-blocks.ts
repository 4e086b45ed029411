import { requireWhole } from '#shared/precondition.ts'
import { roundRoom, runOutOf, seeker } from './play-among-unequal-balls.ts'
import { FEWEST_BALLS } from './ring-of-balls.ts'
import { ballPlaces, type GapPlace, layOnCircle } from './unequal-ball-places.ts'

/** Rings of one count of balls, side by side: ball b of ring t at b × rings + t, in their order round the ring [mm]. */
interface PlayBlock {
  readonly rings: number
  readonly diameters: Float64Array
  /** How far each ball's centre stands from the middle of the outer ring: Ro − r on the bottom of its groove. */
  readonly centres: Float64Array
  /** How near each ball's centre comes to the middle of the inner ring: ri + r on the bottom of its groove. */
  readonly standOffs: Float64Array
  /**
   * Two lobes of the grooves, to first order: in the direction φ from the first ball there is amplitude × (cosine cos 2φ
   * + sine sin 2φ) more room between the two bottoms than their mean radii leave. Lobes of both rings are added by the
   * caller.
   */
  readonly lobes?: {
    readonly amplitude: Float64Array
    readonly cosine: Float64Array
    readonly sine: Float64Array
  }
}

/** Writes the play 2 t* of each ring and, if a place for it is passed, its run-out (`runOutOf`) [mm]. */
type PlayOfBlock = (block: PlayBlock, clearances: Float64Array, runOuts?: Float64Array) => void

/**
 * The play of an inner ring among its balls, for many rings, whatever their balls sit on. It reuses its own arrays:
 * nothing is allocated for a ring. About 0.1 µs a ball, by + − × / √ alone where the gap is whole.
 *
 * Ranges are those of `layOnCircle` and are not checked. A ring that does not close overlaps at its gap; it has a
 * clearance all the same, of which the caller makes nothing. A ring that nothing holds has Infinity.
 */
export function playInBlocks(ballCount: number, gap: GapPlace): PlayOfBlock {
  requireWhole('ballCount', ballCount, FEWEST_BALLS)
  const places = ballPlaces(ballCount)
  const away = new Float64Array(ballCount)
  const standing = { ...places, radius: new Float64Array(ballCount) }
  const seek = seeker(standing, roundRoom(standing, 0))
  return ({ rings, diameters, centres, standOffs, lobes }, clearances, runOuts) => {
    for (let ring = 0; ring < rings; ring++) {
      for (let ball = 0; ball < ballCount; ball++) {
        const at = ball * rings + ring
        places.radius[ball] = (diameters[at] ?? Number.NaN) / 2
        away[ball] = centres[at] ?? Number.NaN
        standing.radius[ball] = standOffs[at] ?? Number.NaN
      }
      layOnCircle(Number.NaN, gap, places, away)
      if (lobes !== undefined) {
        const amplitude = lobes.amplitude[ring] ?? Number.NaN
        const along = amplitude * (lobes.cosine[ring] ?? Number.NaN)
        const aslant = amplitude * (lobes.sine[ring] ?? Number.NaN)
        for (let ball = 0; ball < ballCount; ball++) {
          const x = places.x[ball] ?? Number.NaN
          const y = places.y[ball] ?? Number.NaN
          const own = away[ball] ?? Number.NaN
          const more = 1 + (along * (x * x - y * y) + 2 * aslant * x * y) / (own * own * own)
          places.x[ball] = x * more
          places.y[ball] = y * more
        }
      }
      const found = seek()
      clearances[ring] = found === undefined ? Number.POSITIVE_INFINITY : 2 * found.level
      if (runOuts !== undefined) runOuts[ring] = found === undefined ? Number.POSITIVE_INFINITY : runOutOf(found)
    }
  }
}
