import { cageFindingsOf } from './cage-findings.ts'
import { type CagedBearing, cagedBearingOf } from './caged.ts'
import { type DesignOf, designIn } from './design.ts'
import { cagedDimensionsOf } from './dimensions.ts'

export type CagedDesign = DesignOf<CagedBearing>

/** What must I cut, for fewer balls in a cage? What `design` says of a full ring, of one that is held evenly. */
export const cagedDesign = designIn<CagedBearing>({
  make: cagedBearingOf,
  dimensionsOf: cagedDimensionsOf,
  findingsOf: cageFindingsOf,
})
