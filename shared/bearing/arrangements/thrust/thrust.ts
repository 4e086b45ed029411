import type { Arrangement } from '#shared/bearing/arrangement.ts'
import type { KeysOf } from '#shared/bearing/dimensions.ts'
import { thrustDimensions } from './dimensions.ts'
import { thrustFindings } from './findings.ts'
import { type ThrustBearing, thrustBearingOf } from './geometry.ts'
import { THRUST_FIELDS, type ThrustInput } from './input.ts'
import { THRUST_TRAITS } from './resolve.ts'

export const THRUST: Arrangement<
  ThrustInput,
  ThrustBearing,
  typeof THRUST_FIELDS.fields,
  KeysOf<typeof thrustDimensions>
> = {
  traits: THRUST_TRAITS,
  sources: ['iso-5593', 'machinerys-handbook-chords', 'circular-segment', 'derived', 'trade'],
  fields: THRUST_FIELDS,
  bearingOf: thrustBearingOf,
  dimensionsOf: thrustDimensions,
  findingsOf: thrustFindings,
}
