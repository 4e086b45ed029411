import type { ArrangementName, Bearing, BearingByArrangement, DesignInput } from '#shared/bearing/arrangements.ts'
import { nameOf } from '#shared/bearing/arrangements.ts'
import { MOVING_CAGED } from '#shared/movement/arrangements/caged.ts'
import { MOVING_RADIAL } from '#shared/movement/arrangements/radial.ts'
import { MOVING_ROLLER } from '#shared/movement/arrangements/roller.ts'
import { MOVING_THRUST } from '#shared/movement/arrangements/thrust.ts'
import type { MovingArrangement } from '#shared/movement/snapshot.ts'

/** The movement of each arrangement. */
const MOVING: { readonly [Name in ArrangementName]: MovingArrangement<BearingByArrangement[Name]> } = {
  radial: MOVING_RADIAL,
  roller: MOVING_ROLLER,
  thrust: MOVING_THRUST,
  caged: MOVING_CAGED,
}

/** The movement of a design's arrangement. */
export const movingOf = (design: Pick<DesignInput, 'arrangement'>): MovingArrangement<Bearing> =>
  MOVING[nameOf(design)] as MovingArrangement<Bearing>
