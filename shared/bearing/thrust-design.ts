import { type DesignOf, designIn } from './design.ts'
import { plateDimensionsOf } from './dimensions.ts'
import { plateFindingsOf } from './plate-findings.ts'
import { type ThrustBearing, thrustBearingOf } from './plates.ts'

export type ThrustDesign = DesignOf<ThrustBearing>

/** What must I cut, for a turntable on balls? What `design` says of rings, of two plates. */
export const thrustDesign = designIn<ThrustBearing>({
  make: thrustBearingOf,
  dimensionsOf: plateDimensionsOf,
  findingsOf: plateFindingsOf,
})
