import type { ArrangementName, Bearing, BearingByArrangement, DesignInput } from '#shared/bearing/arrangements.ts'
import { nameOf } from '#shared/bearing/arrangements.ts'
import { MOVING_CAGED } from '#shared/questions/season/arrangements/caged.ts'
import type { WoodPart } from '#shared/questions/season/arrangements/parts.ts'
import { MOVING_RADIAL } from '#shared/questions/season/arrangements/radial.ts'
import { MOVING_ROLLER } from '#shared/questions/season/arrangements/roller.ts'
import { MOVING_THRUST } from '#shared/questions/season/arrangements/thrust.ts'
import type { MovingArrangement } from './snapshot.ts'

/** The movement of each arrangement. */
const MOVING: { readonly [Name in ArrangementName]: MovingArrangement<BearingByArrangement[Name]> } = {
  radial: MOVING_RADIAL,
  roller: MOVING_ROLLER,
  thrust: MOVING_THRUST,
  caged: MOVING_CAGED,
}

/** What the arrangement of a design does when its wood moves. */
export const movingOf = (design: Pick<DesignInput, 'arrangement'>): MovingArrangement<Bearing> =>
  MOVING[nameOf(design)] as MovingArrangement<Bearing>

/** The parts of wood of a design's arrangement, each once. */
export const woodPartsOf = (design: Pick<DesignInput, 'arrangement'>): readonly WoodPart[] => [
  ...new Set(movingOf(design).boards),
]
