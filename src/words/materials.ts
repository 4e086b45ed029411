import type { BallMaterial } from '#shared/bearing/fields.ts'

/** Before what is made of it: `wooden balls`. */
export const MADE_OF: Readonly<Record<BallMaterial, string>> = {
  wood: 'wooden',
  glass: 'glass',
  acrylic: 'acrylic',
  steel: 'steel',
}
