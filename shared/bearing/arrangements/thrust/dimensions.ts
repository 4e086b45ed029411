import { type Dimension, gapRow, type MakeRow } from '#shared/bearing/dimensions.ts'
import type { ThrustBearing } from './geometry.ts'

/** The table of a thrust bearing: one plate, cut twice. The gap follows the groove's circle alone, not its depth. */
export function thrustDimensions(bearing: ThrustBearing): readonly Dimension[] {
  const { plate, gauge } = bearing
  const byCircle = bearing.gapPerPitchRadius / 2
  const row: MakeRow = (key, value, grows, gapPerUnit) => gapRow(bearing, key, value, grows, gapPerUnit)
  return [
    row('pitchDiameter', plate.grooveCircleDiameter, 'circle', byCircle),
    row('plateOutsideDiameter', plate.outsideDiameter, 'outside'),
    row('plateBoreDiameter', plate.boreDiameter, 'hole'),
    row('plateGrooveDepth', plate.grooveDepth, 'depth'),
    row('plateGrooveRadius', plate.grooveRadius, 'arc'),
    row('plateGrooveWidth', plate.grooveWidth, 'not-cut'),
    row('plateWall', plate.wall, 'not-cut'),
    row('plateInnerWall', plate.innerWall, 'not-cut'),
    row('plateFloor', plate.floor, 'not-cut'),
    row('plateThickness', plate.thickness, 'width'),
    row('gaugeNominalDiameter', gauge.nominalDiameter, 'not-cut', byCircle),
    row('gaugeGoDiameter', gauge.goDiameter, 'not-cut'),
    row('gaugeNoGoDiameter', gauge.noGoDiameter, 'not-cut'),
    row('ballGap', bearing.ballGap, 'not-cut'),
    row('plateGap', bearing.plateGap, 'not-cut'),
    row('height', bearing.height, 'not-cut'),
  ]
}
