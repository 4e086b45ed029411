import type { Arrangement } from '#shared/bearing/arrangement.ts'
import { footstepDimensions } from './dimensions.ts'
import { footstepFindings } from './findings.ts'
import { type FootstepBearing, footstepOf } from './geometry.ts'
import { FOOTSTEP_FIELDS, type FootstepInput } from './input.ts'
import { FOOTSTEP_TRAITS } from './resolve.ts'

export const FOOTSTEP: Arrangement<FootstepInput, FootstepBearing, typeof FOOTSTEP_FIELDS.fields> = {
  traits: FOOTSTEP_TRAITS,
  sources: ['derived', 'trade'],
  fields: FOOTSTEP_FIELDS,
  bearingOf: footstepOf,
  dimensionsOf: footstepDimensions,
  findingsOf: footstepFindings,
}
