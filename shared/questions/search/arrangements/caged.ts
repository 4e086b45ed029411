import type { CagedInput } from '#shared/bearing/arrangements/caged/input.ts'
import { CAGED_FIELDS } from '#shared/bearing/arrangements/caged/input.ts'
import type { CagedBearing } from '#shared/bearing/arrangements.ts'
import { carriedLoad } from '#shared/questions/load/load-check.ts'
import { ACROSS_FIELDS } from '#shared/questions/search/fields.ts'
import type { SearchModule } from '#shared/questions/search/module.ts'
import { groovedParts, type RingLoad, ringDepths, ringSeats, ringSizes } from '#shared/questions/search/rings.ts'

export const CAGED_SEARCH: SearchModule<CagedInput, CagedBearing, RingLoad> = {
  has: ['partingWidth', 'cutterDiameters'],
  depths: ringDepths(CAGED_FIELDS.fields),
  load: ACROSS_FIELDS,
  marks: ['running', 'wall', 'seat', 'material', 'nesting'],
  usualSplit: 'none',
  partsOf: groovedParts,
  sizesOf: (bearing) => {
    const { cage } = bearing
    const sizes = ringSizes(bearing, 0)
    const discs = [...sizes.discs, { outside: cage.outsideDiameter, hole: cage.boreDiameter }]
    return { ...sizes, discs, seats: ringSeats(bearing) }
  },
  carries: carriedLoad,
}
