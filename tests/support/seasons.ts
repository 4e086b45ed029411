import type { RingWood, SeasonalFitInput } from '#shared/questions/season/input.ts'
import { mm } from '#shared/units/length.ts'

export const MAPLE: RingWood = { construction: 'flat-sawn', species: 'maple-sugar' }

/** An invented house: from heating in winter to a damp summer. */
export const HOUSE: SeasonalFitInput['climate'] = {
  kind: 'air',
  temperature: { min: 18, max: 24 },
  relativeHumidity: { min: 30, max: 65 },
}

/** Fourteen marbles between two rings of flat-sawn sugar maple, made on a day of 50 %. */
export const MARBLES: SeasonalFitInput = {
  design: { units: 'mm', balls: { count: 14, diameter: mm(14), material: 'glass' }, bore: mm(10), ballGap: mm(0.7) },
  woods: { outerRing: MAPLE, innerRing: MAPLE },
  climate: HOUSE,
  today: { kind: 'air', air: { temperature: 20, relativeHumidity: 50 } },
}
