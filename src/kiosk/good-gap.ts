import { type Design, isCaged } from '#shared/bearing/arrangements.ts'
import { goodGaps } from '#shared/bearing/ball-ring.ts'
import { goodGap } from '#src/words/good-gap.ts'
import type { Terms } from '#src/words/terms.ts'

/** Which gaps of a bearing are good, in words; undefined where balls in a cage leave none. */
export const goodGapOf = (design: Design, terms: Terms): string | undefined =>
  isCaged(design) ? undefined : goodGap(goodGaps(design.bearing.resolved), design.bearing.resolved.input.units, terms)
