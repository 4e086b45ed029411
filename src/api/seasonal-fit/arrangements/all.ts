import type { TProperties } from 'typebox'
import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import { CAGED_STATE } from './caged.ts'
import { RADIAL_STATE } from './radial.ts'
import { ROLLER_STATE } from './roller.ts'
import { THRUST_STATE } from './thrust.ts'

/** The fields of a state that each arrangement has for itself. A new one: its file, and its line here. */
export const OWN_STATES: Readonly<Record<ArrangementName, TProperties>> = {
  radial: RADIAL_STATE,
  roller: ROLLER_STATE,
  thrust: THRUST_STATE,
  caged: CAGED_STATE,
}
