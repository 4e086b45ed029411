import type { ThrustInput } from '#shared/bearing/arrangements/thrust/input.ts'
import { THRUST } from '#shared/bearing/arrangements/thrust/thrust.ts'
import type { Balls, Without } from '#shared/questions/size-table/row.ts'
import { mm } from '#shared/units/length.ts'

/** A bore, in ball diameters, that refuses nothing: no two sizes near that of a ball differ by so little. */
const ANY_BORE = 1e-30

export const thrustRow = (shared: Without<ThrustInput>, balls: Balls) =>
  THRUST.bearingOf({ ...shared, balls, bore: mm(ANY_BORE * balls.diameter) })
