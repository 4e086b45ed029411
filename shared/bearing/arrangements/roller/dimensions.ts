import { gapRow, gapRows, playRows, ringRows, slopesOf } from '#shared/bearing/dimensions.ts'
import type { RollerBearing } from './geometry.ts'

/** The table of a roller bearing, in the order in which the parts are made. */
export function rollerDimensions(bearing: RollerBearing) {
  const { cheeks, resolved, outerRing, innerRing } = bearing
  const slopes = slopesOf(bearing)
  const row = gapRow(bearing)
  return [
    ...ringRows(
      bearing,
      row,
      [row('outerRing.trackDiameter', outerRing.grooveBottomDiameter, 'hole', slopes.perPitchRadius / 2)],
      [row('innerRing.trackDiameter', innerRing.grooveBottomDiameter, 'outside')],
      slopes,
    ),
    row('rollerLength', resolved.rollerLength, 'not-cut'),
    row('cheeks.outsideDiameter', cheeks.outsideDiameter, 'outside'),
    row('cheeks.holeDiameter', cheeks.holeDiameter, 'hole'),
    row('cheeks.thickness', cheeks.thickness, 'width'),
    ...gapRows(bearing, row),
    ...playRows(bearing, row),
  ]
}
