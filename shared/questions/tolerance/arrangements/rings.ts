import type { CheckModel } from '#shared/questions/tolerance/check-model.ts'
import type { RingCheck } from '#shared/questions/tolerance/checked.ts'
import { ringPlaceAt, ringShifts } from './ring-aims.ts'
import { ringBreaks } from './ring-breaks.ts'
import { ringExtremes } from './ring-extremes.ts'
import { gapSlopes, playSlopes } from './ring-slopes.ts'
import { ringEvaluation } from './ring-trials.ts'

/** Balls, or rollers, between two rings: the second figure is the play of the inner one. */
export const ringModel = (check: RingCheck): CheckModel => ({
  canBind: true,
  nominal: { ballGap: check.bearing.ballGap, play: check.bearing.radialInternalClearance },
  slopes: { ballGap: gapSlopes(check), play: playSlopes(check) },
  extremes: () => ringExtremes(check),
  breaks: (reach, weather) => ringBreaks(check, reach, weather),
  shifts: (from, to) => ringShifts(check, from, to),
  placeAt: (shift) => ringPlaceAt(check, shift),
  evaluation: (chunk, weather) => ringEvaluation(check, chunk, weather),
})
