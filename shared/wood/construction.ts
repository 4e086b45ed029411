/**
 * How a ring is made. Flat-sawn: the growth rings lie along the board's face, so across the board it moves the most.
 * Quarter-sawn: they stand on edge. Segmented: glued up of pieces, the grain runs round the circle; the strips flat-sawn
 * unless stated otherwise. Cross-laminated ply: moves little and alike in all directions of its plane.
 */
export const CONSTRUCTIONS = [
  'flat-sawn',
  'quarter-sawn',
  'segmented',
  'segmented-quarter-sawn',
  'cross-laminated-ply',
] as const
export type Construction = (typeof CONSTRUCTIONS)[number]

export const isSegmented = ({ construction }: { readonly construction: Construction }): boolean =>
  construction.startsWith('segmented')

/** Default number of pieces of a segmented part: common practice, no source. */
export const USUAL_SEGMENTS = 12
