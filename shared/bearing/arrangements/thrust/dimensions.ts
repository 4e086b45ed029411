import { gapRow } from '#shared/bearing/dimensions.ts'
import type { ThrustBearing } from './geometry.ts'

/** The table of a thrust bearing: one plate, cut twice. The gap follows the groove's circle alone, not its depth. */
export function thrustDimensions(bearing: ThrustBearing) {
  const { plate, gauge } = bearing
  const byCircle = bearing.gapPerPitchRadius / 2
  const row = gapRow(bearing)
  return [
    row('pitchDiameter', plate.grooveCircleDiameter, 'circle', byCircle),
    row('plates.outsideDiameter', plate.outsideDiameter, 'outside'),
    row('plates.boreDiameter', plate.boreDiameter, 'hole'),
    row('plates.grooveDepth', plate.grooveDepth, 'depth'),
    row('plates.grooveRadius', plate.grooveRadius, 'arc'),
    row('plates.grooveWidth', plate.grooveWidth, 'not-cut'),
    row('plates.wall', plate.wall, 'not-cut'),
    row('plates.innerWall', plate.innerWall, 'not-cut'),
    row('plates.floor', plate.floor, 'not-cut'),
    row('plates.thickness', plate.thickness, 'width'),
    row('gauge.nominalDiameter', gauge.nominalDiameter, 'not-cut', byCircle),
    row('gauge.goDiameter', gauge.goDiameter, 'not-cut'),
    row('gauge.noGoDiameter', gauge.noGoDiameter, 'not-cut'),
    row('ballGap', bearing.ballGap, 'not-cut'),
    row('plateGap', bearing.plateGap, 'not-cut'),
    row('height', bearing.height, 'not-cut'),
  ]
}
