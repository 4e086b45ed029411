import type { FullRingArrangement } from '#shared/bearing/arrangement.ts'
import type { KeysOf } from '#shared/bearing/dimensions.ts'
import { outerSideOf } from '#shared/bearing/outer-side.ts'
import { rollerDimensions } from './dimensions.ts'
import { rollerFindings } from './findings.ts'
import { type RollerBearing, rollerBearingOf } from './geometry.ts'
import { ROLLER_FIELDS, type RollerInput } from './input.ts'
import { ROLLER_TRAITS, resolveRoller } from './resolve.ts'

export const ROLLER: FullRingArrangement<
  RollerInput,
  RollerBearing,
  typeof ROLLER_FIELDS.fields,
  KeysOf<typeof rollerDimensions>
> = {
  traits: ROLLER_TRAITS,
  sources: ['iso-5593', 'iso-1938-1', 'machinerys-handbook-chords', 'derived', 'trade'],
  fields: ROLLER_FIELDS,
  bearingOf: rollerBearingOf,
  outerSideOf: (input) => {
    const resolution = resolveRoller(input)
    return resolution.ok ? outerSideOf(resolution.value) : resolution
  },
  dimensionsOf: rollerDimensions,
  findingsOf: rollerFindings,
}
