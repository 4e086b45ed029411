/** The parts of wood, and what each key of `woods` means. */
export const WOOD_PARTS = {
  outerRing: 'The wood of the outer ring.',
  innerRing: 'The wood of the inner ring.',
  plates: 'The wood of both plates.',
  cage: 'The wood of the cage.',
} as const
export type WoodPart = keyof typeof WOOD_PARTS
export const PART_NAMES = Object.keys(WOOD_PARTS) as readonly WoodPart[]
/** Parts whose hole is the bore of the bearing. */
export const BORED_PARTS = ['innerRing', 'plates'] as const satisfies readonly WoodPart[]
