import type { Mm } from '#shared/units/length.ts'

/** Both plates have the same groove. */
export type ThrustPart = 'plates'

/** Why no such thrust bearing can exist. */
export type ThrustRefusal =
  | { readonly code: 'plates-meet'; readonly path: string; readonly depth: Mm; readonly below: Mm }
  | { readonly code: 'plate-cut-through'; readonly path: string; readonly given: Mm; readonly above: Mm }

/** Warnings that only plates have. */
export type ThrustWarning =
  | { readonly code: 'plate-thin'; readonly floor: Mm; readonly least: Mm }
  | { readonly code: 'plates-nearly-meet'; readonly plateGap: Mm; readonly least: Mm }

/** Symbols of the sizes that only plates have. */
export const THRUST_SYMBOLS = {
  'plates.outsideDiameter': 'D',
  'plates.boreDiameter': 'd',
  'plates.grooveDepth': 'h',
  'plates.grooveRadius': 'r',
  'plates.grooveWidth': 'b',
  'plates.wall': 'wo',
  'plates.innerWall': 'wi',
  'plates.floor': 'wf',
  'plates.thickness': 'B',
  plateGap: 's',
  height: 'T',
}

/** The fields that set them, by their JSON pointers. */
export const THRUST_FIELDS_OF_SIZES = {
  'plates.outsideDiameter': ['/plates/wall'],
  'plates.wall': ['/plates/wall'],
  'plates.grooveDepth': ['/plates/engagement'],
  'plates.grooveRadius': ['/groove/conformity'],
  'plates.thickness': ['/plates/thickness'],
  plateGap: ['/plates/engagement'],
}
