import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { RADIAL } from '#shared/bearing/arrangements/radial/radial.ts'
import { type Balls, type Without, withWall } from '#shared/questions/size-table/row.ts'

/** Half a ball deep in a half circle: an inner ring that refuses nothing, for the table has none. */
const ANY_INNER_RING = { engagement: 0.5, groove: { conformity: 0.5 } }

/** The outer side: no figure of it depends on the bore or on the inner ring. */
export const radialRow = (shared: Without<RadialInput>, balls: Balls) =>
  withWall(RADIAL.outerSideOf({ ...shared, balls, bore: balls.diameter, innerRing: ANY_INNER_RING }))
