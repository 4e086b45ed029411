import type { Mm } from '#shared/units/length.ts'

/** Why no such caged bearing can exist. */
export type CagedRefusal =
  | { readonly code: 'pockets-meet'; readonly path: string; readonly given: Mm; readonly above: Mm }
  | { readonly code: 'no-room-for-cage'; readonly path: string; readonly given: Mm; readonly below: Mm }
  | {
      readonly code: 'cage-misses-middle'
      readonly path: string
      readonly ring: 'outerRing' | 'innerRing'
      readonly depth: Mm
      readonly below: Mm
    }
  | { readonly code: 'pocket-cuts-cage'; readonly path: string; readonly given: Mm; readonly above: Mm }

/** Warnings that only cages have. */
export type CagedWarning =
  | { readonly code: 'web-thin'; readonly web: Mm; readonly least: Mm }
  | { readonly code: 'cage-rim-thin'; readonly rim: Mm; readonly least: Mm }
  | { readonly code: 'cage-thin'; readonly thickness: Mm; readonly least: Mm }
  | { readonly code: 'cage-rubs'; readonly left: Mm; readonly least: Mm }
  | { readonly code: 'cage-stands-out'; readonly width: Mm; readonly ringWidth: Mm }

/** Symbols of the sizes that only a caged bearing has. */
export const CAGED_SYMBOLS = {
  'cage.boreDiameter': 'dc',
  'cage.outsideDiameter': 'Dc',
  'cage.thickness': 'tc',
  'cage.width': 'Bc',
  'cage.pocketDiameter': 'Dk',
  'cage.web': 'wk',
  'cage.rim': 'wr',
  plugDiameter: 'Dg',
  ballSpacing: 'gs',
}

/** The fields that set them, by their JSON pointers. */
export const CAGED_FIELDS_OF_SIZES = {
  'cage.outsideDiameter': ['/cage/landClearance'],
  'cage.boreDiameter': ['/cage/landClearance'],
  'cage.pocketDiameter': ['/cage/pocketClearance'],
  'cage.web': ['/cage/web'],
  'cage.width': ['/cage/width'],
}
