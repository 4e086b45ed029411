import type { FullRingArrangement } from '#shared/bearing/arrangement.ts'
import type { KeysOf } from '#shared/bearing/dimensions.ts'
import { type FullRings, fullRings } from '#shared/bearing/full-rings.ts'
import { outerSideOf } from '#shared/bearing/outer-side.ts'
import { radialDimensions } from './dimensions.ts'
import { radialFindings } from './findings.ts'
import { RADIAL_FIELDS, type RadialInput } from './input.ts'
import { RADIAL_TRAITS, type ResolvedRadial, resolveRadial } from './resolve.ts'

/** A full ring of balls between two grooved rings. */
export interface RadialBearing extends FullRings {
  readonly resolved: ResolvedRadial
  readonly cheeks?: never
}

export const RADIAL: FullRingArrangement<
  RadialInput,
  RadialBearing,
  typeof RADIAL_FIELDS.fields,
  KeysOf<typeof radialDimensions>
> = {
  traits: RADIAL_TRAITS,
  sources: [
    'iso-5593',
    'iso-76',
    'iso-1938-1',
    'machinerys-handbook-chords',
    'circular-segment',
    'harris',
    'derived',
    'trade',
  ],
  fields: RADIAL_FIELDS,
  bearingOf: (input) => {
    const resolution = resolveRadial(input)
    return resolution.ok ? fullRings(resolution.value) : resolution
  },
  outerSideOf: (input) => {
    const resolution = resolveRadial(input)
    return resolution.ok ? outerSideOf(resolution.value) : resolution
  },
  dimensionsOf: radialDimensions,
  findingsOf: radialFindings,
}
