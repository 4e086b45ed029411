import { itemAt } from '#shared/numbers/item-at.ts'
import { normalCdf, normalDensity } from '#shared/statistics/normal.ts'
import { forEachOf, sampleOf } from '#shared/statistics/sample.ts'
import type { Pieces } from '#shared/statistics/sum-of-parts.ts'

/** How near a sample brings the distribution of a sum of which it is a part. */
export interface SampleError {
  /** As a length, by the place in the distribution, in standard deviations from its mean. */
  readonly at: (place: number) => number
  /** So many trials of the whole sum come as near to its shares. */
  readonly asGoodAs: number
}

/** Places at which the error is worked out, so many standard deviations either way. */
const PLACES = 8
const PLACED_TO = 3
/** A share below this, or as near to 1, need not be as near. */
const LEAST_SHARE = 1e-3

/** Of pieces without anything of their own. */
const NOTHING = sampleOf(new Float64Array(2))

/**
 * A share of the sum is the mean of P(rest ≤ place − value) over the values of the sample; its standard error, over the density
 * there, is one of the place. The rest, of many causes, is taken as normal.
 *
 * @param pieces with what each has of its own: the sample, of two values a piece or more
 * @param standardDeviation of the whole sum; `rest` that of all but the pieces, above 0
 */
export function sampleError({ pieces }: Pieces, standardDeviation: number, rest: number): SampleError {
  const errors = new Float64Array(PLACES + 1)
  let asGoodAs = Number.POSITIVE_INFINITY
  for (let place = 0; place <= PLACES; place++) {
    const at = PLACED_TO * standardDeviation * ((2 * place) / PLACES - 1)
    let [share, density, variance] = [0, 0, 0]
    for (const { middle, own = NOTHING } of pieces) {
      let [mean, square] = [0, 0]
      forEachOf(own, (value, part) => {
        const z = (at - middle[1] - value) / rest
        const chance = normalCdf(z)
        mean += part * chance
        square += part * chance * chance
        density += (part * normalDensity(z)) / rest / pieces.length
      })
      share += mean / pieces.length
      variance += (square - mean * mean) / (own.size - 1) / (pieces.length * pieces.length)
    }
    errors[place] = density > 0 ? Math.sqrt(Math.max(0, variance)) / density : 0
    if (share > LEAST_SHARE && share < 1 - LEAST_SHARE && variance > 0)
      asGoodAs = Math.min(asGoodAs, (share * (1 - share)) / variance)
  }
  return {
    asGoodAs,
    at: (place) => {
      const along = Math.min(PLACES, Math.max(0, ((place / PLACED_TO + 1) / 2) * PLACES))
      const low = Math.min(PLACES - 1, Math.floor(along))
      return itemAt(errors, low) + (along - low) * (itemAt(errors, low + 1) - itemAt(errors, low))
    },
  }
}
