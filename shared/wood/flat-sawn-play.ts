import type { SourceId } from '#shared/data/sources.ts'
import { ALONG_THE_GRAIN, MOVEMENT } from '#shared/data/wood-movement.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { equilibriumMoisture, relativeHumidityFor } from './equilibrium-moisture.ts'
import { MADE_IN, UNSTATED_WOOD, unstatedMoisture } from './unstated.ts'

/** Two rings, one in the other. */
export interface RingsWithPlay {
  /** Across the bottoms of the outer ring's raceway, and of the inner ring's. */
  readonly outerDiameter: Mm
  readonly innerDiameter: Mm
  /** How far one ring moves from side to side. */
  readonly play: Mm
}

/** Sources of these figures. */
export const FLAT_SAWN_SOURCES = [
  'fpl-4-5',
  'fpl-13-3',
  'fpl-13-5',
  'fpl-4-longitudinal',
] as const satisfies readonly SourceId[]

/**
 * The relative humidities between which two rings of flat-sawn sugar maple, made at 50 %, keep some play at whatever angle
 * they stand to each other. A round ring of a board goes oval: across the grain it changes by T, along it by L, per % of
 * moisture. The play is least where the short axis of the outer ring meets the long one of the inner ring:
 *
 *   drying by m %:  play − m (T Do − L Di)        taking up m %:  play − m (T Di − L Do)
 *
 * Balls that do not move with moisture; the equations of the Wood Handbook for movement (13-3) and moisture (4-5).
 *
 * @returns ends in %: 0 and 100 where nothing stops it
 */
export function flatSawnBand({ outerDiameter, innerDiameter, play }: RingsWithPlay): { min: number; max: number } {
  const across = MOVEMENT[UNSTATED_WOOD]?.tangential ?? Number.NaN
  const moisture = equilibriumMoisture(MADE_IN)
  const lossDrying = across * outerDiameter - ALONG_THE_GRAIN.perPercent * innerDiameter
  const lossWetting = across * innerDiameter - ALONG_THE_GRAIN.perPercent * outerDiameter
  const humidityAt = (at: number): number | undefined => relativeHumidityFor(Math.max(0, at), MADE_IN.temperature)
  return {
    min: humidityAt(moisture - play / lossDrying) ?? 100,
    max: lossWetting > 0 ? (humidityAt(moisture + play / lossWetting) ?? 100) : 100,
  }
}

/** How much more a circle of flat-sawn sugar maple changes across the grain than along it from a dry house to a damp one. */
export function flatSawnOval(diameter: Mm): Mm {
  const { min, max } = unstatedMoisture()
  const across = MOVEMENT[UNSTATED_WOOD]?.tangential ?? Number.NaN
  return mm((across - ALONG_THE_GRAIN.perPercent) * (max - min) * diameter)
}
