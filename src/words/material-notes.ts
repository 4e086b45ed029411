import type { BallMaterial } from '#shared/bearing/fields.ts'

/** Common practice, no source. */
export const MATERIAL_NOTES: readonly string[] = [
  'A softer wood is easier to sand to the last few hundredths of a millimetre; a harder wood keeps its groove longer.',
  'A quarter-sawn ring of a wood that moves little across the grain stays rounder through the year.',
]

/** The effect of damp air on balls of a material. */
export const WITH_MOISTURE: Readonly<Record<BallMaterial, string>> = {
  wood: 'Moves as its wood does, differently in three directions: hardly along the grain, more from pith to bark, most along the growth rings.',
  glass: 'Keeps its size.',
  acrylic: 'Takes up water slowly and grows a little.',
  steel: 'Keeps its size, but rusts in damp air.',
}
