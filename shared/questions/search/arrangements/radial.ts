import { RADIAL_FIELDS } from '#shared/bearing/arrangements/radial/input.ts'
import type { RadialBearing, RadialInput } from '#shared/bearing/arrangements.ts'
import { carriedLoad } from '#shared/questions/load/load-check.ts'
import { ACROSS_FIELDS } from '#shared/questions/search/fields.ts'
import type { SearchModule } from '#shared/questions/search/module.ts'
import { groovedParts, type RingLoad, ringDepths, ringSeats, ringSizes } from '#shared/questions/search/rings.ts'

export const RADIAL_SEARCH: SearchModule<RadialInput, RadialBearing, RingLoad> = {
  has: ['partingWidth', 'plugDiameters', 'cutterDiameters', 'onlyOnRule'],
  depths: ringDepths(RADIAL_FIELDS.fields),
  load: ACROSS_FIELDS,
  marks: ['running', 'wall', 'seat', 'material', 'nesting'],
  usualSplit: 'inner-ring',
  partsOf: groovedParts,
  sizesOf: (bearing) => ({ ...ringSizes(bearing, bearing.gapPerGrooveDepth), seats: ringSeats(bearing) }),
  carries: carriedLoad,
}
