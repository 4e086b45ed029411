import type { Mm } from '#shared/units/length.ts'

/** Why no such roller bearing can exist. */
export type RollerRefusal =
  | { readonly code: 'roller-longer-than-ring'; readonly path: string; readonly given: Mm; readonly below: Mm }
  | { readonly code: 'play-lets-rollers-climb'; readonly path: string; readonly given: Mm; readonly below: Mm }

/** Warnings that only rollers have. */
export type RollerWarning = { readonly code: 'rollers-turn-askew'; readonly length: Mm; readonly least: Mm }

/** Symbols of the sizes that only a roller bearing has. */
export const ROLLER_SYMBOLS = {
  'outerRing.trackDiameter': 'E',
  'innerRing.trackDiameter': 'F',
  rollerLength: 'Lw',
  'cheeks.outsideDiameter': 'Dc',
  'cheeks.holeDiameter': 'dc',
  'cheeks.thickness': 'tc',
}

/** The fields that set them, by their JSON pointers. */
export const ROLLER_FIELDS_OF_SIZES = {
  'outerRing.trackDiameter': ['/ballGap'],
  'innerRing.trackDiameter': ['/radialInternalClearance'],
  rollerLength: ['/balls/length'],
}
