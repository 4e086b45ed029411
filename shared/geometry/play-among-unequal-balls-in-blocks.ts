import { requireWhole } from '#shared/precondition.ts'
import { roundRoom, runOutOf, seeker } from './play-among-unequal-balls.ts'
import { FEWEST_BALLS } from './ring-of-balls.ts'
import { ballPlaces, type GapPlace, layOnCircle } from './unequal-ball-places.ts'

/** Rings of one count of balls, side by side: ball b of ring t at b × rings + t, in their order round the ring. */
interface PlayBlock {
  readonly rings: number
  /** Ro and ri of each ring [mm]. */
  readonly outerBottomRadii: Float64Array
  readonly innerBottomRadii: Float64Array
  /** Of each ball [mm]. */
  readonly diameters: Float64Array
  /** By how much all balls of a ring are larger than `diameters` says [mm]. */
  readonly larger: Float64Array
  /**
   * Two lobes of the grooves, to first order: in the direction φ from the first ball there is along cos 2φ + aslant sin
   * 2φ more room between the two bottoms than their mean radii leave. Lobes of both rings are added by the caller.
   */
  readonly lobes?: { readonly along: Float64Array; readonly aslant: Float64Array }
}

/** Takes, for each ring, 2 t* and, where wanted, the run-out that `PlayAmongBalls` has [mm]. */
type PlayOfBlock = (block: PlayBlock, clearances: Float64Array, runOuts?: Float64Array) => void

/**
 * `playAmongBalls` on `placesOnCircle` for many rings, with room of its own that is used again: nothing is allocated
 * for a ring. Some 0.1 µs a ball, by + − × / √ alone where the gap is whole, so with the same bits on every engine.
 *
 * Ranges are those of `placesOnCircle` and are not looked at. A ring that does not close overlaps at its gap; it has a
 * clearance all the same, of which the caller makes nothing. A ring that nothing holds has Infinity.
 */
export function playInBlocks(ballCount: number, gap: GapPlace): PlayOfBlock {
  requireWhole('ballCount', ballCount, FEWEST_BALLS)
  const places = ballPlaces(ballCount)
  let innerRadius = 0
  const seek = seeker(
    places,
    roundRoom(places, () => innerRadius),
  )
  return ({ rings, outerBottomRadii, innerBottomRadii, diameters, larger, lobes }, clearances, runOuts) => {
    for (let ring = 0; ring < rings; ring++) {
      const outer = outerBottomRadii[ring] ?? Number.NaN
      const growth = larger[ring] ?? Number.NaN
      innerRadius = innerBottomRadii[ring] ?? Number.NaN
      for (let ball = 0; ball < ballCount; ball++) {
        places.radius[ball] = ((diameters[ball * rings + ring] ?? Number.NaN) + growth) / 2
      }
      layOnCircle(outer, gap, places)
      if (lobes !== undefined) {
        const along = lobes.along[ring] ?? Number.NaN
        const aslant = lobes.aslant[ring] ?? Number.NaN
        for (let ball = 0; ball < ballCount; ball++) {
          const x = places.x[ball] ?? Number.NaN
          const y = places.y[ball] ?? Number.NaN
          const away = outer - (places.radius[ball] ?? Number.NaN)
          const more = 1 + (along * (x * x - y * y) + 2 * aslant * x * y) / (away * away * away)
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
