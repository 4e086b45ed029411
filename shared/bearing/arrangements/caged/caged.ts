import type { Arrangement } from '#shared/bearing/arrangement.ts'
import type { KeysOf } from '#shared/bearing/dimensions.ts'
import { cagedDimensions } from './dimensions.ts'
import { cagedFindings } from './findings.ts'
import { type CagedBearing, cagedBearingOf } from './geometry.ts'
import { CAGED_FIELDS, type CagedInput } from './input.ts'
import { CAGED_TRAITS } from './resolve.ts'

export const CAGED: Arrangement<
  CagedInput,
  CagedBearing,
  typeof CAGED_FIELDS.fields,
  KeysOf<typeof cagedDimensions>
> = {
  traits: CAGED_TRAITS,
  sources: ['iso-5593', 'iso-76', 'circular-segment', 'harris', 'derived', 'trade'],
  fields: CAGED_FIELDS,
  bearingOf: cagedBearingOf,
  dimensionsOf: cagedDimensions,
  findingsOf: cagedFindings,
}
