import { type Dimension, gapRow } from '#shared/bearing/dimensions.ts'
import { mm } from '#shared/units/length.ts'
import type { FootstepBearing } from './geometry.ts'

export const footstepDimensions = (bearing: FootstepBearing): readonly Dimension[] => [
  gapRow(bearing, 'pitchDiameter', mm(2 * bearing.pitchRadius), 'circle', bearing.gapPerPitchRadius / 2),
  gapRow(bearing, 'ballGap', bearing.ballGap, 'not-cut'),
  gapRow(bearing, 'height', bearing.height, 'not-cut'),
]
