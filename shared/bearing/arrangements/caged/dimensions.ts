import { groovedRingRows, landRows, plainRow, playRows } from '#shared/bearing/dimensions.ts'
import type { CagedBearing } from './geometry.ts'

/** The table of a caged bearing: no gap to move, and a cage beside the rings. */
export function cagedDimensions(bearing: CagedBearing) {
  const { cage } = bearing
  const row = plainRow(bearing)
  return [
    ...groovedRingRows(bearing, row),
    row('cage.boreDiameter', cage.boreDiameter, 'hole'),
    row('cage.outsideDiameter', cage.outsideDiameter, 'outside'),
    row('cage.thickness', cage.thickness, 'not-cut'),
    row('cage.width', cage.width, 'width'),
    row('cage.pocketDiameter', cage.pocketDiameter, 'hole'),
    row('cage.web', cage.web, 'not-cut'),
    row('cage.rim', cage.rim, 'not-cut'),
    row('plugDiameter', bearing.plugDiameter, 'not-cut'),
    row('ballSpacing', bearing.ballSpacing, 'not-cut'),
    ...landRows(bearing, row),
    ...playRows(bearing, row),
  ]
}
