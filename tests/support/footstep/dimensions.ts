import { type Dimension, gapRow } from '#shared/bearing/dimensions.ts'
import { mm } from '#shared/units/length.ts'
import type { FootstepBearing } from './geometry.ts'

export function footstepDimensions(bearing: FootstepBearing): readonly Dimension[] {
  const row = gapRow(bearing)
  return [
    row('pitchDiameter', mm(2 * bearing.pitchRadius), 'circle', bearing.gapPerPitchRadius / 2),
    row('ballGap', bearing.ballGap, 'not-cut'),
    row('height', bearing.height, 'not-cut'),
  ]
}
