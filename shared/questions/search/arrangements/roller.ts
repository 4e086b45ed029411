import type { RollerInput } from '#shared/bearing/arrangements/roller/input.ts'
import type { RollerBearing } from '#shared/bearing/arrangements.ts'
import { carriedLoad } from '#shared/questions/load/load-check.ts'
import { ACROSS_FIELDS } from '#shared/questions/search/fields.ts'
import type { SearchModule } from '#shared/questions/search/module.ts'
import { type RingLoad, ringSizes } from '#shared/questions/search/rings.ts'

export const ROLLER_SEARCH: SearchModule<RollerInput, RollerBearing, RingLoad> = {
  has: ['partingWidth', 'plugDiameters', 'onlyOnRule'],
  depths: {},
  load: ACROSS_FIELDS,
  marks: ['running', 'wall', 'material', 'nesting'],
  partsOf: () => ({}),
  sizesOf: (bearing) => ringSizes(bearing, bearing.gapPerGrooveDepth),
  carries: carriedLoad,
}
