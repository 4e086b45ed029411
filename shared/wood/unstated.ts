import { equilibriumMoisture } from './equilibrium-moisture.ts'

/* Wood, air and year of which a caller says nothing. All common practice, no source. */

/** The wood. */
export const UNSTATED_WOOD = 'maple-sugar'

/** The air on the day of making. */
export const MADE_IN = { temperature: 20, relativeHumidity: 50 } as const

/** A heated house: the driest and the dampest air of its year [% relative humidity]. */
export const INDOORS = { min: 35, max: 60 } as const

/** Moisture contents of the wood [%]: on the day of making, and the ends of the year. */
export interface MoistureRange {
  readonly today: number
  readonly min: number
  readonly max: number
}

/** The moisture of wood that is made on that day and lives in that house. */
export function unstatedMoisture(): MoistureRange {
  const at = (relativeHumidity: number): number => equilibriumMoisture({ ...MADE_IN, relativeHumidity })
  return { today: at(MADE_IN.relativeHumidity), min: at(INDOORS.min), max: at(INDOORS.max) }
}
