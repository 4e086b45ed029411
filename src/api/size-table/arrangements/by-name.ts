import type { Served } from '#shared/questions/size-table/arrangements/by-name.ts'
import { RADIAL_ROWS } from './radial.ts'
import { ROLLER_ROWS } from './roller.ts'
import { THRUST_ROWS } from './thrust.ts'

/** The rows of each arrangement that is served. */
export const ROWS = { radial: RADIAL_ROWS, roller: ROLLER_ROWS, thrust: THRUST_ROWS } as const satisfies Readonly<
  Record<Served, object>
>
