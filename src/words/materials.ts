import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { Construction } from '#shared/wood/construction.ts'

/** Before what is made of it: `wooden balls`. */
export const MADE_OF: Readonly<Record<BallMaterial, string>> = {
  wood: 'wooden',
  glass: 'glass',
  acrylic: 'acrylic',
  steel: 'steel',
}

/** How a part is cut from its wood, or built up. */
export const CONSTRUCTION_NAMES: Readonly<Record<Construction, string>> = {
  'flat-sawn': 'flat-sawn board',
  'quarter-sawn': 'quarter-sawn board',
  segmented: 'segments, flat-sawn',
  'segmented-quarter-sawn': 'segments, quarter-sawn',
  'cross-laminated-ply': 'plywood',
}
