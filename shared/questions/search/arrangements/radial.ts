import type { RadialBearing, RadialInput } from '#shared/bearing/arrangements.ts'
import type { SearchModule } from '#shared/questions/search/module.ts'
import { groovedParts, type RingLoad, ringLoadAt, ringSeats, ringSizes } from '#shared/questions/search/rings.ts'

export const RADIAL_SEARCH: SearchModule<RadialInput, RadialBearing, RingLoad> = {
  has: ['partingWidth', 'plugDiameters', 'cutterDiameters', 'outerEngagements', 'innerEngagements', 'onlyOnRule'],
  marks: ['running', 'wall', 'seat', 'material', 'nesting'],
  usualSplit: 'inner-ring',
  partsOf: groovedParts,
  sizesOf: (bearing) => ({ ...ringSizes(bearing, bearing.gapPerGrooveDepth), seats: ringSeats(bearing) }),
  dentsAt: ringLoadAt,
}
