import type { RollerInput } from '#shared/bearing/arrangements/roller/input.ts'
import { ROLLER } from '#shared/bearing/arrangements/roller/roller.ts'
import { type Balls, type Without, withWall } from '#shared/questions/size-table/row.ts'

/** The outer side: no figure of it depends on the bore or on the inner ring. */
export const rollerRow = (shared: Without<RollerInput>, balls: Balls) =>
  withWall(ROLLER.outerSideOf({ ...shared, balls, bore: balls.diameter }))
