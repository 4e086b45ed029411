import { gapRow, gapRows, groovedRingRows, landRows, playRows, slopesOf } from '#shared/bearing/dimensions.ts'
import type { FullRings } from '#shared/bearing/full-rings.ts'

/** The table of a radial bearing, in the order in which the parts are made. */
export function radialDimensions(bearing: FullRings) {
  const row = gapRow(bearing)
  return [
    ...groovedRingRows(bearing, row, slopesOf(bearing)),
    ...gapRows(bearing, row),
    ...landRows(bearing, row),
    ...playRows(bearing, row),
  ]
}
