import {
  type Dimension,
  groovedRingRows,
  landRows,
  type MakeRow,
  plainRow,
  playRows,
} from '#shared/bearing/dimensions.ts'
import type { CagedBearing } from './geometry.ts'

/** The table of a caged bearing: no gap to move, and a cage beside the rings. */
export function cagedDimensions(bearing: CagedBearing): readonly Dimension[] {
  const { cage } = bearing
  const row: MakeRow = (key, value, grows) => plainRow(bearing, key, value, grows)
  return [
    ...groovedRingRows(bearing, row),
    row('cageBoreDiameter', cage.boreDiameter, 'hole'),
    row('cageOutsideDiameter', cage.outsideDiameter, 'outside'),
    row('cageThickness', cage.thickness, 'not-cut'),
    row('cageWidth', cage.width, 'width'),
    row('pocketDiameter', cage.pocketDiameter, 'hole'),
    row('cageWeb', cage.web, 'not-cut'),
    row('cageRim', cage.rim, 'not-cut'),
    row('gaugeNominalDiameter', bearing.plugDiameter, 'not-cut'),
    row('ballSpacing', bearing.ballSpacing, 'not-cut'),
    ...landRows(bearing, row),
    ...playRows(bearing, row),
  ]
}
