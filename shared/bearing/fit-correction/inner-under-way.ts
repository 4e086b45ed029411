import type { CagedBearing } from '#shared/bearing/arrangements.ts'
import type { FullRings } from '#shared/bearing/full-rings.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { SHARP_TOOL } from './defaults.ts'
import { cutDeviation } from './plan.ts'

/** An inner ring that is being cut to its play, inside balls seated in a finished outer ring. */
export interface InnerUnderWay {
  readonly pair: RingPair
  /** The circle inside those balls, as far as it is known: mean and standard deviation of its radius [mm]. */
  readonly insideBalls: { readonly mean: number; readonly standardDeviation: number }
}

/** A finished outer ring is taken to lie in its gap band: half of the band on either side is two deviations. */
const DEVIATIONS_IN_BAND = 4

/** Inside a full ring: its gap was read, and with it the circle. */
export const insideFullRing = (bearing: FullRings): InnerUnderWay => {
  const { gauge } = bearing
  const standardDeviation = (gauge.noGoDiameter - gauge.goDiameter) / 2 / DEVIATIONS_IN_BAND
  return { pair: bearing, insideBalls: { mean: gauge.nominalDiameter / 2, standardDeviation } }
}

/** Inside balls that a cage will hold: no gap was read, and the groove is as deep as a sharp tool leaves it. */
export const insideCagedBalls = (bearing: CagedBearing): InnerUnderWay => ({
  pair: bearing,
  insideBalls: {
    mean: bearing.plugDiameter / 2,
    standardDeviation: cutDeviation(SHARP_TOOL, bearing.outerRing.grooveDepth),
  },
})
